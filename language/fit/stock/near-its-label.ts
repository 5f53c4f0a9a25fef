import type { Finding } from "../../core/finding.ts";
import { absolute, less, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { givenSize } from "../../derive/context.ts";
import type { SheetStock } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, say } from "../check.ts";
import { limits } from "../limits.ts";

/** A measured thickness should lie near the label: farther off, one of the two is a slip. */
export const thicknessShouldBeNearLabel: Check = {
  codes: ["stock/not-as-labelled"],
  run: (context, { stocks }) =>
    [...stocks.values()].flatMap((stock) => (stock.kind === "sheet" && stock.measured ? check(context, stock) : [])),
};

function check(context: Context, { name, block, thickness }: SheetStock): readonly Finding[] {
  const label = givenSize(context, block.called);
  const first = block.measures?.values[0];
  if (label === undefined || first === undefined || block.called === undefined) return [];
  const off = absolute(subtract(thickness.value, label.value));
  if (!less(limits.offLabel.value, off)) return [];
  return [
    finding({
      code: "stock/not-as-labelled",
      severity: "warning",
      span: first.measure.span,
      message: `"${name}" measures ${say(context, thickness.value)}, which is ${say(context, off)} from its label of ${say(context, label.value)}`,
      reason: "No sheet is that far from its label; every size made of it would be wrong by as much or more.",
      remedy: "Measure again, or correct the label.",
      related: [{ span: block.called.measure.span, message: "its label" }],
    }),
  ];
}
