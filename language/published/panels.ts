import type { Source, Tag } from "./cited.ts";
import {
  addScaled,
  decimalOf,
  type Fraction,
  inches,
  lengthOf,
  readFraction,
  type ShopLength,
  sameFraction,
} from "./lengths.ts";

/** What a sheet is, as far as its label's tolerance goes; plain "plywood" is bought by an everyday label that may be a 32nd over the real category. */
export type PanelKind =
  | "plywood"
  | "PS 1 plywood"
  | "PS 1 sanded plywood"
  | "hardwood plywood"
  | "MDF"
  | "particleboard";

/** One performance category of PS 1: its name, the thickness allowed unsanded, and the thickness its mark shows. */
export type PanelCategory = {
  readonly category: ShopLength;
  readonly least: ShopLength;
  readonly most: ShopLength;
  readonly marked: ShopLength;
};

/** The thickness that a label may mean, exact at both ends, and what says so. */
export type LabelRange = {
  readonly least: ShopLength;
  readonly most: ShopLength;
  readonly tag: Tag;
  readonly source: string;
};

/** Where the PS 1 categories were read; thickness is measured at 9 % moisture. */
export const ps1Source: Source = {
  tag: "as transcribed",
  source: "PS 1 performance categories, from the panel association's pages",
};
const sandedSource: Source = {
  tag: "as transcribed",
  source: "PS 1-19 sanded tolerance, as described: 1/64 in up to 3/4, 3 % above",
};
const everydaySource: Source = {
  tag: "common practice",
  source: "common practice, no source: a sheet sold by an everyday label may be the PS 1 category a 32nd below it",
};
const hardwoodSource: Source = { tag: "from memory", source: "from memory of ANSI/HPVA HP-1, sanded: +0, -1/32 in" };
const mdfSource: Source = {
  tag: "as transcribed",
  source:
    "ANSI A208.2 Table 2, from a buyers guide: average and variance 0.005 in each, the sign read as plus or minus",
};
const particleSource: Source = {
  tag: "from memory",
  source: "from memory of ANSI A208.1: average 0.008 in and variance 0.005 in, each plus or minus",
};
const en315Source: Source = { tag: "from memory", source: "from memory of EN 315:2000 thickness tolerances" };

/** PS 1 categories with their thickness in inches, unsanded, touch-sanded and overlaid grades. */
export const ps1Categories: readonly PanelCategory[] = [
  category("1/4", "0.219", "0.281", "0.225"),
  category("11/32", "0.313", "0.375", "0.322"),
  category("3/8", "0.344", "0.406", "0.354"),
  category("7/16", "0.406", "0.469", "0.418"),
  category("15/32", "0.438", "0.500", "0.451"),
  category("1/2", "0.469", "0.531", "0.483"),
  category("19/32", "0.563", "0.625", "0.578"),
  category("5/8", "0.594", "0.656", "0.609"),
  category("23/32", "0.688", "0.750", "0.703"),
  category("3/4", "0.719", "0.781", "0.734"),
  category("13/16", "0.781", "0.844", "0.788"),
  category("7/8", "0.831", "0.919", "0.849"),
  category("1", "0.950", "1.050", "0.970"),
  category("1-1/8", "1.069", "1.181", "1.091"),
  category("1-1/4", "1.188", "1.313", "1.213"),
];

/** Everyday labels with the category a 32nd below that the sheet may really be. */
const everyday: readonly (readonly [label: string, category: string])[] = [
  ["3/8", "11/32"],
  ["1/2", "15/32"],
  ["5/8", "19/32"],
  ["3/4", "23/32"],
];

/** The thickness an inch label may stand for on that kind of panel; undefined for a label the standard has no category for, or not above zero. */
export function labelRange(label: Fraction, kind: PanelKind): LabelRange | undefined {
  if (!(0 < decimalOf(label))) return undefined;
  if (kind === "PS 1 plywood") return categoryRange(label, ps1Source);
  if (kind === "PS 1 sanded plywood") return sandedRange(label);
  if (kind === "hardwood plywood") return around(label, [-1, 32], [0, 1], hardwoodSource);
  if (kind === "MDF") return around(label, [-10, 1000], [10, 1000], mdfSource);
  if (kind === "particleboard") return around(label, [-13, 1000], [13, 1000], particleSource);
  return everydayRange(label);
}

/** The thickness a millimetre label may stand for on European plywood, EN 315 from memory; undefined for a label that is not above zero. */
export function metricLabelRange(label: Fraction, finish: "sanded" | "unsanded"): LabelRange | undefined {
  if (!(0 < decimalOf(label))) return undefined;
  const least = addScaled([-2, 5], [97, 100], label);
  const most = addScaled(finish === "sanded" ? [1, 5] : [4, 5], [103, 100], label);
  if (least === undefined || most === undefined || least[0] <= 0) return undefined;
  return { least: lengthOf(least, "mm"), most: lengthOf(most, "mm"), ...en315Source };
}

/** The PS 1 category of exactly that label in inches; undefined when there is none. */
export function findCategory(label: Fraction): PanelCategory | undefined {
  return ps1Categories.find((one) => sameFraction(one.category.exact, label));
}

function everydayRange(label: Fraction): LabelRange | undefined {
  const own = categoryRange(label, ps1Source);
  const lower = everyday.find(([name]) => sameFraction(readFraction(name) ?? [0, 1], label))?.[1];
  const below = lower === undefined ? undefined : findCategory(readFraction(lower) ?? [0, 1]);
  if (own === undefined || below === undefined) return own;
  return { least: below.least, most: own.most, ...everydaySource };
}

function categoryRange(label: Fraction, source: Source): LabelRange | undefined {
  const found = findCategory(label);
  return found && { least: found.least, most: found.most, ...source };
}

function sandedRange(label: Fraction): LabelRange | undefined {
  if (findCategory(label) === undefined) return undefined;
  if (decimalOf(label) <= 3 / 4) return around(label, [-1, 64], [1, 64], sandedSource);
  const least = addScaled([0, 1], [97, 100], label);
  const most = addScaled([0, 1], [103, 100], label);
  return least && most && { least: lengthOf(least, "in"), most: lengthOf(most, "in"), ...sandedSource };
}

function around(label: Fraction, less: Fraction, more: Fraction, source: Source): LabelRange | undefined {
  const least = addScaled(label, [1, 1], less);
  const most = addScaled(label, [1, 1], more);
  if (least === undefined || most === undefined || least[0] <= 0) return undefined;
  return { least: lengthOf(least, "in"), most: lengthOf(most, "in"), ...source };
}

function category(name: string, least: string, most: string, marked: string): PanelCategory {
  return { category: inches(name), least: inches(least), most: inches(most), marked: inches(marked) };
}
