import type { Finding } from "../../core/finding.ts";
import { writtenText } from "../../core/length.ts";
import { less, subtract, times } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel } from "../../derive/model.ts";
import { boxWidth } from "../../derive/rules/box-width.ts";
import type { Check } from "../check.ts";
import { finding, placeOf, rewriteSafely, say } from "../check.ts";
import { forgives } from "../slide/forgives.ts";
import { isSideMounted } from "../slide/side-mounted.ts";

/** A box must be wide enough for its slides to reach it. */
export const boxMustReachSlides: Check = {
  codes: ["box/too-narrow"],
  run: (context, { boxes }) => boxes.filter(isSideMounted).flatMap((box) => check(context, box)),
};

function check(context: Context, box: BoxModel): readonly Finding[] {
  const given = box.whole.wide;
  if (given === undefined) return [];
  const right = boxWidth(box.opening.wide, box.slides.clearance);
  const least = subtract(right.value, times(forgives(box.slides).more, 2));
  if (!less(box.wide.value, least)) return [];
  const text = writtenText(right.value, context.units);
  return [
    finding({
      code: "box/too-narrow",
      severity: "error",
      span: given.measure.span,
      message: `this box is ${say(context, subtract(right.value, box.wide.value))} narrower than its slides want: ${say(context, right.value)} fits`,
      reason: "The slides would be spread past what they forgive: they drop out of their tracks or will not close.",
      remedy: `Make it ${say(context, right.value)} wide, or leave the size out and it is derived.`,
      related: [
        { span: placeOf(box.slides.clearance, box.slides.block.name.span), message: "what they take on each side" },
      ],
      fixes: [rewriteSafely(given.measure.span, text)],
    }),
  ];
}
