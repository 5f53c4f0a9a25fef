import { type Cited, isQuantity, type Source } from "./cited.ts";
import { addScaled, type Fraction, millimetres, type ShopLength } from "./lengths.ts";

/** One row of the hinge chart: up to this height in inches and under this weight in pounds, this many hinges. */
export type HingeRow = { readonly height: number; readonly weight: number; readonly count: number };

const practice: Source = { tag: "common practice", source: "common practice, no source: cup hinge drawings" };

/** Where the hinge chart was read. */
export const hingeChartSource: Source = {
  tag: "common practice",
  source:
    "common practice, no source: a hinge chart whose labels were seen; the mapping of label to count is a reading",
};

/** Where the 32 mm rows were read. */
export const systemSource: Source = {
  tag: "as transcribed",
  source: "the 32 mm system: holes 32 mm apart, 5 mm wide, front row 37 mm in",
};

/** A cup hinge's boring in millimetres: the cup, its depth, its screws, and the least and most from door edge to cup. */
export const cupHinge = {
  diameter: { value: millimetres("35"), ...practice },
  depth: { value: millimetres("13"), ...practice },
  screwsApart: { value: millimetres("45"), ...practice },
  screwsBehind: { value: millimetres("9.5"), ...practice },
  screwHole: { value: millimetres("8"), ...practice },
  leastFromEdge: { value: millimetres("3"), ...practice },
  mostFromEdge: { value: millimetres("8"), ...practice },
} as const satisfies Record<string, Cited<ShopLength>>;

/** The hinge chart. */
export const hingeChart: readonly HingeRow[] = [
  { height: 40, weight: 15, count: 2 },
  { height: 60, weight: 30, count: 3 },
  { height: 80, weight: 45, count: 4 },
  { height: 100, weight: 60, count: 5 },
];

/** Hinges for a door of that height in inches and weight in pounds, whichever asks for more; undefined for bad input or a door beyond the chart. */
export function hingeCount(height: number, weight: number): Cited<number> | undefined {
  if (!isQuantity(height) || !isQuantity(weight)) return undefined;
  const row = hingeChart.find((one) => height <= one.height && weight < one.weight);
  return row && { value: row.count, ...hingeChartSource };
}

/** Cup centre from the door's edge, exact in millimetres, from the boring distance between edge and cup: C = B + 17.5; undefined past safe whole numbers. */
export function cupCentre(boring: Fraction): Fraction | undefined {
  return addScaled(boring, [1, 1], [35, 2]);
}

/** Overlay in millimetres a hinge gives: its fixed distance plus the boring distance, less the plate; may be negative for an inset door. */
export function hingeOverlay(fixed: number, boring: number, plate: number): number {
  return fixed + boring - plate;
}

/** Plate height in millimetres for an overlay door lapping the side by `lap`, or for an inset one set back by it: boring + constant -/+ lap. */
export function plateHeight(mount: "overlay" | "inset", boring: number, constant: number, lap: number): number {
  return mount === "overlay" ? boring + constant - lap : boring + constant + lap;
}

/** The 32 mm system in millimetres: pitch, hole, and the front row from the panel's front edge with overlay faces. */
export const system32 = {
  pitch: { value: millimetres("32"), ...systemSource },
  hole: { value: millimetres("5"), ...systemSource },
  frontRow: { value: millimetres("37"), ...systemSource },
} as const satisfies Record<string, Cited<ShopLength>>;

/** Height of the n-th system hole above the first, in millimetres; undefined unless n is a whole number of zero or more. */
export function systemHole(n: number): number | undefined {
  return isCount(n) ? 32 * n : undefined;
}

/** Height in millimetres of a door or drawer face covering n pitches less the gap; undefined unless n is a whole number and the gap a quantity. */
export function systemFaceHeight(n: number, gap: number): number | undefined {
  return isCount(n) && isQuantity(gap) ? 32 * n - gap : undefined;
}

/** Hinge cup centre in millimetres from a door's top or bottom, midway between two holes: 32 n + 16 - gap/2, or 16 below; undefined for bad input. */
export function systemCupCentre(n: number, side: "above" | "below", gap: number): number | undefined {
  if (!isCount(n) || !isQuantity(gap)) return undefined;
  return side === "above" ? 32 * n + 16 - gap / 2 : 32 * n - 16 - gap / 2;
}

function isCount(n: number): boolean {
  return Number.isSafeInteger(n) && 0 <= n;
}
