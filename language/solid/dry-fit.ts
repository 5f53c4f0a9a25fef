import { oncePer } from "../core/once-per.ts";
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
import { assembliesOf, type Weighed, weigh } from "./weigh.ts";
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

/**
 * Dry-fits what was derived, island by island: nothing of one can touch anything of another. Total: what could not be
 * derived has no place, and the rest is fitted without it.
 */
export function dryFit(context: Context, model: Model, islands: readonly Whole[] = [{ context, model }]): DryFit {
  const fits = islands.map(fitOf);
  const every = <T>(pick: (fit: IslandFit) => readonly T[]): readonly T[] => fits.flatMap(pick);
  const assemblies = every((fit) => fit.assemblies);
  return {
    model,
    placement: {
      solids: every(({ placement }) => placement.solids),
      mates: every(({ placement }) => placement.mates),
      unplaced: every(({ placement }) => placement.unplaced),
    },
    clashes: every((fit) => fit.clashes),
    gaps: every((fit) => fit.gaps),
    adrift: every((fit) => fit.adrift),
    motions: every((fit) => fit.motions),
    opposed: every((fit) => fit.opposed),
    movement: {
      floating: every(({ movement }) => movement.floating),
      restrained: every(({ movement }) => movement.restrained),
      binding: every(({ movement }) => movement.binding),
    },
    loads: { bending: every(({ loads }) => loads.bending), rated: every(({ loads }) => loads.rated) },
    standing: every((fit) => fit.standing),
    handling: handlingOf(
      context,
      model,
      every((fit) => fit.parts),
      assemblies,
    ),
    assemblies,
  };
}

/** What is fitted by itself: an island, or a whole job. */
interface Whole {
  readonly context: Context;
  readonly model: Model;
}

type IslandFit = Omit<DryFit, "model" | "handling"> & { readonly parts: readonly Weighed[] };

/** An island that is the same object is the same island, and need not be fitted again. */
const fitOf = oncePer(islandFit);

function islandFit({ context, model }: Whole): IslandFit {
  const placement = place(context, model);
  const { solids, mates } = placement;
  const clashes = clashesAmong(solids);
  return {
    placement,
    clashes,
    gaps: mates.filter(({ good }) => !good),
    adrift: adriftAmong(solids, mates),
    motions: motionsOf(context, model, solids, clashes),
    opposed: opposedDrawers(model, clashes),
    movement: movementOf(context, model, solids, mates),
    loads: loadsOf(context, model, solids),
    standing: standingOf(context, model, solids),
    parts: solids.map((solid) => weigh(context, model, solid)),
    assemblies: assembliesOf(context, model, placement),
  };
}
