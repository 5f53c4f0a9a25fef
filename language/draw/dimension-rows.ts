import type { Length } from "../core/length.ts";
import { compare, equal, subtract } from "../core/rational.ts";
import type { Desk } from "./desk.ts";
import { sized } from "./desk.ts";
import type { Stretch } from "./dimension.ts";
import { dimensionRow, rowPitch, turnedRoom } from "./dimension.ts";
import type { Item } from "./display-list.ts";

/** Where rows of sizes go: along which edge, to which side of it. */
export interface Beside {
  readonly run: "across" | "up";
  readonly edge: number;
  readonly away: 1 | -1;
  readonly paper: (at: Length) => number;
}

/** Rows of sizes one beyond the other, between the places of each; a row that says no more than the next is left out. */
export function rowsBeside(desk: Desk, beside: Beside, rows: readonly (readonly Length[])[]): readonly Item[] {
  const ordered = rows.map(inOrder);
  const used = ordered.filter(
    (row, index) => 1 < row.length && !ordered.some((other, later) => index < later && alike(row, other)),
  );
  const items: Item[] = [];
  let out = 0;
  for (const row of used) {
    const stretches = stretchesOf(desk, row, beside.paper);
    out += rowPitch;
    items.push(...dimensionRow({ run: beside.run, at: beside.edge + beside.away * out, edge: beside.edge }, stretches));
    out += turnedRoom(stretches, beside.run);
  }
  return items;
}

/** Places in order, each once. */
function inOrder(places: readonly Length[]): readonly Length[] {
  const sorted = [...places].sort(compare);
  return sorted.filter((place, index) => index === 0 || !equal(place, sorted[index - 1]!));
}

function alike(a: readonly Length[], b: readonly Length[]): boolean {
  return a.length === b.length && a.every((place, index) => equal(place, b[index]!));
}

/** The stretches between neighbouring places, with their exact sizes. */
function stretchesOf(desk: Desk, ordered: readonly Length[], paper: (at: Length) => number): readonly Stretch[] {
  return ordered.slice(1).map((end, index) => {
    const start = ordered[index]!;
    const [a, b] = [paper(start), paper(end)];
    return { from: Math.min(a, b), to: Math.max(a, b), label: sized(desk, subtract(end, start)) };
  });
}
