import type { Source } from "./cited.ts";
import { type Fraction, inches, type ShopLength, sameFraction } from "./lengths.ts";

/** One softwood size: the name it is sold by, and what it measures dry (19 % moisture or less) and green. */
export type SoftwoodSize = { readonly nominal: ShopLength; readonly dry: ShopLength; readonly green: ShopLength };

/** One hardwood thickness: rough, its name in quarters where it has one, and dressed on one side or two; `only` is a single printed figure. */
export type HardwoodThickness = {
  readonly rough: ShopLength;
  readonly quarters?: string;
  readonly oneSide?: ShopLength;
  readonly twoSides?: ShopLength;
  readonly only?: ShopLength;
};

/** Where the softwood sizes were read. */
export const softwoodSource: Source = {
  tag: "as transcribed",
  source: "PS 20 American Softwood Lumber Standard sizes, as transcribed",
};

/** Where the hardwood thicknesses were read. */
export const hardwoodSource: Source = {
  tag: "as transcribed",
  source: "hardwood lumber thickness tables, two transcriptions agree",
};

/** Softwood thicknesses in inches: boards under 2 nominal, dimension lumber from 2. */
export const softwoodThicknesses: readonly SoftwoodSize[] = [
  softwood("3/8", "5/16", "11/32"),
  softwood("1/2", "7/16", "15/32"),
  softwood("5/8", "9/16", "19/32"),
  softwood("3/4", "5/8", "11/16"),
  softwood("1", "3/4", "25/32"),
  softwood("1-1/4", "1", "1-1/32"),
  softwood("1-1/2", "1-1/4", "1-9/32"),
  softwood("2", "1-1/2", "1-9/16"),
  softwood("2-1/2", "2", "2-1/16"),
  softwood("3", "2-1/2", "2-9/16"),
  softwood("3-1/2", "3", "3-1/16"),
  softwood("4", "3-1/2", "3-9/16"),
];

/** Softwood widths in inches. */
export const softwoodWidths: readonly SoftwoodSize[] = [
  softwood("2", "1-1/2", "1-9/16"),
  softwood("3", "2-1/2", "2-9/16"),
  softwood("4", "3-1/2", "3-9/16"),
  softwood("5", "4-1/2", "4-5/8"),
  softwood("6", "5-1/2", "5-5/8"),
  softwood("7", "6-1/2", "6-5/8"),
  softwood("8", "7-1/4", "7-1/2"),
  softwood("9", "8-1/4", "8-1/2"),
  softwood("10", "9-1/4", "9-1/2"),
  softwood("11", "10-1/4", "10-1/2"),
  softwood("12", "11-1/4", "11-1/2"),
  softwood("14", "13-1/4", "13-1/2"),
  softwood("16", "15-1/4", "15-1/2"),
];

/** Hardwood thicknesses in inches, rough and dressed. */
export const hardwoodThicknesses: readonly HardwoodThickness[] = [
  { rough: inches("3/8"), only: inches("3/16") },
  { rough: inches("1/2"), ...dressed("3/8", "5/16") },
  { rough: inches("5/8"), ...dressed("1/2", "7/16") },
  { rough: inches("3/4"), ...dressed("5/8", "9/16") },
  { rough: inches("1"), quarters: "4/4", ...dressed("7/8", "13/16") },
  { rough: inches("1-1/4"), quarters: "5/4", ...dressed("1-1/8", "1-1/16") },
  { rough: inches("1-1/2"), quarters: "6/4", ...dressed("1-3/8", "1-5/16") },
  { rough: inches("1-3/4"), only: inches("1-1/2") },
  { rough: inches("2"), quarters: "8/4", ...dressed("1-13/16", "1-3/4") },
  { rough: inches("3"), quarters: "12/4", ...dressed("2-13/16", "2-3/4") },
  { rough: inches("3-1/2"), only: inches("3-1/4") },
  { rough: inches("4"), quarters: "16/4", ...dressed("3-13/16", "3-3/4") },
];

/** The softwood thickness sold by that nominal size in inches; undefined when there is none. */
export function softwoodThickness(nominal: Fraction): SoftwoodSize | undefined {
  return softwoodThicknesses.find((size) => sameFraction(size.nominal.exact, nominal));
}

/** The softwood width sold by that nominal size in inches; undefined when there is none. */
export function softwoodWidth(nominal: Fraction): SoftwoodSize | undefined {
  return softwoodWidths.find((size) => sameFraction(size.nominal.exact, nominal));
}

/** The hardwood thickness sold by that rough size in inches, 5/4 being the same number as 1-1/4; undefined when there is none. */
export function hardwoodThickness(rough: Fraction): HardwoodThickness | undefined {
  return hardwoodThicknesses.find((size) => sameFraction(size.rough.exact, rough));
}

/** What the two grades most bought must give: least width in inches, lengths in feet, and the share that is clear in percent. */
export const hardwoodGrades = [
  { grade: "FAS", leastWidth: inches("6"), lengths: { from: 8, to: 16 }, clear: 83.3, ...hardwoodSource },
  { grade: "No. 1 Common", leastWidth: inches("3"), clear: 66.6, ...hardwoodSource },
] as const;

function softwood(nominal: string, dry: string, green: string): SoftwoodSize {
  return { nominal: inches(nominal), dry: inches(dry), green: inches(green) };
}

function dressed(oneSide: string, twoSides: string): { readonly oneSide: ShopLength; readonly twoSides: ShopLength } {
  return { oneSide: inches(oneSide), twoSides: inches(twoSides) };
}
