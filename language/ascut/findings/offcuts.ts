import type { OffcutStatement } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import { type Context, resolve } from "../../derive/context.ts";
import type { Model } from "../../derive/model.ts";
import { finding } from "../../fit/check.ts";
import { isSized } from "../rack.ts";

/** Records of sheets and offcuts must name a stock that there is, and an offcut that is stated. */
export function offcutFindings(context: Context, model: Model): readonly Finding[] {
  const { brokenDown, usedOffcuts, offcuts } = context.design;
  const before = context.findings.length;
  for (const { stock } of brokenDown) resolve(context, "stock", stock, model.stocks);
  const known = usedOffcuts.filter(({ stock }) => resolve(context, "stock", stock, model.stocks) !== undefined);
  const left = [...offcuts];
  const missing = known.filter((used) => {
    const at = left.findIndex((one) => one.stock.text === used.stock.text && isSized(context, one, used));
    if (0 <= at) left.splice(at, 1);
    return at < 0;
  });
  return [...context.findings.splice(before), ...missing.map((used) => noSuch(used))];
}

function noSuch({ stock, span }: OffcutStatement): Finding {
  return finding({
    code: "cut/no-such-offcut",
    severity: "warning",
    span,
    message: `no offcut of ${stock.text} of this size is stated, or all of them are used up already`,
    reason: "What is used up is taken out of the rack, and this was never in it.",
    remedy: "Write the size as the offcut is stated, or state it beside the stock.",
    fixes: [{ title: "Take the record out", edits: [{ span, text: "" }], safe: false }],
  });
}
