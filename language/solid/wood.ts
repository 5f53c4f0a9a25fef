import type { Machining } from "../core/part.ts";
import { equal, toNumber } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import type { FrontModel, Model } from "../derive/model.ts";
import { panelFloat } from "../published/float.ts";
import { type Axis, axes, extent } from "./box.ts";
import { seasonal, type Wood, woodOf } from "./climate.ts";
import { machined } from "./lay.ts";
import type { Mate } from "./mate.ts";
import type { Solid } from "./solid.ts";

/** A solid piece loose in grooves over the seasons, inches: what it grows and shrinks by, and what its grooves leave and hold. */
export interface Floating {
  readonly solid: Solid;
  readonly kind: "panel" | "bottom";
  readonly grows: number;
  readonly shrinks: number;
  /** The float that is left at each edge when it is dampest; less than nought bursts what holds it. */
  readonly spare: number;
  /** What stays in a groove when it is driest and pushed to the other side; less than nought lets it slip out. */
  readonly held: number;
}

/** A solid piece held fast across its grain by something that does not move with it. */
export interface Restrained {
  readonly solid: Solid;
  readonly by: Solid;
  /** The length that is held, across the grain, and what it would move by over the year, in inches. */
  readonly held: number;
  readonly moves: number;
}

/** A solid inset front in the gap left round it. */
export interface Binding {
  readonly solid: Solid;
  readonly grows: number;
  readonly room: number;
}

/** What the seasons do to solid wood, by Eq. 13-2 and 13-3 of the Wood Handbook. Woods that are not known are passed over. */
export interface Movement {
  readonly floating: readonly Floating[];
  readonly restrained: readonly Restrained[];
  readonly binding: readonly Binding[];
}

export function movementOf(context: Context, model: Model, solids: readonly Solid[], mates: readonly Mate[]): Movement {
  const woods = new Map<string, Wood | undefined>();
  const wood = ({ part }: Solid): Wood | undefined => {
    const stock = model.stocks.get(part.stock);
    if (stock?.kind !== "board") return undefined;
    if (!woods.has(stock.name)) woods.set(stock.name, woodOf(context, stock));
    return woods.get(stock.name);
  };
  const loose = solids.filter((solid) => ["panel", "bottom"].includes(solid.part.name) && wood(solid) !== undefined);
  return {
    floating: loose.flatMap((solid) => floating(solid, wood(solid)!, mates)),
    restrained: mates.flatMap((mate) => restrained(mate, wood)),
    binding: model.fronts.flatMap((front) => bindingIn(front, solids, wood)),
  };
}

/** Across the grain lies the width of a part. */
export function acrossOf({ part, outline }: Solid): Axis {
  return axes.find((axis) => equal(extent(outline[axis]), part.width.value)) ?? "x";
}

function floating(solid: Solid, { species, direction, climate }: Wood, mates: readonly Mate[]): readonly Floating[] {
  const axis = acrossOf(solid);
  const edges = mates.filter(
    ({ a, axis: along, how, gap }) =>
      a === solid && along === axis && gap !== undefined && (how === "float" || how === "play"),
  );
  const depths = edges.flatMap(({ b }) => grooveIn(b)?.deep ?? []);
  const [first, ...rest] = depths;
  if (first === undefined) return [];
  const groove = rest.reduce((least, deep) => Math.min(least, toNumber(deep.value)), toNumber(first.value));
  const room = edges.reduce((sum, { gap }) => sum + toNumber(gap!), 0) / edges.length;
  const result = panelFloat({
    size: toNumber(solid.part.width.value),
    species,
    direction,
    madeAt: climate.made,
    driest: climate.driest,
    wettest: climate.dampest,
    grooveDepth: groove,
    float: Math.max(0, room),
  });
  if (result === undefined) return [];
  const { growth, shrinkage, spareFloat, heldPushed } = result;
  const kind = solid.part.name === "panel" ? "panel" : "bottom";
  return [{ solid, kind, grows: growth, shrinks: shrinkage, spare: spareFloat, held: heldPushed }];
}

function grooveIn(solid: Solid | undefined): Machining | undefined {
  return machined(solid?.part, "groove");
}

/** Common practice, no source: glue and screws give by about this much before the wood splits, in inches. */
export const yields = 1 / 16;

function restrained(mate: Mate, wood: (solid: Solid) => Wood | undefined): readonly Restrained[] {
  const { a, b, how, good } = mate;
  if (b === undefined || !good || (how !== "joined" && how !== "shim")) return [];
  return [
    [a, b],
    [b, a],
  ].flatMap(([solid, by]) => {
    const own = wood(solid!);
    const axis = acrossOf(solid!);
    // What meets it along its own grain or on its edge runs with it.
    if (own === undefined || axis === mate.axis || movesAlike(by!, axis, wood)) return [];
    const held = Math.min(toNumber(solid!.bounds[axis].to), toNumber(by!.bounds[axis].to));
    const from = Math.max(toNumber(solid!.bounds[axis].from), toNumber(by!.bounds[axis].from));
    const { grows, shrinks } = seasonal(own, held - from);
    return grows + shrinks <= yields ? [] : [{ solid: solid!, by: by!, held: held - from, moves: grows + shrinks }];
  });
}

/** Solid wood whose own width lies the same way moves with its neighbour. */
function movesAlike(solid: Solid, axis: Axis, wood: (solid: Solid) => Wood | undefined): boolean {
  return wood(solid) !== undefined && acrossOf(solid) === axis;
}

function bindingIn(
  front: FrontModel,
  solids: readonly Solid[],
  wood: (solid: Solid) => Wood | undefined,
): readonly Binding[] {
  const opening = front.openings[0];
  if (front.whole.inset === undefined || opening === undefined || front.leaves !== 1) return [];
  return solids.flatMap((solid) => {
    const own = solid.assembly === front.of && solid.part.name === "slab" ? wood(solid) : undefined;
    if (own === undefined) return [];
    const axis = acrossOf(solid);
    const clear = axis === "x" ? opening.wide.value : opening.high.value;
    const room = toNumber(clear) - toNumber(extent(solid.outline[axis]));
    const { grows } = seasonal(own, toNumber(solid.part.width.value));
    return [{ solid, grows, room }];
  });
}
