import type { Finding } from "../../core/finding.ts";
import { compare, less, subtract, times } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { givenSize } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { BoxModel, Model } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, placeOf, rewrite, say } from "../check.ts";
import { isUnderMounted } from "./side-mounted.ts";

/** The sides of a box on under-mounted slides must not be thicker than the slides take. */
export const underMountedSlideMustTakeSide: Check = {
  codes: ["slide/thick-side"],
  run: (context, model) => model.boxes.filter(isUnderMounted).flatMap((box) => check(context, model, box)),
};

function check(context: Context, model: Model, box: BoxModel): readonly Finding[] {
  const most = givenSize(context, box.slides.block.thickest) ?? fallback("under.thickest");
  const word = box.whole.sides?.stocks[0];
  const { thickness } = box.sides;
  if (word === undefined || !less(most.value, thickness.value)) return [];
  const thinner = [...model.stocks.values()]
    .filter((stock) => stock.kind === box.sides.kind && !less(most.value, stock.thickness.value))
    // A side of less than half of what the slide takes is a bottom's stock.
    .filter((stock) => !less(times(stock.thickness.value, 2), most.value))
    .sort((a, b) => compare(b.thickness.value, a.thickness.value))
    .slice(0, 2);
  return [
    finding({
      code: "slide/thick-side",
      severity: "error",
      span: word.span,
      message: `"${word.text}" is ${say(context, thickness.value)} thick, ${say(context, subtract(thickness.value, most.value))} more than "${box.slides.name}" takes`,
      reason: "The slide runs beside the bottom and under the side; a thicker side does not clear it.",
      remedy: `Make the sides ${say(context, most.value)} thick at most, or use slides for thicker ones.`,
      related: [{ span: placeOf(most, box.slides.block.name.span), message: "the thickest side that they take" }],
      fixes: thinner.map((stock) => rewrite(word.span, stock.name, `Make the sides of "${stock.name}"`)),
    }),
  ];
}
