import type { Cited, Source } from "./cited.ts";
import { addScaled, type Fraction, inches, lengthOf, millimetres, type ShopLength, sameFraction } from "./lengths.ts";

/** What an under-mounted slide takes off the opening, by the thickness of the drawer side: the usual deduction and the most. */
export type UnderMountRow = { readonly side: ShopLength; readonly deduct: ShopLength; readonly atMost: ShopLength };

const practice: Source = { tag: "common practice", source: "common practice, no source: slide fitting notes" };

/** Side-mounted ball-bearing slides. */
export const sideMount = {
  thickness: { value: millimetres("12.7"), ...practice },
  leastSpace: { value: millimetres("12.9"), ...practice },
  mostSpace: { value: millimetres("13.2"), ...practice },
  usualSide: { value: inches("17/32"), ...practice },
  heightClear: { value: inches("1/2"), ...practice },
  behind: { value: inches("3/8"), ...practice },
  step: { value: inches("2"), ...practice },
} as const satisfies Record<string, Cited<ShopLength>>;

/** Under-mounted slides. */
export const underMount = {
  wallToInside: { value: millimetres("21"), ...practice },
  insideDeduct: { value: millimetres("42"), ...practice },
  leastHeightDeduct: { value: inches("13/16"), ...practice },
  heightDeduct: { value: inches("1"), ...practice },
  behind: { value: inches("1/2"), ...practice },
  step: { value: inches("3"), ...practice },
  shortest: { value: inches("9"), ...practice },
  longest: { value: inches("30"), ...practice },
  recess: { value: inches("1/2"), tag: "from memory", source: "from memory: bottom recess of under-mounted slides" },
} as const satisfies Record<string, Cited<ShopLength>>;

/** Usual deductions from the opening to the outside of the drawer for under-mounted slides. */
export const underMountRows: readonly UnderMountRow[] = [
  { side: inches("5/8"), deduct: inches("3/8"), atMost: inches("13/32") },
  { side: inches("1/2"), deduct: inches("5/8"), atMost: inches("21/32") },
  { side: millimetres("15"), deduct: inches("7/16"), atMost: inches("15/32") },
  { side: inches("0.485"), deduct: inches("21/32"), atMost: inches("11/16") },
];

/** Where the under-mount rows come from. */
export const underMountSource: Source = practice;

/** Outside width of a drawer on under-mounted slides, exact in inches: opening - 42 mm + two sides; undefined past safe whole numbers or below zero. */
export function underMountWidth(opening: Fraction, side: Fraction): ShopLength | undefined {
  const inside = addScaled(opening, [-1, 1], [210, 127]);
  const outside = inside && addScaled(inside, [2, 1], side);
  return outside === undefined || outside[0] <= 0 ? undefined : lengthOf(outside, "in");
}

/** The charted deduction for a side of that thickness in inches; undefined when the chart has none. */
export function underMountDeduction(side: Fraction): UnderMountRow | undefined {
  return underMountRows.find((row) => row.side.unit === "in" && sameFraction(row.side.exact, side));
}
