import type { Solid } from "../solid/solid.ts";
import type { Desk } from "./desk.ts";
import { sized, unitOf } from "./desk.ts";
import type { Equivalent } from "./display-list.ts";
import type { Unit } from "./exploded-moves.ts";
import { wayText } from "./exploded-moves.ts";
import type { ExplodedPlan } from "./exploded-plans.ts";

/** A solid in words, with its letter and size. */
export function explodedName(desk: Desk, { part }: Solid): string {
  const mark = desk.marks.get(part);
  return `${mark === undefined ? "" : `${mark} `}${part.name} of ${part.of}, ${sizeOf(desk, part)} ${unitOf(desk)}`;
}

/** What is moved where and what it meets, those alike in one row. What others hide altogether is said to be hidden. */
export function explodedRows(desk: Desk, { units, mates }: ExplodedPlan, hidden: ReadonlySet<Unit>): Equivalent {
  const homes = new Map(units.flatMap((unit) => unit.solids.map((solid) => [solid, unit] as const)));
  const meets = new Map<Unit, Set<string>>(units.map((unit) => [unit, new Set()]));
  for (const { a, b } of mates) {
    const [one, other] = [homes.get(a), b === undefined ? undefined : homes.get(b)];
    if (one === undefined || other === undefined || one === other) continue;
    meets.get(one)?.add(nameOf(other));
    meets.get(other)?.add(nameOf(one));
  }
  const rows = new Map<string, { readonly cells: readonly string[]; count: number }>();
  for (const unit of units) {
    const { solids, move } = unit;
    const what = solids.length === 1 ? solids[0]!.part.name : `${solids.length} pieces, as one`;
    const size = solids.length === 1 ? sizeOf(desk, solids[0]!.part) : "";
    const moved = hidden.has(unit) ? `${wayText(move)}, hidden here` : wayText(move);
    const cells = [nameOf(unit), what, size, moved, [...meets.get(unit)!].join(", ")];
    const row = rows.get(cells.join("\n")) ?? { cells, count: 0 };
    row.count++;
    rows.set(cells.join("\n"), row);
  }
  return {
    columns: ["mark", "what", "how many", "size", "moved", "meets"],
    rows: [...rows.values()].map(({ cells: [mark, what, size, moved, meeting], count }) => [
      mark!,
      what!,
      String(count),
      size!,
      moved!,
      meeting!,
    ]),
  };
}

function nameOf({ label, solids }: Unit): string {
  return label ?? solids[0]?.assembly ?? "";
}

function sizeOf(desk: Desk, { length, width, thickness }: Solid["part"]): string {
  return [length, width, thickness].map(({ value }) => sized(desk, value)).join(" × ");
}
