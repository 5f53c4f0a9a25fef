import type { Part } from "../../core/part.ts";

/** Something to be done, once everything that it needs is done. */
export interface Task {
  readonly id: string;
  /** What is put together: the heading that its steps stand under. */
  readonly of: string;
  readonly kind: "dry fit" | "glue" | "clamps off" | "fix" | "fit";
  readonly words: string;
  /** Ids of tasks that come before it; those that are not in the list are not waited for. */
  readonly needs: readonly string[];
}

/** The letters of the cut list. */
export type Marks = ReadonlyMap<Part, string>;

/**
 * Tasks in an order in which each comes behind all that it needs; of those that could come next, the first in the list. A
 * circle cannot be ordered: its tasks come last, as listed, so that none is lost.
 */
export function inWorkingOrder(tasks: readonly Task[]): readonly Task[] {
  const known = new Set(tasks.map((task) => task.id));
  const done = new Set<string>();
  const ordered: Task[] = [];
  const left = [...tasks];
  for (;;) {
    const next = left.findIndex((task) => task.needs.every((need) => done.has(need) || !known.has(need)));
    if (next < 0) return [...ordered, ...left];
    const [task] = left.splice(next, 1);
    done.add(task!.id);
    ordered.push(task!);
  }
}

/** Parts of some names with their marks, `sides H, bottom T`; empty where there are none. */
export function partsText(parts: readonly Part[], names: readonly string[], marks: Marks): string {
  return names
    .flatMap((name) => {
      const mine = parts.filter((part) => part.name === name);
      if (mine.length === 0) return [];
      const count = mine.reduce((sum, part) => sum + part.quantity, 0);
      const letters = [...new Set(mine.flatMap((part) => marks.get(part) ?? []))].join(", ");
      return [`${count === 1 ? name : plural(name)}${letters === "" ? "" : ` ${letters}`}`];
    })
    .join(", ");
}

function plural(name: string): string {
  return name.endsWith("shelf") ? `${name.slice(0, -1)}ves` : name.endsWith("s") ? name : `${name}s`;
}

/** What a set of parts is made of, so that equal things are put together as one job. */
export function sameMarks(parts: readonly Part[], marks: Marks): string {
  return parts
    .map((part) => `${part.name} ${marks.get(part) ?? part.id} ${part.quantity}`)
    .sort()
    .join("|");
}

export const glueTime = "as long as the glue's label says";
