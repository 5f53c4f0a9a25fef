import type { Finding } from "../../core/finding.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { placeOf, say } from "../check.ts";

/** A box without a slide named must have one in its series that fits the depth. */
export const someSlideMustFit: Check = {
  codes: ["slide/none-fits", "slide/no-lengths"],
  run: (context, model) => model.boxes.flatMap((box) => check(context, box)),
};

function check(context: Context, box: BoxModel): readonly Finding[] {
  const { slides, opening, whole } = box;
  if (
    slides.length !== undefined ||
    slides.room === undefined ||
    opening.deep === undefined ||
    whole.slides === undefined
  )
    return [];
  const shortest = slides.series[0];
  if (shortest === undefined) return [noLengths(box)];
  return [
    {
      code: "slide/none-fits",
      severity: "error",
      span: whole.slides.name.span,
      message: `no slide of "${slides.name}" fits "${opening.name.text}": the shortest is ${say(context, shortest.value)}, and there is room for ${say(context, slides.room.value)}`,
      reason: "A slide that is longer than the room holds its front open.",
      remedy: "Use a series with shorter slides, or make the opening deeper.",
      related: [
        { span: placeOf(opening.deep, opening.name.span), message: "the depth comes from here" },
        { span: slides.block.lengths?.span ?? slides.block.name.span, message: "the lengths of the series" },
      ],
      fixes: [],
    },
  ];
}

function noLengths(box: BoxModel): Finding {
  return {
    code: "slide/no-lengths",
    severity: "error",
    span: box.slides.block.name.span,
    message: `"${box.slides.name}" has no lengths`,
    reason: "The slide for a box is chosen from the lengths that can be bought.",
    remedy: "Write them: lengths 10 to 28 by 2.",
    related: [{ span: box.whole.slides?.name.span ?? box.block.head, message: "a box uses it" }],
    fixes: [],
  };
}
