import type { Length } from "../core/length.ts";
import { add, compare, divide, floor, multiply, ratio, times, toNumber } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { derived } from "../core/sourced.ts";
import { findPlace } from "../published/moisture.ts";
import { movement } from "../published/movement.ts";
import { findSpecies } from "../published/species.ts";
import type { Context } from "./context.ts";
import { amount } from "./context.ts";
import { fallback } from "./defaults.ts";
import type { Stock } from "./model.ts";

/** The room that a panel has at each edge: across the grain, and along it. */
export interface Float {
  readonly across: Sourced<Length>;
  readonly along: Sourced<Length>;
}

/** Plywood has a fixed small play; solid wood has the room that it swells by, half at each edge. */
export function panelFloat(context: Context, panel: Stock, clear: Sourced<Length>): Float {
  if (panel.kind !== "board") return { across: fallback("panel.ply"), along: fallback("panel.ply") };
  return { across: swelling(context, panel, clear) ?? fallback("panel.solid"), along: fallback("panel.along") };
}

const sixtyFourth = ratio(1, 64);

function swelling(
  context: Context,
  panel: Extract<Stock, { kind: "board" }>,
  clear: Sourced<Length>,
): Sourced<Length> | undefined {
  const species = panel.block.species === undefined ? undefined : findSpecies(panel.block.species.text);
  if (species === undefined) return undefined;
  const [from, to] = [workedAt(context, panel), dampest(context)];
  if (to <= from) return fallback("panel.along");
  const direction =
    panel.block.sawn?.value === "quarter" ? "radial" : panel.block.sawn?.value === "flat" ? "tangential" : "unknown";
  const perInch = movement({ species, size: 1, direction, from, to });
  if (perInch === undefined) return undefined;
  const rate = ratio(Math.round(perInch.change * 1e6), 1_000_000);
  return derived(
    {
      gives: "room to swell at each edge",
      formula: `half of what {clear width} of ${species.name} swells from ${from} % to ${to} % moisture, up to the next 1/64 in, at least {least}`,
      tag: perInch.tag === "from memory" ? "from memory" : "published",
      source: "Wood Handbook (FPL-GTR-190), Eq. 13-2 and Table 13-5",
    },
    { "clear width": clear, least: fallback("panel.along") },
    (of) => roundedUp(multiply(of["clear width"], rate), of.least),
  );
}

/** Half of the growth, up to the next sixty-fourth, and never less than what it takes to go in at all. */
function roundedUp(growth: Length, least: Length): Length {
  const steps = divide(growth, times(sixtyFourth, 2));
  const half = steps === undefined ? growth : times(sixtyFourth, floor(add(steps, ratio(63, 64))));
  return compare(half, least) < 0 ? least : half;
}

function workedAt(context: Context, panel: Extract<Stock, { kind: "board" }>): number {
  const stated = panel.block.moisture ?? context.design.shop.places[0]?.shop;
  const value = stated === undefined ? undefined : amount(context, stated.amount);
  return value === undefined ? 8 : toNumber(value);
}

function dampest(context: Context): number {
  const stated = context.design.shop.places[0]?.dampest;
  const value = stated === undefined ? undefined : amount(context, stated.amount);
  return value === undefined ? (findPlace("most of the United States")?.wettest.value ?? 11) : toNumber(value);
}
