import { toNumber } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import type { BoxModel, CaseModel, Model } from "../derive/model.ts";
import { pounds } from "../fit/weight.ts";
import {
  clothingStorageScope,
  drawerVolume,
  fixedStorageVolume,
  type StorageScope,
} from "../published/clothing-storage.ts";
import { testLoad } from "../published/loads.ts";
import { groupedBy } from "./grouped.ts";
import { assembled, inFrame, movedWith } from "./moving.ts";
import type { Solid } from "./solid.ts";
import { weigh } from "./weigh.ts";

/** Where the weight lies with drawers shut or open: inches behind the front edge of what stands on the floor. */
export interface Balance {
  readonly drawers: "shut" | "open, empty" | "open, loaded";
  readonly pounds: number;
  /** Less than nought: before the feet, and the piece goes over. */
  readonly behind: number;
  /** Inches above the floor. */
  readonly high: number;
}

/** A case that stands on a floor. Nothing here certifies that it is stable. */
export interface Standing {
  readonly one: CaseModel;
  /** Pounds of wood, empty and without hardware. */
  readonly mass: number;
  /** Enclosed cubic feet as the clothing-storage guidance counts them. */
  readonly volume: number;
  /** The scope if it is not fixed to a wall or built in. */
  readonly scope: StorageScope | undefined;
  readonly balances: readonly Balance[];
}

/** Cases that say that they stand free, or have a kick and so stand on a floor. */
export function standingOf(context: Context, model: Model, solids: readonly Solid[]): readonly Standing[] {
  const groups = assembled(solids);
  return model.cases.flatMap((one) => {
    if (one.block.freestanding === undefined && one.kick === undefined) return [];
    const own = inFrame(solids, `case ${one.name}`);
    const boxes = boxesIn(model.boxes, one.name);
    const weights = own.map((solid) => weighted(solid, weigh(context, model, solid).pounds));
    const mass = weights.reduce((sum, each) => sum + each.pounds, 0);
    const volume = drawers(boxes) + closed(model, one, boxes);
    const height = toNumber(one.high.value);
    const scope = clothingStorageScope({ freestanding: true, height, mass, volume });
    const balances = (["shut", "open, empty", "open, loaded"] as const).map((drawers) =>
      balance(context, model, weights, boxes, groups, drawers),
    );
    return own.length === 0 ? [] : [{ one, mass, volume, scope, balances }];
  });
}

const boxesIn = groupedBy(({ opening }: BoxModel) => (opening.case === undefined ? [] : [opening.case]));

function drawers(boxes: readonly BoxModel[]): number {
  return boxes.reduce((sum, { inside, slides }) => {
    if (inside === undefined) return sum;
    const toObstruction = toNumber(inside.high.value) + toNumber(slides.above.value);
    const depth = toNumber(inside.deep.value);
    return sum + (drawerVolume({ toObstruction, width: toNumber(inside.wide.value), depth }) ?? 0);
  }, 0);
}

/** Spaces behind doors, which do not come out. */
function closed(model: Model, one: CaseModel, boxes: readonly BoxModel[]): number {
  const boxed = new Set(boxes.map(({ opening }) => opening.name.text));
  const behind = model.fronts
    .filter(({ block }) => block.kind === "door")
    .flatMap(({ openings }) => openings)
    .filter((opening) => opening.case === one.name && !boxed.has(opening.name.text));
  return behind.reduce((sum, { high, wide, deep }) => {
    const depth = deep === undefined ? 0 : toNumber(deep.value);
    return sum + (fixedStorageVolume(toNumber(high.value), toNumber(wide.value), depth) ?? 0);
  }, 0);
}

interface Lump {
  readonly pounds: number;
  readonly y: number;
  readonly z: number;
}

function balance(
  context: Context,
  model: Model,
  weights: readonly Weighted[],
  boxes: readonly BoxModel[],
  groups: ReadonlyMap<string, readonly Solid[]>,
  drawers: Balance["drawers"],
): Balance {
  const out = new Map<Solid, number>();
  const contents: Lump[] = [];
  if (drawers !== "shut") {
    for (const box of boxes) {
      const rear = box.opening.face === "rear" ? -1 : 1;
      const travel = rear * toNumber(box.slides.farthest?.value ?? { n: 0n, d: 1n });
      const moved = movedWith(model, box, groups);
      for (const solid of moved) out.set(solid, travel);
      if (drawers === "open, loaded") contents.push(...loadIn(context, box, moved, travel));
    }
  }
  const lumps: readonly Lump[] = [
    ...weights.map(({ solid, pounds, y, z }) => ({ pounds, y, z: z - (out.get(solid) ?? 0) })),
    ...contents,
  ];
  const total = lumps.reduce((sum, lump) => sum + lump.pounds, 0);
  const mean = (of: (lump: Lump) => number): number =>
    total === 0 ? 0 : lumps.reduce((sum, lump) => sum + lump.pounds * of(lump), 0) / total;
  return {
    drawers,
    pounds: total,
    behind: mean(({ z }) => z) - toes(weights.map(({ solid }) => solid)),
    high: mean(({ y }) => y),
  };
}

interface Weighted extends Lump {
  readonly solid: Solid;
}

/** A solid with its weight in its middle, where it lies with all drawers shut. */
function weighted(solid: Solid, pounds: number): Weighted {
  let [volume, y, z] = [0, 0, 0];
  for (const { rough } of solid.pieces) {
    const size = (rough[1] - rough[0]) * (rough[3] - rough[2]) * (rough[5] - rough[4]);
    volume += size;
    y += (size * (rough[2] + rough[3])) / 2;
    z += (size * (rough[4] + rough[5])) / 2;
  }
  return volume === 0 ? { solid, pounds: 0, y: 0, z: 0 } : { solid, pounds, y: y / volume, z: z / volume };
}

/** What a drawer holds, as written or at the test load, in the middle of its box. */
function loadIn(context: Context, box: BoxModel, moved: readonly Solid[], travel: number): readonly Lump[] {
  const { inside } = box;
  const parts = moved.filter(({ assembly }) => assembly === box.of);
  if (inside === undefined || parts.length === 0) return [];
  const holds =
    pounds(context, box.whole.holds) ?? testLoad(toNumber(inside.wide.value), toNumber(inside.deep.value)) ?? 0;
  const middle = (low: 2 | 4): number =>
    (Math.min(...parts.map(({ bounds }) => bounds.rough[low])) +
      Math.max(...parts.map(({ bounds }) => bounds.rough[low === 2 ? 3 : 5]))) /
    2;
  return [{ pounds: holds, y: middle(2), z: middle(4) - travel }];
}

/** The front edge of what stands on the floor: it tips about this. */
function toes(solids: readonly Solid[]): number {
  const low = Math.min(...solids.map(({ bounds }) => bounds.rough[2]));
  const standing = solids.flatMap(({ pieces }) => pieces).filter(({ rough }) => rough[2] <= low + 1e-9);
  return Math.min(...standing.map(({ rough }) => rough[4]));
}
