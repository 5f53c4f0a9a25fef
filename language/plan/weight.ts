import { toNumber } from "../core/rational.ts";
import type { BoardStock, SheetStock } from "../derive/model.ts";
import { woodPoundsPerCubicFoot } from "../published/board-feet.ts";
import { type PanelMaterial, panelStock } from "../published/panel-stock.ts";
import { findSpecies } from "../published/species.ts";

/** Pounds per cubic foot of a sheet: as stated, or usual for what it is made of. */
export function sheetDensity(stock: SheetStock): number {
  return statedDensity(stock) ?? panelStock[materialOf(stock)].density.value;
}

export function materialOf(stock: SheetStock): PanelMaterial {
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

/** Pounds per cubic foot of a board: as stated, by its species at 8 % moisture, or that of an ordinary hardwood. */
export function boardDensity(stock: BoardStock): number {
  const species = stock.block.species === undefined ? undefined : findSpecies(stock.block.species.text);
  const gravity = species?.specificGravity?.value;
  return (
    statedDensity(stock) ?? (gravity === undefined ? undefined : woodPoundsPerCubicFoot(gravity, 8)) ?? ordinaryHardwood
  );
}

/** Common practice, no source: about that of red oak. */
const ordinaryHardwood = 44;

function statedDensity(stock: SheetStock | BoardStock): number | undefined {
  const stated = stock.block.density?.value;
  return stated?.kind === "number" ? toNumber(stated.value) : undefined;
}
