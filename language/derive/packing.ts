import type { Length } from "../core/length.ts";
import { add, compare, less, toNumber, zero } from "../core/rational.ts";
import type { Stock } from "./model.ts";

/** More layers than this are not worth the glue for the hair that they gain. */
const mostLayers = 4;

interface Stack {
  readonly layers: readonly Stock[];
  readonly sum: Length;
}

/**
 * The layers that come nearest to a need without standing proud of it; among equals the fewest, then the least
 * valuable. Common practice, no source. Empty where even the thinnest sheet is too thick.
 */
export function layersFor(need: Length, sheets: readonly Stock[]): readonly Stock[] {
  const usable = sheets.filter((sheet) => !less(need, sheet.thickness.value) && 0n < sheet.thickness.value.n);
  let best: Stack = { layers: [], sum: zero };
  const grow = (stack: Stack, from: number): void => {
    if (better(stack, best)) best = stack;
    if (stack.layers.length === mostLayers) return;
    for (let index = from; index < usable.length; index++) {
      const sheet = usable[index]!;
      const sum = add(stack.sum, sheet.thickness.value);
      if (!less(need, sum)) grow({ layers: [...stack.layers, sheet], sum }, index);
    }
  };
  grow(best, 0);
  return [...best.layers].sort((a, b) => compare(b.thickness.value, a.thickness.value));
}

function better(a: Stack, b: Stack): boolean {
  const fuller = compare(a.sum, b.sum);
  if (fuller !== 0) return 0 < fuller;
  if (a.layers.length !== b.layers.length) return a.layers.length < b.layers.length;
  return worth(a) < worth(b);
}

/** What the layers cost by area; a sheet without a price counts as free, being most likely an offcut. */
function worth(stack: Stack): number {
  return stack.layers.reduce((sum, stock) => sum + priceOf(stock), 0);
}

function priceOf(stock: Stock): number {
  if (stock.kind !== "sheet" || stock.block.costs === undefined) return 0;
  const { amount } = stock.block.costs;
  return amount.kind === "number" ? toNumber(amount.value) : 0;
}
