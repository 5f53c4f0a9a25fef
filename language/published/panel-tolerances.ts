import type { Cited, Source } from "./cited.ts";
import { type Fraction, inches, millimetres, readFraction, type ShopLength } from "./lengths.ts";

/** How far a sheet's length or width may be off: over and under the size ordered. */
export type SizeTolerance = { readonly over: ShopLength; readonly under: ShopLength };

const ps1: Source = { tag: "as transcribed", source: "PS 1-19, as described" };
const a2082: Source = {
  tag: "as transcribed",
  source: "ANSI A208.2 Table 2, from a buyers guide; the sign read as plus or minus",
};

/** Length and width of a sheet, by kind; MDF's holds for panels over 2 ft. */
export const sheetSize = {
  "PS 1 plywood": { value: { over: inches("0"), under: inches("1/16") }, ...ps1 },
  MDF: { value: { over: inches("0.080"), under: inches("0.080") }, ...a2082 },
  "hardwood plywood": {
    value: { over: inches("1/32"), under: inches("1/32") },
    tag: "from memory",
    source: "from memory of ANSI/HPVA HP-1",
  },
  particleboard: {
    value: { over: inches("0.080"), under: inches("0.080") },
    tag: "from memory",
    source: "from memory of ANSI A208.1",
  },
  "EN 315 plywood": {
    value: { over: millimetres("3.5"), under: millimetres("3.5") },
    tag: "from memory",
    source: "from memory of EN 315:2000",
  },
} as const satisfies Record<string, Cited<SizeTolerance>>;

/** Difference of diagonals allowed by PS 1 for each nominal foot of the longest edge. */
export const squarenessPerFoot: Cited<ShopLength> = { value: inches("1/64"), ...ps1 };

/** How far an edge may stray from a line corner to corner by PS 1. */
export const straightness: Cited<ShopLength> = { value: inches("1/16"), ...ps1 };

/** Difference of diagonals allowed on a sheet by PS 1, exact in inches, from its longest edge in whole feet; undefined unless that is above zero. */
export function allowedOutOfSquare(longestEdgeFeet: number): Fraction | undefined {
  return 0 < longestEdgeFeet ? readFraction(`${longestEdgeFeet}/64`) : undefined;
}

/** Largest linear expansion of MDF, as a fraction of its size. */
export const mdfExpansion: Cited<number> = { value: 0.0033, ...a2082 };

/** How EN 324 reports a panel: thickness is the mean of so many readings, so far in from the edge, rounded to so much. */
export const en324 = {
  value: {
    readings: 8,
    inset: millimetres("50"),
    thicknessTo: millimetres("0.1"),
    sizeTo: millimetres("1"),
    squarenessPerMetre: millimetres("0.5"),
  },
  tag: "as transcribed",
  source: "EN 324-1 and EN 324-2, from the panel association's European pages",
} as const satisfies Cited<unknown>;

/** Moisture in percent at which EN 315 sizes hold: the middle, and plus or minus. */
export const en315Moisture: Cited<{ readonly middle: number; readonly spread: number }> = {
  value: { middle: 10, spread: 2 },
  tag: "as transcribed",
  source: "EN 315:2000, from the panel association's European pages",
};
