import type { Design, OffcutStatement } from "../core/design.ts";
import type { Expr } from "../core/expr.ts";
import type { Length } from "../core/length.ts";
import { equal, ratio } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import { pieces, size } from "../derive/context.ts";
import type { Model, Stock } from "../derive/model.ts";
import type { CutPlan } from "../plan/cut-plan.ts";
import { mostPieces } from "./records.ts";

/** What lies in a rack and is spoken for: whole sheets and boards, and offcuts by their size. */
export interface Held {
  readonly whole: readonly { readonly stock: string; readonly count: number }[];
  readonly offcuts: readonly HeldOffcut[];
}

export interface HeldOffcut {
  /** Where the stock is described, so that files that use one rack mean one stock: see `stockKey`. */
  readonly stock: string;
  readonly name: string;
  /** Across the grain and along it, in inches. */
  readonly width: Length;
  readonly height: Length;
}

export const nothingHeld: Held = { whole: [], offcuts: [] };

/** Tells a stock apart from all others by the place where it is described. */
export function stockKey({ block }: Pick<Stock, "block">): string {
  return `${block.span.uri}:${block.span.start}`;
}

/** What is still in the rack: less what the records say is broken down or used up, and less what other jobs hold. */
export function onHand(
  context: Context,
  model: Model,
  held: Held,
): { readonly context: Context; readonly model: Model } {
  const { design } = context;
  if (design.brokenDown.length + design.usedOffcuts.length + held.whole.length + held.offcuts.length === 0)
    return { context, model };
  const stocks = new Map([...model.stocks].map(([name, stock]) => [name, lessWhole(context, stock, held)]));
  const offcuts = offcutsLeft(context, model, held);
  return { context: { ...context, design: { ...design, offcuts } }, model: { ...model, stocks } };
}

/** What a plan takes from the rack: offcuts used, and as many whole sheets as lie there. */
export function takenBy(plan: CutPlan): Held {
  return {
    whole: plan.stocks.flatMap(({ stock, used, inRack }) => {
      const count = Math.min(used, inRack);
      return count === 0 ? [] : [{ stock: stockKey(stock), count }];
    }),
    offcuts: plan.stocks.flatMap(({ stock, sheets }) =>
      sheets
        .filter(({ offcut }) => offcut)
        .map(({ width, height }) => ({ stock: stockKey(stock), name: stock.name, width, height })),
    ),
  };
}

/** What the records of a job say is whole no longer, for other jobs that share its rack. */
export function recordedIn(context: Context, model: Model): Held {
  const { brokenDown, usedOffcuts } = context.design;
  return {
    whole: brokenDown.flatMap(({ stock, count }) => {
      const described = model.stocks.get(stock.text);
      const number = pieces(context, count, mostPieces) ?? 0;
      return described === undefined || number === 0 ? [] : [{ stock: stockKey(described), count: number }];
    }),
    offcuts: usedOffcuts.flatMap(({ stock, first, second }) => {
      const described = model.stocks.get(stock.text);
      const [width, height] = [size(context, first)?.value, size(context, second)?.value];
      if (described === undefined || width === undefined || height === undefined) return [];
      return [{ stock: stockKey(described), name: described.name, width, height }];
    }),
  };
}

export function heldTogether(a: Held, b: Held): Held {
  return { whole: [...a.whole, ...b.whole], offcuts: [...a.offcuts, ...b.offcuts] };
}

function lessWhole<S extends Stock>(context: Context, stock: S, held: Held): S {
  if (stock.kind === "edging" || stock.block.have === undefined) return stock;
  const taken = brokenDownOf(context, stock.name) + heldOf(stock, held);
  if (taken === 0) return stock;
  const before = pieces(context, stock.block.have.value, mostPieces) ?? 0;
  const value = counted(Math.max(0, before - taken), stock.block.have.value);
  return { ...stock, block: { ...stock.block, have: { ...stock.block.have, value } } };
}

/** Whole sheets and boards of a stock that are whole no longer. */
export function brokenDownOf(context: Context, name: string): number {
  return context.design.brokenDown
    .filter(({ stock }) => stock.text === name)
    .reduce((sum, { count }) => sum + (pieces(context, count, mostPieces) ?? 0), 0);
}

function heldOf(stock: Stock, { whole }: Held): number {
  return whole.filter((one) => one.stock === stockKey(stock)).reduce((sum, { count }) => sum + count, 0);
}

function counted(count: number, like: Expr): Expr {
  return { kind: "number", value: ratio(count), unit: undefined, units: "inches", span: like.span };
}

/** Each record takes one offcut of its size; so does each that another job holds. */
function offcutsLeft(context: Context, model: Model, held: Held): Design["offcuts"] {
  const left = [...context.design.offcuts];
  const takeOut = (suits: (one: OffcutStatement) => boolean): void => {
    const at = left.findIndex(suits);
    if (0 <= at) left.splice(at, 1);
  };
  for (const used of context.design.usedOffcuts)
    takeOut((one) => one.stock.text === used.stock.text && isSized(context, one, used));
  for (const one of held.offcuts) {
    takeOut(({ stock, first, second }) => {
      const described = model.stocks.get(stock.text);
      const [width, height] = [size(context, first), size(context, second)];
      if (described === undefined || stockKey(described) !== one.stock) return false;
      return (
        width !== undefined && height !== undefined && equal(width.value, one.width) && equal(height.value, one.height)
      );
    });
  }
  return left;
}

/** Whether two offcuts measure the same. */
export function isSized(context: Context, a: OffcutStatement, b: OffcutStatement): boolean {
  const sizes = [a.first, a.second, b.first, b.second].map((measure) => size(context, measure)?.value);
  const [p, q, r, s] = sizes;
  return p !== undefined && q !== undefined && r !== undefined && s !== undefined && equal(p, r) && equal(q, s);
}
