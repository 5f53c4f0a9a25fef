import type { Finding } from "../../core/finding.ts";
import type { Part } from "../../core/part.ts";
import { less } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { Model } from "../../derive/model.ts";
import { loadConstant } from "../../published/lifting.ts";
import type { Check } from "../check.ts";
import { finding, nameOf, placeOf, say, sayWeight } from "../check.ts";
import { limits } from "../limits.ts";
import { pounds, weightOf } from "../weight.ts";

/** A part that one person cannot handle, a lift past the published constant, and stock too thin for a planer are worth a word. */
export const workShouldBeWithinOnePersonsReach: Check = {
  codes: ["handling/heavy-part", "handling/lift-over-constant", "handling/thin-to-plane"],
  run: (context, model) => [
    ...liftOver(context),
    ...model.parts.flatMap((part) => heavy(context, model, part)),
    ...[...model.stocks.values()].flatMap((stock) => (stock.kind === "board" ? thin(context, stock) : [])),
  ],
};

function liftOver(context: Context): readonly Finding[] {
  return context.design.shop.lifts.flatMap(({ amount, reach }) => {
    const weight = pounds(context, amount);
    const most = loadConstant.in.value;
    // A few hundredths of a pound come from the unit, not from the maker.
    if (weight === undefined || weight <= most + 0.5 || reach !== undefined) return [];
    return [
      finding({
        code: "handling/lift-over-constant",
        severity: "hint",
        span: amount.amount.span,
        message: `${sayWeight(context, weight)} is more than the ${sayWeight(context, most)} that the lifting equation allows in the best of postures`,
        reason: `A sheet is lifted in no good posture (${loadConstant.in.source}).`,
        remedy: "Write a lower weight, and get a second person above it.",
      }),
    ];
  });
}

function heavy(context: Context, model: Model, part: Part): readonly Finding[] {
  const weight = weightOf(context, model, part);
  const most = pounds(context, context.design.shop.lifts[0]?.amount) ?? loadConstant.in.value;
  if (weight <= most) return [];
  return [
    finding({
      code: "handling/heavy-part",
      severity: "hint",
      span: part.source,
      message: `${nameOf(part)} weighs about ${sayWeight(context, weight)}, more than the ${sayWeight(context, most)} that one person here handles alone`,
      reason: "A heavy panel at a saw or on a ladder is how hands and backs are hurt.",
      remedy: "Plan a second person or a lift for it, cut it last, and follow the machine's manual.",
      related: context.design.shop.lifts
        .slice(0, 1)
        .map((lift) => ({ span: lift.span, message: "what one person handles" })),
    }),
  ];
}

function thin(
  context: Context,
  { block, thickness, name }: Extract<ReturnType<Model["stocks"]["get"]>, { kind: "board" }>,
): readonly Finding[] {
  if (!less(thickness.value, limits.planedThin.value)) return [];
  return [
    finding({
      code: "handling/thin-to-plane",
      severity: "warning",
      span: placeOf(thickness, block.name.span),
      message: `"${name}" is ${say(context, thickness.value)} thick, which is thin for a planer`,
      reason: `Thin stock lifts into the cutter and shatters (${limits.planedThin.source}).`,
      remedy:
        "Plane it on a carrier board or saw it to size, and follow the machine's manual; or buy it at that thickness.",
    }),
  ];
}
