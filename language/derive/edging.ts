import type { StockUse } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Context } from "./context.ts";
import { resolve } from "./context.ts";
import type { Stock } from "./model.ts";
import { coreLessEdging } from "./rules/core-less-edging.ts";

/** A band and the edges that it is glued to; no edges named means all. */
export interface Band {
  readonly stock: Stock;
  readonly edges: readonly string[];
}

export function edgingOn(
  context: Context,
  uses: readonly StockUse[],
  stocks: ReadonlyMap<string, Stock>,
): readonly Band[] {
  return uses.flatMap((use) => {
    const word = use.stocks[0];
    const stock = word === undefined ? undefined : resolve(context, "stock", word, stocks);
    const edges = use.fittings.find((fitting) => fitting.word === "on")?.edges.map((edge) => edge.text) ?? [];
    return stock === undefined ? [] : [{ stock, edges }];
  });
}

/** The core of a piece whose finished size runs from one of these edges to the other. */
export function lessEdging(
  finished: Sourced<Length>,
  bands: readonly Band[],
  edges: readonly string[],
): Sourced<Length> {
  return bands.reduce(
    (size, band) =>
      edges.reduce((core, edge) => (covers(band, edge) ? coreLessEdging(core, band.stock.thickness) : core), size),
    finished,
  );
}

export function covers(band: Band, edge: string): boolean {
  return band.edges.length === 0 || band.edges.includes(edge);
}
