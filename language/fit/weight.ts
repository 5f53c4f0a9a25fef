import type { Count, Weight } from "../core/design.ts";
import type { Part } from "../core/part.ts";
import { toNumber } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import { amount } from "../derive/context.ts";
import type { Model, Stock } from "../derive/model.ts";
import { woodPoundsPerCubicFoot } from "../published/board-feet.ts";
import { poundInKilograms } from "../published/lifting.ts";
import { type PanelMaterial, panelStock, pieceWeight } from "../published/panel-stock.ts";
import { findSpecies, modulusOfElasticity } from "../published/species.ts";
import { shares } from "./limits.ts";

/** Percent of water in wood as it is weighed here: that of the handbook's gravities. */
const moisture = 12;

/** A weight as written, in pounds; `undefined` where it cannot be read. */
export function pounds(context: Context, weight: Weight | undefined): number | undefined {
  const value = weight === undefined ? undefined : amount(context, weight.amount);
  if (value === undefined) return undefined;
  return weight?.unit === "kg" ? toNumber(value) / poundInKilograms : toNumber(value);
}

/** Pounds per cubic foot: as written, by the species, or by what a panel is made of. */
export function densityOf(context: Context, stock: Stock): number {
  if (stock.kind === "edging") return shares.boardDensity.value;
  const written = stated(context, stock.block.density);
  if (written !== undefined) return written;
  if (stock.kind === "sheet") return panelStock[materialOf(stock)].density.value;
  const wood = stock.block.species === undefined ? undefined : findSpecies(stock.block.species.text);
  const weighed = woodPoundsPerCubicFoot(wood?.specificGravity?.value ?? Number.NaN, moisture);
  return weighed ?? shares.boardDensity.value;
}

/** Stiffness along the grain in psi; `undefined` for a wood that is not known and for edging. */
export function modulusOf(stock: Stock): number | undefined {
  if (stock.kind === "edging") return undefined;
  if (stock.kind === "sheet") return panelStock[materialOf(stock)].modulus.value;
  const wood = stock.block.species === undefined ? undefined : findSpecies(stock.block.species.text);
  return wood === undefined ? undefined : modulusOfElasticity(wood)?.value;
}

/** One piece of a part in pounds, its machining not taken off; nothing where its stock is not known. */
export function weightOf(context: Context, model: Model, part: Part): number {
  const stock = model.stocks.get(part.stock);
  if (stock === undefined) return 0;
  const [length, width, thickness] = [part.length, part.width, part.thickness].map((size) => toNumber(size.value));
  return pieceWeight(length!, width!, thickness!, densityOf(context, stock)) ?? 0;
}

/** All pieces of some parts together, in pounds. */
export function weightOfAll(context: Context, model: Model, parts: readonly Part[]): number {
  return parts.reduce((sum, part) => sum + part.quantity * weightOf(context, model, part), 0);
}

function materialOf(stock: Extract<Stock, { kind: "sheet" }>): PanelMaterial {
  switch (stock.block.core?.text) {
    case "mdf":
    case "hardboard":
      return "MDF";
    case "particle":
      return "particleboard";
    default:
      return "hardwood plywood";
  }
}

function stated(context: Context, count: Count | undefined): number | undefined {
  const value = count === undefined ? undefined : amount(context, count.value);
  return value === undefined ? undefined : toNumber(value);
}
