import type { Finding } from "../../core/finding.ts";
import { writtenText } from "../../core/length.ts";
import { less, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import { gapRound, gapRoundPlace } from "../../derive/front-gap.ts";
import type { FrontModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, rewriteSafely, say } from "../check.ts";
import { limits } from "../limits.ts";
import { readingOf } from "../opening/parallel.ts";

/** An inset front should clear its opening all round, and the gap should be even. */
export const insetFrontShouldClearEvenly: Check = {
  codes: ["front/inset-tight", "front/inset-uneven"],
  run: (context, { fronts }) =>
    fronts
      .filter((front) => front.whole.inset !== undefined)
      .flatMap((front) => [...tight(context, front), ...uneven(context, front)]),
};

function tight(context: Context, { whole }: FrontModel): readonly Finding[] {
  const gap = gapRound(context, whole);
  const place = gapRoundPlace(whole);
  if (gap === undefined || place === undefined || !less(gap.value, limits.insetGap.value)) return [];
  const text = writtenText(limits.insetGap.value, context.units);
  return [
    finding({
      code: "front/inset-tight",
      severity: "warning",
      span: place,
      message: `a gap of ${say(context, gap.value)} round an inset front is ${say(context, subtract(limits.insetGap.value, gap.value))} less than usual`,
      reason: `Wood swells and hinges settle: a front set in so closely sticks (${limits.insetGap.source}).`,
      remedy: `Leave ${say(context, limits.insetGap.value)}.`,
      fixes: [rewriteSafely(place, text)],
    }),
  ];
}

function uneven(context: Context, { whole, openings }: FrontModel): readonly Finding[] {
  const gap = gapRound(context, whole) ?? fallback("front.inset");
  return openings.flatMap((opening) => {
    const pairs = [
      { least: opening.wide, most: opening.widest, word: "wider" },
      { least: opening.high, most: opening.highest, word: "higher" },
    ];
    return pairs.flatMap(({ least, most, word }) => {
      const off = subtract(most.value, least.value);
      if (!less(gap.value, off)) return [];
      return [
        finding({
          code: "front/inset-uneven",
          severity: "warning",
          span: readingOf(most, opening.name.span),
          message: `"${opening.name.text}" is ${say(context, off)} ${word} here than elsewhere, more than the gap of ${say(context, gap.value)}`,
          reason:
            "The gap beside an inset front would be more than twice as wide at one end as at the other, which shows.",
          remedy: "True the opening, or leave the front large and plane it to fit.",
          related: [{ span: readingOf(least, opening.name.span), message: "where it is least" }],
        }),
      ];
    });
  });
}
