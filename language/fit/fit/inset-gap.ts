import type { Finding } from "../../core/finding.ts";
import { asCut } from "../../core/interval.ts";
import type { Length } from "../../core/length.ts";
import { add, over, ratio, subtract, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";
import type { Context } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import { gapBetween, gapRoundPlace } from "../../derive/front-gap.ts";
import type { FrontModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { fitFinding } from "./judge.ts";

/** The gap round an inset front must stay open, as the opening was measured and the front will be cut. */
export const insetGapMustStayOpen: Check = {
  codes: ["fit/inset-gap"],
  run: (context, { fronts }) =>
    fronts
      .filter(({ whole }) => whole.inset !== undefined)
      .flatMap((front) => [...check(context, front, "wide"), ...check(context, front, "high")]),
};

const rule: Rule = { gives: "gap at each edge", formula: "({opening} − {front}) ÷ 2", tag: "geometry" };

const pairRule: Rule = {
  gives: "gap at each outer edge",
  formula: "({opening} − 2 × {front} − {gap between}) ÷ 2",
  tag: "geometry",
};

/** From memory: a front with less than a 32nd beside it rubs with the first coat of finish. */
const leastGap = ratio(1, 32);

function check(context: Context, front: FrontModel, which: "wide" | "high"): readonly Finding[] {
  const opening = front.openings[0];
  if (opening === undefined || front.whole[which] !== undefined) return [];
  const name = `opening "${opening.name.text}"`;
  const inputs: Record<string, Sourced<Length>> = {
    [name]: opening[which],
    front: asCut(front[which], fallback("cut.tolerance")),
  };
  const isPair = which === "wide" && front.whole.pair !== undefined;
  if (isPair) inputs["gap between"] = gapBetween(context, front.whole) ?? fallback("front.pair");
  const value = isPair
    ? derived(pairRule, inputs, (of) => over(subtract(of[name]!, add(times(of.front!, 2), of["gap between"]!)), 2))
    : derived(rule, inputs, (of) => over(subtract(of[name]!, of.front!), 2));
  return fitFinding(context, {
    code: "fit/inset-gap",
    value,
    bounds: { least: leastGap, most: undefined },
    what: `the gap beside ${front.of}`,
    reason: "An inset front that meets its opening sticks, and the first damp week makes it worse.",
    remedy: "Measure the opening more closely, leave a wider gap, or cut the front large and plane it to fit.",
    place: gapRoundPlace(front.whole) ?? front.whole.inset!.span,
    related: [{ span: opening.name.span, message: "its opening" }],
  });
}
