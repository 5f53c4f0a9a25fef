import type { StockUse } from "../../core/design.ts";
import type { Context } from "../../derive/context.ts";
import type { Model } from "../../derive/model.ts";

/** The names of all stocks that a part is made of, that edge one, or that are named as packing. */
export function usedStocks(context: Context, model: Model): ReadonlySet<string> {
  const { boxes, cases } = context.design;
  const packing = [...boxes, ...cases].flatMap((block): readonly StockUse[] => (block.packing ? [block.packing] : []));
  return new Set([
    ...model.parts.map((part) => part.stock),
    ...model.parts.flatMap((part) =>
      part.machining.flatMap((made) => (made.kind === "edging" ? (made.note ?? []) : [])),
    ),
    ...packing.flatMap((use) => use.stocks.map((word) => word.text)),
  ]);
}

/** Whether the build is far enough along for what is not used to be worth a word. */
export function isSettled(context: Context, model: Model): boolean {
  return 0 < model.parts.length && !context.findings.some((one) => one.severity === "error");
}
