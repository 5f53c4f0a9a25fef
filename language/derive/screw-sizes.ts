import type { Length, Units } from "../core/length.ts";
import { inUnit, toMillimetres, withUnit } from "../core/length.ts";
import { less, ratio, toNumber } from "../core/rational.ts";
import { pocketScrew } from "../published/pocket-screws.ts";
import type { Context } from "./context.ts";
import { givenSize } from "./context.ts";
import { exact } from "./stock.ts";

/**
 * What is bought where a file names no screws: by gauge and inches, or by diameter and millimetres as a metric shop buys
 * them, the nearest that is sold (common practice, no source).
 */
const usual = {
  slide: { inches: "#8 × 5/8 in", millimetres: "4 × 16 mm" },
  thinSlide: { inches: "#8 × 1/2 in", millimetres: "4 × 12 mm" },
  corner: { inches: "#8 × 1 1/4 in", millimetres: "4 × 30 mm" },
  bottom: { inches: "#6 × 1 in", millimetres: "3.5 × 25 mm" },
  front: { inches: "#8 × 1 in", millimetres: "4 × 25 mm" },
} as const satisfies Record<string, Record<Units, string>>;

/** For a slide: none that would come out inside a box of thin stock. */
export function slideScrew(context: Context, side: Length): string {
  return usualScrew(context, less(side, ratio(5, 8)) ? "thinSlide" : "slide");
}

export function usualScrew({ units }: Context, use: keyof typeof usual): string {
  return usual[use][units];
}

/** Pocket screws are made by the inch and sold by the whole millimetre nearest to that: 25, 32, 38, 64 (common practice, no source). */
export function pocketScrewLength({ units }: Context, pocketed: number, into: number): Length | undefined {
  const charted = pocketScrew(pocketed, into);
  if (charted === undefined) return undefined;
  const length = exact(charted.value);
  return units === "inches" ? length : inUnit(ratio(Math.round(toNumber(toMillimetres(length)))), "mm");
}

/** A screw as its block states it: gauge or diameter, and length. */
export function statedScrew(context: Context, name: string): string {
  const block = context.design.screws.find((screw) => screw.name.text === name);
  const [thick, long] = [givenSize(context, block?.thick), givenSize(context, block?.long)].map((size) =>
    size === undefined ? undefined : withUnit(size.value, context.units),
  );
  // `4 × 30 mm`: the unit once, behind both.
  const across = block?.gauge?.text ?? (long === undefined ? thick : thick?.replace(/ (mm|in)$/, ""));
  return [across, long].filter((text) => text !== undefined).join(" × ");
}
