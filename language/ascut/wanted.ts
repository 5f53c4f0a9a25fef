import type { Part } from "../core/part.ts";
import type { Model } from "../derive/model.ts";
import { sameShape } from "../derive/parts.ts";

/** Alike parts of one owner: what a `cut` record can name. */
export interface Wanted {
  /** Stable within a build and of no other: the part's id, with a number behind it where several unlike parts share that. */
  readonly key: string;
  /** `box plan-1`. */
  readonly of: string;
  readonly name: string;
  /** The first of the alike parts, for its sizes. */
  readonly part: Part;
  readonly parts: readonly Part[];
  /** Pieces wanted in all. */
  readonly quantity: number;
}

/** Everything that is to be made, alike parts of one owner and name together, in the order of the model. */
export function wantedIn(model: Model): readonly Wanted[] {
  const groups = new Map<string, Part[][]>();
  const inOrder: Part[][] = [];
  for (const part of model.parts) {
    const known = groups.get(nameKey(part)) ?? [];
    const alike = known.find(([first]) => sameShape(first!, part));
    if (alike !== undefined) {
      alike.push(part);
      continue;
    }
    const group = [part];
    groups.set(nameKey(part), [...known, group]);
    inOrder.push(group);
  }
  const taken = new Set<string>();
  return inOrder.map((parts) => {
    const part = parts[0]!;
    const key = freeKey(part.id, taken);
    taken.add(key);
    const quantity = parts.reduce((sum, one) => sum + one.quantity, 0);
    return { key, of: part.of, name: part.name, part, parts, quantity };
  });
}

function nameKey({ of, name }: Part): string {
  return `${of}/${name}`;
}

function freeKey(id: string, taken: ReadonlySet<string>): string {
  if (!taken.has(id)) return id;
  let number = 2;
  while (taken.has(`${id} ${number}`)) number++;
  return `${id} ${number}`;
}
