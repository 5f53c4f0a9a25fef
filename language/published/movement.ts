import { type Cited, isQuantity, type Tag, weakest } from "./cited.ts";
import type { Species } from "./species-table.ts";

/** How the growth rings lie to the size that moves: a flatsawn width moves tangentially, a quartersawn one radially; unknown takes the worse. */
export type RingDirection = "tangential" | "radial" | "unknown";

/** One size of solid wood across the grain, and its moisture before and after in percent of dry weight. */
export type MovementCase = {
  readonly size: number;
  readonly species: Species;
  readonly direction: RingDirection;
  readonly from: number;
  readonly to: number;
};

/** What a size changes by, in its own unit (growth above zero), with the equation, the direction and the table value it rests on. */
export type Movement = {
  readonly change: number;
  readonly equation: "13-2" | "13-3";
  readonly direction: "tangential" | "radial";
  readonly rests: Cited<number>;
  readonly tag: Tag;
};

/** Where wood stops moving: the fibre saturation point taken by the Wood Handbook when it is not known, in percent. */
export const fibreSaturation = 30;

/** The moisture range in percent over which Table 13-5 holds, Wood Handbook p. 13-16. */
export const coefficientRange = { from: 6, to: 14 } as const;

/** Wood Handbook Eq. 13-2: change of a size from a movement coefficient, in the unit of the size; NaN in, NaN out. */
export function changeByCoefficient(size: number, coefficient: number, from: number, to: number): number {
  return size * coefficient * (to - from);
}

/** Wood Handbook Eq. 13-3 (formula from memory): change of a size from its total shrinkage in percent, moistures at most 30. */
export function changeByShrinkage(size: number, shrinkage: number, from: number, to: number): number {
  return (size * (to - from)) / ((fibreSaturation * 100) / shrinkage - fibreSaturation + from);
}

/** Wood Handbook Eq. 4-9: shrinkage in percent from green down to a moisture content, from the total shrinkage; zero at and above saturation. */
export function shrinkageAt(total: number, moisture: number, saturation: number = fibreSaturation): number {
  return total * (1 - Math.min(moisture, saturation) / saturation);
}

/** Shrinkage in percent from green of softwood lumber by PS 20-70, FPL-RP-489; undefined outside the 8 to 19 % it is valid for. */
export function softwoodLumberShrinkage(side: "width" | "thickness", moisture: number): number | undefined {
  if (!(8 <= moisture && moisture <= 19)) return undefined;
  return side === "width" ? 6.031 - 0.215 * moisture : 5.062 - 0.181 * moisture;
}

/** A softwood lumber size moved from one moisture to another by FPL-RP-489, in its own unit; undefined outside 8 to 19 %. */
export function softwoodLumberSize(
  side: "width" | "thickness",
  size: number,
  from: number,
  to: number,
): number | undefined {
  const before = softwoodLumberShrinkage(side, from);
  const after = softwoodLumberShrinkage(side, to);
  if (before === undefined || after === undefined || !isQuantity(size)) return undefined;
  return (size * (100 - after)) / (100 - before);
}

/**
 * The change of a size across the grain: Eq. 13-2 while both moistures lie in 6 to 14 %, else Eq. 13-3 with anything above 30 % taken as 30, but never
 * less than Eq. 13-2 gives for the part within 6 to 14, so that a wetter season never moves wood less. Undefined for negative input or unknown values.
 */
export function movement(given: MovementCase): Movement | undefined {
  if (!isQuantity(given.size) || !isQuantity(given.from) || !isQuantity(given.to)) return undefined;
  const radial = movementAlong(given, "radial");
  const tangential = movementAlong(given, "tangential");
  if (given.direction === "radial") return radial;
  if (given.direction === "tangential" || radial === undefined || tangential === undefined) return tangential;
  return Math.abs(tangential.change) < Math.abs(radial.change) ? radial : tangential;
}

function movementAlong(given: MovementCase, direction: "tangential" | "radial"): Movement | undefined {
  const { size, species } = given;
  const from = Math.min(given.from, fibreSaturation);
  const to = Math.min(given.to, fibreSaturation);
  const coefficient = species.movement?.[direction];
  const shrinkage = species.shrinkage?.[direction];
  const within = withinRange(from) === from && withinRange(to) === to;
  const byCoefficient = coefficient && changeByCoefficient(size, coefficient.value, withinRange(from), withinRange(to));
  const byShrinkage = shrinkage && changeByShrinkage(size, shrinkage.value, from, to);
  const governs = byShrinkage === undefined || within || Math.abs(byShrinkage) < Math.abs(byCoefficient ?? 0);
  if (coefficient !== undefined && byCoefficient !== undefined && governs) {
    // Without a total shrinkage the coefficient is all there is, and is used past its range.
    const change = byShrinkage === undefined ? changeByCoefficient(size, coefficient.value, from, to) : byCoefficient;
    return { change, equation: "13-2", direction, rests: coefficient, tag: coefficient.tag };
  }
  if (shrinkage === undefined || byShrinkage === undefined) return undefined;
  const tag = weakest([shrinkage.tag, "from memory"]);
  return { change: byShrinkage, equation: "13-3", direction, rests: shrinkage, tag };
}

function withinRange(moisture: number): number {
  return Math.min(Math.max(moisture, coefficientRange.from), coefficientRange.to);
}
