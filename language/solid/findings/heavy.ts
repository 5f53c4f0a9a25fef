import type { Finding } from "../../core/finding.ts";
import type { Context } from "../../derive/context.ts";
import { finding, number } from "../../fit/check.ts";
import type { DryFit } from "../dry-fit.ts";
import type { Handling, Lifted } from "../handling.ts";
import type { DryFitCheck } from "./check.ts";

/** Whole sheets and put-together cases that one person should not lift alone, and a reach that allows less than is written. */
export const liftsShouldBeWithinReach: DryFitCheck = {
  codes: ["handling/heavy-sheet", "handling/heavy-assembly", "handling/reach"],
  run: (context, fit) => [
    ...reach(context, fit.handling),
    ...fit.handling.lifts.filter(({ index }) => 1 < index).flatMap((lift) => heavy(context, fit, lift)),
  ],
};

function heavy(context: Context, { model, handling }: DryFit, lift: Lifted): readonly Finding[] {
  // Nobody asked: a file that says nothing of lifting is not told of each of its sheets.
  if (context.design.shop.lifts.length === 0) return [];
  const stock = model.stocks.get(lift.of);
  const home = model.cases.find(({ name }) => lift.of === `case ${name}`);
  const place =
    lift.kind === "sheet" ? stock?.block.name.span : lift.kind === "assembly" ? home?.block.name.span : undefined;
  if (place === undefined) return [];
  const isSheet = lift.kind === "sheet";
  return [
    finding({
      code: isSheet ? "handling/heavy-sheet" : "handling/heavy-assembly",
      severity: "hint",
      span: place,
      message: `${isSheet ? `a whole sheet of "${lift.of}"` : `${lift.of}, empty and without its hardware,`} weighs about ${number(lift.pounds, 0)} lb; ${number(handling.limit, 0)} lb is what one person here lifts alone`,
      reason: "Lifted alone it is dropped, or hurts a back.",
      remedy: isSheet
        ? "Have it cut in two where it is bought, break it down on the floor, or lift it with a second person."
        : "Put it together where it will stand, take its drawers out to move it, and lift it with a second person.",
      related: context.design.shop.lifts.slice(0, 1).map(({ span }) => ({ span, message: "what one person lifts" })),
    }),
  ];
}

function reach(context: Context, { stated, equation }: Handling): readonly Finding[] {
  const lift = context.design.shop.lifts[0];
  if (lift === undefined || stated === undefined || equation === undefined || stated <= equation.weight) return [];
  return [
    finding({
      code: "handling/reach",
      severity: "hint",
      span: lift.amount.amount.span,
      message: `at this reach and height the lifting equation allows ${number(equation.weight, 0)} lb, less than the ${number(stated, 0)} lb written`,
      reason: `Far from the body, low down or high up, arms and back bear more (${equation.source}).`,
      remedy: "The lower weight is used. Lift nearer to the body, or with a second person.",
    }),
  ];
}
