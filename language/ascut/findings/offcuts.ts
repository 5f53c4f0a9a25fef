import type { OffcutStatement } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import { behind, spanFrom } from "../../core/span.ts";
import { type Context, resolve } from "../../derive/context.ts";
import type { Model } from "../../derive/model.ts";
import { finding } from "../../fit/check.ts";
import { isSized } from "../rack.ts";

/** Records of sheets and offcuts must name a stock that there is, and an offcut that is stated. */
export function offcutFindings(context: Context, model: Model): readonly Finding[] {
  const { brokenDown, usedOffcuts, offcuts, leavings } = context.design;
  const before = context.findings.length;
  for (const { stock } of brokenDown) resolve(context, "stock", stock, model.stocks);
  const known = usedOffcuts.filter(({ stock }) => resolve(context, "stock", stock, model.stocks) !== undefined);
  const left = [...offcuts];
  const missing = known.filter((used) => {
    const at = left.findIndex((one) => one.stock.text === used.stock.text && isSized(context, one, used));
    if (0 <= at) left.splice(at, 1);
    return at < 0;
  });
  return [
    ...context.findings.splice(before),
    ...missing.map((used) => {
      const own = leavings.find((one) => one.stock.text === used.stock.text && isSized(context, one, used));
      return own === undefined ? noSuch(used) : notInRack(used, own);
    }),
  ];
}

/** What the job's own plan leaves over lies in the rack once that is said. */
function notInRack({ span }: OffcutStatement, { stock, second, from, span: place }: OffcutStatement): Finding {
  const fixes =
    second === undefined || from === undefined
      ? []
      : [
          {
            title: `Take from "${from.text}" away`,
            edits: [{ span: spanFrom(behind(second.span), from.span), text: "" }],
            safe: false,
          },
        ];
  return finding({
    code: "cut/no-such-offcut",
    severity: "warning",
    span,
    message: `the offcut of ${stock.text} of this size is stated as what the plan of this job leaves over`,
    reason: "It is not in the rack before the sheet is cut, and so nothing of this job is cut from it.",
    remedy: `Take from "${from?.text ?? ""}" away where it is stated, now that it is there.`,
    related: [{ span: place, message: "stated here" }],
    fixes,
  });
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
