import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { writtenText } from "../../core/length.ts";
import { add, less, over, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { givenSize } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { BoxModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, placeOf, rewrite, say } from "../check.ts";
import { isSideMounted } from "./side-mounted.ts";

/** A side-mounted slide must lie on the side of its box: neither higher than the box nor past its edges. */
export const slideMustLieOnBox: Check = {
  codes: ["slide/higher-than-box", "slide/off-the-box"],
  run: (context, { boxes }) =>
    boxes.filter((box) => isSideMounted(box) && 0 < box.parts.length).flatMap((box) => check(context, box)),
};

function check(context: Context, box: BoxModel): readonly Finding[] {
  const high = givenSize(context, box.slides.block.high) ?? fallback("slides.high");
  const side = box.parts.find((part) => part.name === "side")?.width;
  if (side === undefined) return [];
  if (less(side.value, high.value)) {
    return [
      finding({
        code: "slide/higher-than-box",
        severity: "error",
        span: placeOf(box.high, box.opening.name.span),
        message: `the side of this box is ${say(context, side.value)} high, ${say(context, subtract(high.value, side.value))} less than its slide`,
        reason: "The slide would stand past the edge of the side, and its screws would miss it.",
        remedy: `Make the opening or the box higher, or use a slide that is lower than ${say(context, side.value)}.`,
        related: [
          {
            span: placeOf(high, box.slides.block.name.span),
            message: `"${box.slides.name}" is ${say(context, high.value)} high`,
          },
        ],
      }),
    ];
  }
  return offTheBox(context, box, side.value, high.value);
}

function offTheBox(context: Context, box: BoxModel, side: Length, high: Length): readonly Finding[] {
  const at = givenSize(context, box.whole.at);
  if (at === undefined || box.whole.at === undefined) return [];
  const lowest = add(subtract(add(box.slides.below.value, box.high.value), side), over(high, 2));
  const highest = subtract(add(box.slides.below.value, box.high.value), over(high, 2));
  const isLow = less(at.value, lowest);
  if (!isLow && !less(highest, at.value)) return [];
  const off = isLow ? subtract(lowest, at.value) : subtract(at.value, highest);
  const middle = writtenText(over(add(lowest, highest), 2), context.units);
  return [
    finding({
      code: "slide/off-the-box",
      severity: "error",
      span: box.whole.at.measure.span,
      message: `at ${say(context, at.value)} the slide stands ${say(context, off)} past the ${isLow ? "lower" : "upper"} edge of the box's side`,
      reason: "Its screws would miss the side or split its edge.",
      remedy: `Put its middle between ${say(context, lowest)} and ${say(context, highest)} above the floor of the opening.`,
      fixes: [rewrite(box.whole.at.measure.span, middle, `Write ${middle}, the middle of the side`)],
    }),
  ];
}
