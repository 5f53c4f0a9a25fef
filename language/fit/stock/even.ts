import type { Finding } from "../../core/finding.ts";
import { less, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { Stock } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, say } from "../check.ts";
import { limits } from "../limits.ts";

/** The readings of a stock's thickness should agree within what a sheet may vary. */
export const thicknessShouldBeEven: Check = {
  codes: ["stock/uneven"],
  run: (context, { stocks }) => [...stocks.values()].flatMap((stock) => check(context, stock)),
};

function check(context: Context, stock: Stock): readonly Finding[] {
  if (stock.kind === "edging") return [];
  const list = stock.kind === "sheet" ? stock.block.measures : stock.block.thick;
  const { low, high } = stock.thickness;
  if (list === undefined || low === undefined || high === undefined) return [];
  const spread = subtract(high, low);
  if (!less(limits.unevenStock.value, spread)) return [];
  return [
    finding({
      code: "stock/uneven",
      severity: "warning",
      span: list.key.span,
      message: `"${stock.name}" varies by ${say(context, spread)}, from ${say(context, low)} to ${say(context, high)}`,
      reason: "A joint cut to the middle of it is loose in one place and will not go together in another.",
      remedy: "Sort the sheets and give each thickness a name of its own, or plane the boards to one.",
    }),
  ];
}
