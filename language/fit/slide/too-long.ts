import type { Finding, Fix } from "../../core/finding.ts";
import { writtenText } from "../../core/length.ts";
import { add, less, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel, Model } from "../../derive/model.ts";
import { longestThatFits } from "../../derive/slides.ts";
import type { Check } from "../check.ts";
import { placeOf, say } from "../check.ts";

/** The slide named must not be longer than the depth of its opening allows. */
export const slideTooLong: Check = {
  codes: ["slide/too-long"],
  run: (context, model) => model.boxes.flatMap((box) => check(context, model, box)),
};

function check(context: Context, _model: Model, box: BoxModel): readonly Finding[] {
  const { slides, opening, whole } = box;
  const named = whole.slides?.length;
  if (named === undefined || slides.length === undefined || slides.room === undefined || opening.deep === undefined)
    return [];
  if (!less(slides.room.value, slides.length.value)) return [];
  const best = longestThatFits(slides);
  const wanted = add(slides.length.value, subtract(opening.deep.value, slides.room.value));
  const fixes: readonly Fix[] =
    best === undefined
      ? []
      : [
          {
            title: `Write ${writtenText(best.value, context.units)}, the longest that fits`,
            edits: [{ span: named.span, text: writtenText(best.value, context.units) }],
            safe: true,
          },
        ];
  return [
    {
      code: "slide/too-long",
      severity: "error",
      span: named.span,
      message: `a ${writtenText(slides.length.value, context.units)} slide needs ${say(context, wanted)} of depth; "${opening.name.text}" has ${say(context, opening.deep.value)}`,
      reason: `The slide, and the ${say(context, subtract(opening.deep.value, slides.room.value))} that it wants ${slides.block.longer === undefined ? "behind it" : "past its name and behind it"}, must go in before the front is home.`,
      remedy:
        best === undefined
          ? `No slide of "${slides.name}" is short enough: use another series, or make the opening deeper.`
          : `The longest that fits is ${writtenText(best.value, context.units)}.`,
      related: [
        { span: placeOf(opening.deep, opening.name.span), message: `the depth comes from here` },
        { span: placeOf(slides.behind, slides.block.name.span), message: `what it wants behind it` },
      ],
      fixes,
    },
  ];
}
