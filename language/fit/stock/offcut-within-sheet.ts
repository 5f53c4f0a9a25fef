import type { OffcutStatement } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import { less } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { size } from "../../derive/context.ts";
import type { Model } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, say } from "../check.ts";

/** An offcut should not be larger than the sheet that it was cut from. */
export const offcutShouldFitItsSheet: Check = {
  codes: ["stock/offcut-too-large"],
  run: (context, model) => context.design.offcuts.flatMap((offcut) => check(context, model, offcut)),
};

function check(context: Context, { stocks }: Model, offcut: OffcutStatement): readonly Finding[] {
  const stock = stocks.get(offcut.stock.text);
  if (stock?.kind !== "sheet" || stock.block.size === undefined) return [];
  const pairs = [
    { of: offcut.first, whole: stock.block.size.first, word: "wide" },
    { of: offcut.second, whole: stock.block.size.second, word: "long, along the grain" },
  ];
  return pairs.flatMap(({ of, whole, word }) => {
    const [piece, sheet] = [size(context, of), size(context, whole)];
    if (of === undefined || piece === undefined || sheet === undefined || !less(sheet.value, piece.value)) return [];
    return [
      finding({
        code: "stock/offcut-too-large",
        severity: "warning",
        span: of.span,
        message: `this offcut is ${say(context, piece.value)} ${word}; a whole sheet has ${say(context, sheet.value)}`,
        reason: "Parts would be planned on a piece that cannot be there.",
        remedy: "Write the size across the grain first, then the size along it.",
        related: [{ span: whole.span, message: "the size of the sheet" }],
      }),
    ];
  });
}
