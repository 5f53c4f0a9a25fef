import type { Finding } from "../../core/finding.ts";
import type { Context } from "../../derive/context.ts";
import type { Model, SheetStock } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, nameOf, say } from "../check.ts";
import { usedStocks } from "./used.ts";

/** A sheet that parts are made of should be measured: its label does not decide what fits. */
export const usedSheetShouldBeMeasured: Check = {
  codes: ["stock/unmeasured"],
  run: (context, model) => {
    const used = usedStocks(context, model);
    return [...model.stocks.values()].flatMap((stock) =>
      stock.kind === "sheet" && !stock.measured && used.has(stock.name) ? check(context, model, stock) : [],
    );
  },
};

function check(context: Context, model: Model, stock: SheetStock): readonly Finding[] {
  const { called, name } = stock.block;
  const { low, high, value } = stock.thickness;
  const range =
    low === undefined || high === undefined
      ? "no standard says how far it may be off"
      : `it may be anything from ${say(context, low)} to ${say(context, high)}`;
  const first = model.parts.find((part) => part.stock === stock.name);
  return [
    finding({
      code: "stock/unmeasured",
      severity: "warning",
      span: called?.measure.span ?? name.span,
      message: `"${stock.name}" is taken as ${say(context, value)} by its label: ${range}`,
      reason:
        "Every joint, packing and clearance made of it is worked out from its thickness, and a label is not a thickness.",
      remedy: "Measure a sheet in three places and write what it is: measures LENGTH, LENGTH, LENGTH.",
      related: first === undefined ? [] : [{ span: first.source, message: `${nameOf(first)} is made of it` }],
    }),
  ];
}
