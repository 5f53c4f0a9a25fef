import type { Finding } from "../../core/finding.ts";
import { writtenText } from "../../core/length.ts";
import { less } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { placeOf, say } from "../check.ts";

/** A box must not be shorter than its slide. */
export const slideMustNotPassBox: Check = {
  codes: ["slide/longer-than-box"],
  run: (context, model) => model.boxes.flatMap((box) => check(context, box)),
};

function check(context: Context, box: BoxModel): readonly Finding[] {
  const { slides, whole } = box;
  if (whole.deep === undefined || slides.length === undefined || !less(box.deep.value, slides.length.value)) return [];
  const fitting = slides.series.filter((length) => !less(box.deep.value, length.value)).at(-1);
  const named = whole.slides?.length;
  const text = writtenText(slides.length.value, context.units);
  return [
    {
      code: "slide/longer-than-box",
      severity: "error",
      span: whole.deep.measure.span,
      message: `the box is ${say(context, box.deep.value)} deep and its slide is ${say(context, slides.length.value)} long`,
      reason: "The end of the slide would stand free behind the box, with nothing to screw it to.",
      remedy:
        fitting === undefined
          ? `Make the box at least ${text} deep.`
          : `Make the box at least ${text} deep, or use the ${writtenText(fitting.value, context.units)} slide.`,
      related: [
        {
          span: placeOf(slides.length, whole.slides?.name.span ?? box.block.head),
          message: "the slide's length comes from here",
        },
      ],
      fixes: [
        { title: `Make the box ${text} deep`, edits: [{ span: whole.deep.measure.span, text }], safe: false },
        ...(fitting === undefined || named === undefined
          ? []
          : [
              {
                title: `Use the ${writtenText(fitting.value, context.units)} slide`,
                edits: [{ span: named.span, text: writtenText(fitting.value, context.units) }],
                safe: false,
              },
            ]),
      ],
    },
  ];
}
