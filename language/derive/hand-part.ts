import type { PartBlock } from "../core/design.ts";
import type { Part } from "../core/part.ts";
import type { Context } from "./context.ts";
import { found, givenSize, pieces, resolve } from "./context.ts";
import { edgingOn, lessEdging } from "./edging.ts";
import type { Stock } from "./model.ts";
import { partsFrom } from "./parts.ts";

/** A part that the maker states in full, so that nothing needs a second list. */
export function handPart(context: Context, block: PartBlock, stocks: ReadonlyMap<string, Stock>): readonly Part[] {
  const word = block.from?.stocks[0];
  const lacking = [
    block.from === undefined ? "from STOCK" : "",
    block.long === undefined ? "long LENGTH" : "",
    block.wide === undefined ? "wide LENGTH" : "",
  ].filter((text) => text !== "");
  if (0 < lacking.length) {
    found(context, {
      code: "part/unsaid",
      severity: "error",
      span: block.name.span,
      message: `"${block.name.text}" lacks: ${lacking.join(", ")}`,
      reason: "Nothing derives a part that is stated by hand.",
      remedy: `Write ${lacking.join("  ")}.`,
    });
    return [];
  }
  const stock = word === undefined ? undefined : resolve(context, "stock", word, stocks);
  const long = givenSize(context, block.long);
  const wide = givenSize(context, block.wide);
  const thick = givenSize(context, block.thick);
  if (stock === undefined || long === undefined || wide === undefined) return [];
  const bands = edgingOn(context, block.edging, stocks);
  const grain = block.grain?.value;
  return partsFrom(context, {
    name: block.name.text,
    of: `part ${block.name.text}`,
    quantity: block.count === undefined ? 1 : (pieces(context, block.count.value, 1000) ?? 1),
    stock,
    length: lessEdging(long, bands, ["left", "right"]),
    width: lessEdging(wide, bands, ["front", "back"]),
    ...(thick === undefined ? {} : { thickness: thick }),
    ...(grain === undefined ? {} : { grain }),
    machining: bands.map((band) => ({
      kind: "edging" as const,
      where: band.edges.length === 0 ? "all edges" : `${band.edges.join(", ")} edge`,
      note: band.stock.name,
    })),
    source: block.name.span,
  });
}
