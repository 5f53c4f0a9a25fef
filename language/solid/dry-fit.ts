import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import { type Handling, handlingOf } from "./handling.ts";
import { adriftAmong, type Clash, clashesAmong } from "./interference.ts";
import { type Loads, loadsOf } from "./load.ts";
import type { Mate } from "./mate.ts";
import { type Motion, motionsOf, type Opposed, opposedDrawers } from "./motion.ts";
import { type Placement, place } from "./place.ts";
import type { Solid } from "./solid.ts";
import { type Standing, standingOf } from "./stability.ts";
import { assembliesOf, type Weighed } from "./weigh.ts";
import { type Movement, movementOf } from "./wood.ts";

/** The piece put together, moved, loaded and lifted: all plain data. */
export interface DryFit {
  readonly model: Model;
  readonly placement: Placement;
  readonly clashes: readonly Clash[];
  /** Faces that are meant to meet and do not as the fit wants. */
  readonly gaps: readonly Mate[];
  /** Parts that nothing holds and that touch nothing. */
  readonly adrift: readonly Solid[];
  readonly motions: readonly Motion[];
  readonly opposed: readonly Opposed[];
  readonly movement: Movement;
  readonly loads: Loads;
  readonly standing: readonly Standing[];
  readonly handling: Handling;
  /** Weight and volume by assembly. */
  readonly assemblies: readonly Weighed[];
}

/** Dry-fits what was derived. Total: what could not be derived has no place, and the rest is fitted without it. */
export function dryFit(context: Context, model: Model): DryFit {
  const placement = place(context, model);
  const { solids, mates } = placement;
  const clashes = clashesAmong(solids);
  return {
    model,
    placement,
    clashes,
    gaps: mates.filter(({ good }) => !good),
    adrift: adriftAmong(solids, mates),
    motions: motionsOf(model, solids, clashes),
    opposed: opposedDrawers(model, clashes),
    movement: movementOf(context, model, solids, mates),
    loads: loadsOf(context, model, solids),
    standing: standingOf(context, model, solids),
    handling: handlingOf(context, model, placement),
    assemblies: assembliesOf(context, model, placement),
  };
}
