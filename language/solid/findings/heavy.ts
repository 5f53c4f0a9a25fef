import type { Finding } from "../../core/finding.ts";
import type { Context } from "../../derive/context.ts";
import { finding, sayWeight } from "../../fit/check.ts";
import type { DryFit } from "../dry-fit.ts";
import type { Handling, Lifted } from "../handling.ts";
import type { DryFitCheck } from "./check.ts";

/** Whole sheets and put-together cases that one person should not lift alone, and a reach that allows less than is written. */
export const liftsShouldBeWithinReach: DryFitCheck = {
  codes: ["handling/heavy-sheet", "handling/heavy-assembly", "handling/reach"],
  // Nobody asked: a file that says nothing of lifting is not told of each of its sheets.
  run: (context, fit) =>
    context.design.shop.lifts
      .slice(0, 1)
      .flatMap((lift) => [
        ...reach(context, lift, fit.handling),
        ...sheets(context, lift, fit),
        ...fit.handling.lifts.filter(({ index }) => 1 < index).flatMap((one) => assembly(context, lift, fit, one)),
      ]),
};

type Lift = Context["design"]["shop"]["lifts"][number];

function sheets(context: Context, lift: Lift, { model, handling }: DryFit): readonly Finding[] {
  const used = new Set(model.parts.map(({ stock }) => stock));
  const heavy = handling.lifts.filter(({ kind, of, index }) => kind === "sheet" && 1 < index && used.has(of));
  if (heavy.length === 0) return [];
  const named = heavy.map(({ of, pounds }) => `${of} (${sayWeight(context, pounds)})`).join(", ");
  return [
    finding({
      code: "handling/heavy-sheet",
      severity: "hint",
      span: lift.amount.amount.span,
      message: `whole sheets weigh more than the ${sayWeight(context, handling.limit)} that one person here lifts alone: ${named}`,
      reason: "Lifted alone a sheet is dropped, or hurts a back.",
      remedy:
        "Have them cut in two where they are bought, break them down on the floor, or lift them with a second person.",
    }),
  ];
}

function assembly(
  context: Context,
  lift: Lift,
  { model, handling }: DryFit,
  { kind, of, pounds }: Lifted,
): readonly Finding[] {
  const home = model.cases.find(({ name }) => of === `case ${name}`);
  if (kind !== "assembly" || home === undefined) return [];
  return [
    finding({
      code: "handling/heavy-assembly",
      severity: "hint",
      span: home.block.name.span,
      message: `${of}, empty and without its hardware, weighs about ${sayWeight(context, pounds)}; ${sayWeight(context, handling.limit)} is what one person here lifts alone`,
      reason: "Lifted alone it is dropped, or hurts a back.",
      remedy: "Put it together where it will stand, take its drawers out to move it, and lift it with a second person.",
      related: [{ span: lift.span, message: "what one person lifts" }],
    }),
  ];
}

function reach(context: Context, lift: Lift, { stated, equation }: Handling): readonly Finding[] {
  if (stated === undefined || equation === undefined || stated <= equation.weight) return [];
  return [
    finding({
      code: "handling/reach",
      severity: "hint",
      span: lift.amount.amount.span,
      message: `at this reach and height the lifting equation allows ${sayWeight(context, equation.weight)}, less than the ${sayWeight(context, stated)} written`,
      reason: `Far from the body, low down or high up, arms and back bear more (${equation.source}).`,
      remedy: "The lower weight is used. Lift nearer to the body, or with a second person.",
    }),
  ];
}
