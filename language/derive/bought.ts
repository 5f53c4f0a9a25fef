import type { Context } from "./context.ts";
import { resolve } from "./context.ts";
import type { Stock } from "./model.ts";

/**
 * Looks up the names of what is bought or lies in the rack: hinges, screws, the stocks of offcuts. The derivation can
 * do without them, so that a slip in such a name would otherwise pass in silence.
 */
export function checkBought(context: Context, stocks: ReadonlyMap<string, Stock>): void {
  const { fronts, slides, shop, offcuts } = context.design;
  const { hinges, screws } = context.names.of;
  for (const front of fronts) if (front.hinges !== undefined) resolve(context, "hinges", front.hinges.name, hinges);
  for (const block of [...slides, ...shop.pockets]) {
    if (block.screws !== undefined) resolve(context, "screws", block.screws, screws);
  }
  for (const offcut of offcuts) resolve(context, "stock", offcut.stock, stocks);
}
