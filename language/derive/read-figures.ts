import type { Context } from "./context.ts";
import { amount, givenDistance, pieces, size } from "./context.ts";
import { degrees } from "./opening-angle.ts";

/** More than this is a slip of the pen, for a number of sheets or boards in the rack. */
export const MOST_IN_RACK = 10_000;

/**
 * Reads the figures that no part is derived from, those of plan, weights and prices, so that what is wrong with them is
 * found while they are typed. What they say is read again where it is used.
 */
export function readFigures(context: Context): void {
  const { sheets, boards, edgings, slides, hinges, screws, offcuts, shop } = context.design;
  for (const { kerf, trim } of shop.saw) for (const given of [kerf, trim]) givenDistance(context, given);
  for (const { first, second } of [...sheets.flatMap((block) => block.size ?? []), ...offcuts]) {
    for (const measure of [first, second]) size(context, measure);
  }
  for (const { wide, long } of boards) {
    for (const { measure } of [...(wide?.values ?? []), ...(long?.values ?? [])]) size(context, measure);
  }
  for (const { have } of [...sheets, ...boards]) if (have !== undefined) pieces(context, have.value, MOST_IN_RACK);
  for (const { costs } of [...sheets, ...boards, ...edgings, ...slides, ...hinges, ...screws]) {
    if (costs !== undefined) amount(context, costs.amount);
  }
  for (const { opens } of hinges) degrees(context, opens);
  for (const { density } of [...sheets, ...boards]) if (density !== undefined) amount(context, density.value);
  for (const weight of [...slides.flatMap(({ carries }) => carries ?? []), ...shop.lifts.map((lift) => lift.amount)]) {
    amount(context, weight.amount);
  }
}
