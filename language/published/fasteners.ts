import { type Cited, cite, isQuantity, type Source } from "./cited.ts";
import { inches, millimetres, type ShopLength } from "./lengths.ts";

/** A wood screw by its gauge: shank, root of the thread where printed, and the drill printed for soft and hard wood. */
export type ScrewGauge = {
  readonly gauge: number;
  readonly shank: ShopLength;
  readonly root?: ShopLength;
  readonly softwoodDrill?: ShopLength;
  readonly hardwoodDrill?: ShopLength;
};

/** Where shank diameters were read. */
export const shankSource: Source = { tag: "as transcribed", source: "Wood Handbook Table 8-9, FPL-GTR-282" };

/** Where root diameters and drills were read; charts disagree by up to 1/16 in. */
export const rootSource: Source = { tag: "common practice", source: "common practice, no source: a screw chart" };

/** Where the lead-hole rule was read. */
export const pilotSource: Source = {
  tag: "as transcribed",
  source: "Wood Handbook ch. 8, FPL-GTR-282: 70 % of the root in softwood, 90 % in hardwood",
};

/** Where withdrawal was read: Eq. 8-10 in newtons and millimetres. */
export const withdrawalSource: Source = {
  tag: "as transcribed",
  source: "Wood Handbook Eq. 8-10, FPL-GTR-282 p. 8-10",
};

/** The root of a thread as a share of the shank, on average. */
export const rootShare: Cited<number> = { value: 2 / 3, tag: "published", source: "Wood Handbook FPL-GTR-190 p. 8-10" };

/** Wood screws by gauge. */
export const screwGauges: readonly ScrewGauge[] = [
  { gauge: 4, shank: millimetres("2.84"), root: inches("0.075") },
  { gauge: 5, shank: millimetres("3.18") },
  { gauge: 6, shank: millimetres("3.51"), root: inches("0.094"), ...drills("1/16", "5/64") },
  { gauge: 7, shank: millimetres("3.84") },
  { gauge: 8, shank: millimetres("4.17"), root: inches("0.112"), ...drills("5/64", "3/32") },
  { gauge: 9, shank: millimetres("4.50") },
  { gauge: 10, shank: millimetres("4.83"), root: inches("0.130"), ...drills("3/32", "7/64") },
  { gauge: 12, shank: millimetres("5.49"), root: inches("0.148"), ...drills("7/64", "1/8") },
  { gauge: 14, shank: millimetres("6.15"), root: inches("0.165") },
];

/** The row of a gauge; undefined when the table has none. */
export function findGauge(gauge: number): ScrewGauge | undefined {
  return screwGauges.find((screw) => screw.gauge === gauge);
}

/** Shank diameter in inches by the gauge formula 0.060 + 0.013 n, from memory; undefined for a gauge that is no quantity. */
export function shankByFormula(gauge: number): Cited<number> | undefined {
  if (!isQuantity(gauge)) return undefined;
  return { value: 0.06 + 0.013 * gauge, tag: "from memory", source: "from memory: 0.060 + 0.013 n" };
}

/** Root diameter in inches, printed or else two thirds of the shank; undefined for an unknown gauge. */
export function rootDiameter(gauge: number): Cited<number> | undefined {
  const screw = findGauge(gauge);
  if (screw === undefined) return undefined;
  if (screw.root !== undefined) return cite(screw.root.decimal, rootSource);
  return cite((screw.shank.decimal / 25.4) * rootShare.value, rootShare);
}

/** Lead hole in inches for a gauge in soft or hard wood, 70 or 90 % of the root; undefined for an unknown gauge. */
export function pilotHole(gauge: number, wood: "softwood" | "hardwood"): Cited<number> | undefined {
  const root = rootDiameter(gauge);
  if (root === undefined) return undefined;
  return cite(root.value * (wood === "softwood" ? 0.7 : 0.9), pilotSource);
}

/** Ultimate withdrawal load of a wood screw in newtons: specific gravity, shank and threaded penetration in millimetres; undefined for bad input. */
export function withdrawalNewtons(gravity: number, shank: number, thread: number): number | undefined {
  return [gravity, shank, thread].every(isQuantity) ? 108.25 * gravity ** 2 * shank * thread : undefined;
}

/** The same in pounds from inches, converted from the metric form; undefined for bad input. */
export function withdrawalPounds(gravity: number, shank: number, thread: number): number | undefined {
  const newtons = withdrawalNewtons(gravity, shank * 25.4, thread * 25.4);
  return newtons === undefined ? undefined : newtons / 4.448_221_615;
}

/** Ultimate withdrawal load of a smooth nail in newtons, Wood Handbook Eq. 8-1: gravity, diameter and penetration in millimetres; undefined for bad input. */
export function nailWithdrawalNewtons(gravity: number, diameter: number, penetration: number): number | undefined {
  return [gravity, diameter, penetration].every(isQuantity)
    ? 54.12 * gravity ** 2.5 * diameter * penetration
    : undefined;
}

/** K of a screw's side load in hardwood by specific gravity, Wood Handbook Eq. 8-13 (p = K D squared, newtons and millimetres). */
export const lateralFactors: readonly { readonly from: number; readonly to: number; readonly factor: number }[] = [
  { from: 0.33, to: 0.47, factor: 23.17 },
  { from: 0.48, to: 0.56, factor: 31.99 },
  { from: 0.57, to: 0.74, factor: 44.13 },
];

/** Side load of a wood screw in hardwood in newtons from gravity (to two decimals) and shank in mm, thread at least 7 shanks; undefined outside the table. */
export function lateralNewtons(gravity: number, shank: number): number | undefined {
  const rounded = Math.round(gravity * 100) / 100;
  const row = lateralFactors.find(({ from, to }) => from <= rounded && rounded <= to);
  return row === undefined || !isQuantity(shank) ? undefined : row.factor * shank ** 2;
}

function drills(
  softwood: string,
  hardwood: string,
): { readonly softwoodDrill: ShopLength; readonly hardwoodDrill: ShopLength } {
  return { softwoodDrill: inches(softwood), hardwoodDrill: inches(hardwood) };
}
