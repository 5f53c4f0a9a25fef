import { gatheredBy } from "../core/gather.ts";
import type { Length } from "../core/length.ts";
import { add, less, subtract, zero } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import type { BoxModel, Model } from "../derive/model.ts";
import { apart, around, common, extent, swept } from "./box.ts";
import { groupedBy } from "./grouped.ts";
import type { Clash } from "./interference.ts";
import { assembled, type Block, covers, inFrame, isStuck, movedWith, stuckAmong } from "./moving.ts";
import { frameOf, turnOf } from "./place.ts";
import type { Solid } from "./solid.ts";
import { openLeaf, type Path } from "./standing.ts";
import { type Leaf, leavesOf, swingOf } from "./swing.ts";
import type { WallStop } from "./wall-stop.ts";

/** A drawer along its travel, or a leaf as far as its hinges let it open. */
export interface Motion {
  readonly kind: "drawer" | "door";
  /** `box plan-1`, `door rollers`. */
  readonly mover: string;
  /** Inches or degrees. */
  readonly travel: number;
  readonly blocks: readonly Block[];
  /** Where a leaf meets a wall beside its case. */
  readonly wall: WallStop | undefined;
}

/** Two drawers that come from the two faces of one case and claim one space. */
export interface Opposed {
  readonly a: BoxModel;
  readonly b: BoxModel;
  /** How much more depth the two need than there is. */
  readonly by: Length;
}

/** Every drawer and door moved as far as it goes, past all that stands still and past doors that stand open. */
export function motionsOf(
  context: Context,
  model: Model,
  solids: readonly Solid[],
  clashes: readonly Clash[],
): readonly Motion[] {
  const stuck = stuckAmong(clashes);
  const byAssembly = assembled(solids);
  const doors = firstOfEach(model.fronts.filter(({ block }) => block.kind === "door"));
  const leaves = doors.flatMap((door) => leavesOf(context, model, door, byAssembly.get(door.of) ?? []));
  const drawers = firstOfEach(model.boxes).map((box) => drawerMotion(model, box, solids, byAssembly, leaves, stuck));
  return [
    ...drawers.filter(({ blocks, travel }) => 0 < travel || 0 < blocks.length),
    ...leaves.map(swingAmong(solids, stuck)),
  ];
}

/** What is stated twice under one name is one assembly, and told of elsewhere: it is moved once. */
function firstOfEach<T extends { readonly of: string }>(all: readonly T[]): readonly T[] {
  return [...gatheredBy(all, ({ of }) => of).values()].map(([first]) => first!);
}

function swingAmong(solids: readonly Solid[], stuck: ReadonlySet<string>): (leaf: Leaf) => Motion {
  return (leaf) => ({
    kind: "door",
    mover: leaf.front.of,
    travel: leaf.opens,
    blocks: swingOf(leaf, solids, stuck),
    wall: leaf.wall,
  });
}

function drawerMotion(
  model: Model,
  box: BoxModel,
  solids: readonly Solid[],
  byAssembly: ReadonlyMap<string, readonly Solid[]>,
  leaves: readonly Leaf[],
  stuck: ReadonlySet<string>,
): Motion {
  const travel = box.slides.travel?.value ?? zero;
  const moving = movedWith(model, box, byAssembly);
  const own = new Set(moving);
  const frame = frameOf(box.opening);
  // Any other door is shut while this is drawn out.
  const over = leavesIn(leaves, frame).filter(({ front }) => covers(front, box));
  const before = new Set(over.flatMap((leaf) => leaf.solids));
  const out = turnOf(model, box.opening) === undefined ? { n: -travel.n, d: travel.d } : travel;
  const reach = around(moving.map(({ bounds }) => swept(bounds, "z", out)));
  const isNear = (solid: Solid): boolean => reach !== undefined && !apart(reach, solid.bounds);
  // What one part of it stands in already, as a box too deep for its case does, is told of; that the others meet it too is the same.
  const isMet = (solid: Solid): boolean => moving.some((one) => isStuck(stuck, one, solid));
  const still = inFrame(solids, frame).filter(
    (solid) => isNear(solid) && !own.has(solid) && !before.has(solid) && !isMet(solid),
  );
  const paths = moving.map(
    (solid): Path => ({ solid, rest: solid.pieces, pieces: solid.pieces.map((piece) => swept(piece, "z", out)) }),
  );
  const blocks = paths.flatMap((path) => [
    ...still.flatMap((obstacle) => meeting(path, obstacle, out)),
    ...over.flatMap((leaf) => openLeaf(leaf, path)),
  ]);
  const shown = Math.abs(Number(travel.n) / Number(travel.d));
  return {
    kind: "drawer",
    mover: box.of,
    travel: shown,
    blocks: [...blocks].sort((a, b) => a.at - b.at),
    wall: undefined,
  };
}

const leavesIn = groupedBy(({ solids }: Leaf) => solids.slice(0, 1).map(({ frame }) => frame));

/** A path that runs into an obstacle, and how far out that is. */
function meeting({ solid, pieces, rest }: Path, obstacle: Solid, out: Length): readonly Block[] {
  let at: number | undefined;
  for (const [index, piece] of pieces.entries()) {
    for (const other of obstacle.pieces) {
      if (common(piece, other) === undefined) continue;
      const start = rest[index]!.z;
      const gone = less(out, zero) ? subtract(start.from, other.z.to) : subtract(other.z.from, start.to);
      const far = Math.max(0, Number(gone.n) / Number(gone.d));
      if (at === undefined || far < at) at = far;
    }
  }
  return at === undefined ? [] : [{ part: solid, obstacle, at, standing: undefined }];
}

/** Boxes of the front and the rear face that meet in the depth of their case. */
export function opposedDrawers(model: Model, clashes: readonly Clash[]): readonly Opposed[] {
  const byName = new Map(model.boxes.map((box) => [box.of, box]));
  const met = new Map<string, Opposed>();
  for (const { a, b, bounds } of clashes) {
    const [one, other] = [byName.get(a.assembly), byName.get(b.assembly)];
    if (one === undefined || other === undefined || one.opening.face === other.opening.face) continue;
    const [front, rear] = one.opening.face === "front" ? [one, other] : [other, one];
    const key = `${front.of}|${rear.of}`;
    const by = extent(bounds.z);
    const known = met.get(key);
    if (known === undefined || less(known.by, by)) met.set(key, { a: front, b: rear, by });
  }
  return [...met.values()].map((one) => ({ ...one, by: depthLacking(model, one) ?? one.by }));
}

/** What both boxes take more than the case is deep, each from its own face. */
function depthLacking(model: Model, { a, b }: Opposed): Length | undefined {
  const home = model.cases.find((one) => one.name === a.opening.case);
  return home === undefined ? undefined : subtract(add(a.deep.value, b.deep.value), home.deep.value);
}
