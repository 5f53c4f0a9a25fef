import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { writtenText } from "../../core/length.ts";
import { absolute, equal, less, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel } from "../../derive/model.ts";
import { inSeries, longestThatFits } from "../../derive/slides.ts";
import type { Check } from "../check.ts";
import { rewrite, say } from "../check.ts";

/** The slide named must be one of its series. */
export const slideMustBeSold: Check = {
  codes: ["slide/not-sold"],
  run: (context, model) => model.boxes.flatMap((box) => check(context, box)),
};

function check(context: Context, box: BoxModel): readonly Finding[] {
  const { slides, whole } = box;
  const named = whole.slides?.length;
  const wanted = slides.length;
  if (named === undefined || wanted === undefined || inSeries(slides)) return [];
  const [first, ...rest] = slides.series;
  const near = rest.reduce(
    (best, next) => (less(distance(next.value, wanted.value), distance(best.value, wanted.value)) ? next : best),
    first!,
  );
  const text = writtenText(near.value, context.units);
  const best = longestThatFits(slides);
  const longest =
    best === undefined || equal(best.value, near.value) ? undefined : writtenText(best.value, context.units);
  return [
    {
      code: "slide/not-sold",
      severity: "error",
      span: named.span,
      message: `"${slides.name}" is not sold ${say(context, wanted.value)} long`,
      reason: `Its lengths are ${slides.series.map((length) => writtenText(length.value, context.units)).join(", ")}.`,
      remedy: `Write one of them; the nearest is ${text}.`,
      related: [{ span: slides.block.lengths?.span ?? slides.block.name.span, message: "the lengths of the series" }],
      fixes: [
        rewrite(named.span, text, `Write ${text}, the nearest${longest === undefined ? "" : `; ${longest} fits too`}`),
        ...(longest === undefined ? [] : [rewrite(named.span, longest, `Write ${longest}, the longest that fits`)]),
      ],
    },
  ];
}

function distance(a: Length, b: Length): Length {
  return absolute(subtract(a, b));
}
