import { type Cited, isQuantity, type Source } from "./cited.ts";
import { inches, type ShopLength } from "./lengths.ts";

/** A piece of furniture as the scope of the stability standard sees it: height in inches, mass in pounds empty, enclosed volume in cubic feet. */
export type StorageUnit = {
  readonly freestanding: boolean;
  readonly height: number;
  readonly mass: number;
  readonly volume: number;
};

/** Whether the standard's scope takes the piece in, each condition by itself, and the plain caution that follows. */
export type StorageScope = {
  readonly inScope: boolean;
  readonly tall: boolean;
  readonly heavy: boolean;
  readonly roomy: boolean;
  readonly caution: Cited<string>;
};

/** A drawer's inside in inches: from its bottom to the lowest thing that obstructs above it, its width, and its depth at the shortest and the longest. */
export type DrawerSpace = {
  readonly toObstruction: number;
  readonly width: number;
  readonly depth: number;
  readonly longestDepth?: number;
};

const scope: Source = { tag: "published", source: "ASTM F2057-23 cl. 1.1, taken up by 16 CFR 1261" };
const guidance: Source = { tag: "published", source: "CPSC business guidance on clothing storage units" };

/** The three conditions of the scope, all of which must hold: inches, pounds, cubic feet. */
export const storageThresholds = {
  height: { value: 27, ...scope },
  mass: { value: 30, ...scope },
  volume: { value: 3.2, ...scope },
} as const satisfies Record<string, Cited<number>>;

/** What is taken off the height of a drawer before its volume is worked out. */
export const drawerHeightAllowance: Cited<ShopLength> = { value: inches("1/8"), ...guidance };

/** Share of an enclosed space that does not extend which counts as storage. */
export const fixedStorageShare: Cited<number> = { value: 0.5, ...guidance };

/** Furniture that the rule leaves out. */
export const storageExempt: Cited<readonly string[]> = {
  value: [
    "bookcases",
    "office furniture",
    "dining furniture",
    "underbed drawers",
    "occasional tables",
    "built-in units",
  ],
  ...guidance,
};

const tipCaution: Cited<string> = {
  value:
    "A free-standing chest can tip on a child when drawers are open or climbed. Fix it to the wall at a stud with an anchor, keep heavy things low, and read the standard and the local rules: nothing here certifies that it is stable.",
  tag: "common practice",
  source: "common practice; the scope is that of ASTM F2057-23 and 16 CFR 1261",
};

/** Whether a unit comes under the clothing-storage stability standard by its size; undefined for a negative or missing figure. */
export function clothingStorageScope(unit: StorageUnit): StorageScope | undefined {
  if (![unit.height, unit.mass, unit.volume].every(isQuantity)) return undefined;
  const tall = storageThresholds.height.value <= unit.height;
  const heavy = storageThresholds.mass.value <= unit.mass;
  const roomy = storageThresholds.volume.value <= unit.volume;
  return { inScope: unit.freestanding && tall && heavy && roomy, tall, heavy, roomy, caution: tipCaution };
}

/** Storage volume of a drawer in cubic feet as CPSC counts it: height less 1/8 in, and the mean of the shortest and longest depth; undefined for bad input. */
export function drawerVolume(drawer: DrawerSpace): number | undefined {
  const longest = drawer.longestDepth ?? drawer.depth;
  if (![drawer.toObstruction, drawer.width, drawer.depth, longest].every(isQuantity)) return undefined;
  const height = Math.max(0, drawer.toObstruction - drawerHeightAllowance.value.decimal);
  return (height * drawer.width * ((drawer.depth + longest) / 2)) / 1728;
}

/** Storage volume in cubic feet of an enclosed space that does not extend, such as behind a door: half of it counts; undefined for bad input. */
export function fixedStorageVolume(height: number, width: number, depth: number): number | undefined {
  if (![height, width, depth].every(isQuantity)) return undefined;
  return (fixedStorageShare.value * height * width * depth) / 1728;
}
