import type { Cited, Source } from "./cited.ts";
import { inches, type ShopLength } from "./lengths.ts";

/** One row of the pocket-screw table: the pocketed piece, the range of the piece it goes into, and the screw, all in inches. */
export type PocketScrewRow = {
  readonly pocketed: ShopLength;
  readonly into: { readonly from: ShopLength; readonly to: ShopLength };
  readonly screw: ShopLength;
};

const practice: Source = {
  tag: "common practice",
  source: "common practice, no source: pocket-screw lengths by thickness",
};
const memory: Source = { tag: "from memory", source: "from memory: usual pocket-screw spacing" };

/** Where the lengths come from. */
export const pocketScrewSource: Source = practice;

/** Pocket-screw lengths as usually charted. */
export const pocketScrewRows: readonly PocketScrewRow[] = [
  row("1/2", "1/2", "1/2", "1"),
  row("3/4", "3/4", "3/4", "1-1/4"),
  row("3/4", "1", "1-1/4", "1-1/2"),
  row("1-1/2", "1-1/2", "1-1/2", "2-1/2"),
];

/** Angle of the pocket from the face, in degrees. */
export const pocketAngle: Cited<number> = { value: 15, ...practice };

/** Usual spacing: the farthest between two, the least distance to an edge, and the rail width from which two fit, in inches. */
export const pocketSpacing = {
  apart: { value: inches("8"), ...memory },
  edge: { value: inches("1/2"), ...memory },
  twoFrom: { value: inches("1-1/2"), ...memory },
} as const satisfies Record<string, Cited<ShopLength>>;

/**
 * The screw for a measured pocketed piece and the piece it goes into, in inches: the charted row whose pocketed thickness lies within 1/8 in and whose other
 * piece is at least as thick as the row asks, less 1/8. Undefined when the chart has no row that fits, which asks for a trial in scrap.
 */
export function pocketScrew(pocketed: number, into: number): Cited<ShopLength> | undefined {
  const slack = 1 / 8;
  const fitting = pocketScrewRows.filter(
    (one) => Math.abs(one.pocketed.decimal - pocketed) <= slack && one.into.from.decimal - slack <= into,
  );
  const best = fitting.sort((a, b) => closeness(a, pocketed, into) - closeness(b, pocketed, into))[0];
  return best === undefined ? undefined : { value: best.screw, ...practice };
}

function closeness(one: PocketScrewRow, pocketed: number, into: number): number {
  const outside = Math.max(one.into.from.decimal - into, into - one.into.to.decimal, 0);
  return Math.abs(one.pocketed.decimal - pocketed) + outside;
}

function row(pocketed: string, from: string, to: string, screw: string): PocketScrewRow {
  return { pocketed: inches(pocketed), into: { from: inches(from), to: inches(to) }, screw: inches(screw) };
}
