import { toNumber } from "../core/rational.ts";
import { amount, type Context } from "../derive/context.ts";
import type { BoardStock } from "../derive/model.ts";
import { findPlace } from "../published/moisture.ts";
import { movement, type RingDirection } from "../published/movement.ts";
import { findSpecies } from "../published/species.ts";
import type { Species } from "../published/species-table.ts";

/** Moisture in percent: of the wood as it is worked, and as it will be at its driest and dampest. */
export interface Climate {
  readonly made: number;
  readonly driest: number;
  readonly dampest: number;
}

/** What is known of a board's wood: its species, how its rings lie, its moisture. `undefined` for a species that is not known. */
export interface Wood {
  readonly species: Species;
  readonly direction: RingDirection;
  readonly climate: Climate;
}

/** The wood of a board, in the climate of the file's `place`, or of most of the United States. */
export function woodOf(context: Context, { block }: BoardStock): Wood | undefined {
  const species = block.species === undefined ? undefined : findSpecies(block.species.text);
  if (species === undefined) return undefined;
  const place = context.design.shop.places[0];
  const usual = findPlace("most of the United States");
  const percent = (stated: Stated | undefined, otherwise: number): number => {
    const value = stated === undefined ? undefined : amount(context, stated.amount);
    return value === undefined ? otherwise : toNumber(value);
  };
  const sawn = block.sawn?.value;
  return {
    species,
    direction: sawn === "quarter" ? "radial" : sawn === "flat" ? "tangential" : "unknown",
    climate: {
      made: percent(block.moisture ?? place?.shop, usual?.average.value ?? 8),
      driest: percent(place?.driest, usual?.driest.value ?? 6),
      dampest: percent(place?.dampest, usual?.wettest.value ?? 10),
    },
  };
}

type Stated = { readonly amount: Parameters<typeof amount>[1] };

/** How much a size across the grain grows from when it is worked to the dampest season, and shrinks to the driest, in its unit. */
export function seasonal({ species, direction, climate }: Wood, size: number): { grows: number; shrinks: number } {
  const to = (moisture: number): number =>
    movement({ size, species, direction, from: climate.made, to: moisture })?.change ?? 0;
  const [wet, dry] = [to(climate.dampest), to(climate.driest)];
  return { grows: Math.max(0, wet, dry), shrinks: Math.max(0, -wet, -dry) };
}
