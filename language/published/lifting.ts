import { type Cited, isQuantity, type Source, type Tag, weakest } from "./cited.ts";

/** How well hands can hold the load. */
export type Grip = "good" | "fair" | "poor";

/** How long the lifting goes on at a stretch, in hours. */
export type LiftDuration = "up to 1 h" | "up to 2 h" | "up to 8 h";

/** One lift in inches or centimetres: hands ahead of the ankles, hands above the floor, travel up or down, turn in degrees, lifts per minute. */
export type Lift = {
  readonly unit: "in" | "cm";
  readonly reach: number;
  readonly height: number;
  readonly travel: number;
  readonly turn: number;
  readonly perMinute: number;
  readonly duration: LiftDuration;
  readonly grip: Grip;
};

/** The recommended weight in pounds (or kilograms for a lift in centimetres), its multipliers, and how far the result can be trusted. */
export type LiftLimit = {
  readonly weight: number;
  readonly multipliers: Readonly<Record<"HM" | "VM" | "DM" | "AM" | "FM" | "CM", number>>;
  readonly tag: Tag;
  readonly source: string;
};

/** Where the equation was read. */
export const liftingSource: Source = {
  tag: "as transcribed",
  source: "NIOSH 94-110 (revised 9/2021), Applications Manual for the Revised NIOSH Lifting Equation",
};

const boundsSource: Source = {
  tag: "from memory",
  source: "from memory of NIOSH 94-110: beyond these a multiplier is zero",
};

/** Kilograms in a pound, by definition (NIST SP 811). */
export const poundInKilograms = 0.45359237;

/** The load constant: the weight most people may lift in the best posture, in pounds and in kilograms. */
export const loadConstant = {
  in: { value: 51, ...liftingSource },
  cm: { value: 23, ...liftingSource },
} as const satisfies Record<string, Cited<number>>;

/** The frequency multipliers: lifts per minute, then up to 1, 2 and 8 hours. */
export const frequencyTable: readonly (readonly [
  perMinute: number,
  oneHour: number,
  twoHours: number,
  eightHours: number,
])[] = [
  [0.2, 1.0, 0.95, 0.85],
  [0.5, 0.97, 0.92, 0.81],
  [1, 0.94, 0.88, 0.75],
  [2, 0.91, 0.84, 0.65],
  [3, 0.88, 0.79, 0.55],
  [4, 0.84, 0.72, 0.45],
  [5, 0.8, 0.6, 0.35],
  [6, 0.75, 0.5, 0.27],
  [7, 0.7, 0.42, 0.22],
  [8, 0.6, 0.35, 0.18],
  [9, 0.52, 0.3, 0.15],
  [10, 0.45, 0.26, 0.13],
];

/** The reach, height, travel and turn beyond which a lift is not to be made at all, by unit; the turn is in degrees. */
export const liftBounds = {
  in: { reach: 25, height: 70, travel: 70, turn: 135, ...boundsSource },
  cm: { reach: 63, height: 175, travel: 175, turn: 135, ...boundsSource },
} as const;

/** How the multipliers read in each unit: best reach, best height, loss per unit of height, travel factor, shortest travel, and where grip changes. */
const constants = {
  in: { reach: 10, height: 30, perHeight: 0.0075, travel: 1.8, leastTravel: 10 },
  cm: { reach: 25, height: 75, perHeight: 0.003, travel: 4.5, leastTravel: 25 },
} as const;

/**
 * Weight that one lift should not exceed: load constant times HM VM DM AM FM CM, zero when a bound is passed. Undefined for a negative or missing figure. A
 * frequency between rows takes the next higher row, above 10 a minute takes zero. The grip multipliers are from memory.
 */
export function recommendedWeight(lift: Lift): LiftLimit | undefined {
  const figures = [lift.reach, lift.height, lift.travel, lift.turn, lift.perMinute];
  if (!figures.every(isQuantity)) return undefined;
  const multipliers = {
    HM: reachMultiplier(lift),
    VM: heightMultiplier(lift),
    DM: travelMultiplier(lift),
    AM: lift.turn <= liftBounds[lift.unit].turn ? 1 - 0.0032 * lift.turn : 0,
    FM: frequencyMultiplier(lift),
    CM: gripMultiplier(lift),
  };
  const weight = Object.values(multipliers).reduce((product, one) => product * one, loadConstant[lift.unit].value);
  const tag = weakest([liftingSource.tag, lift.grip === "good" ? liftingSource.tag : "from memory"]);
  return { weight, multipliers, tag, source: liftingSource.source };
}

/** Lifting index: the load over the recommended weight, in the same unit; above 1 asks for a second person or a lift. Undefined for bad input, Infinity at zero. */
export function liftingIndex(load: number, recommended: number): number | undefined {
  if (!isQuantity(load) || !isQuantity(recommended)) return undefined;
  if (recommended === 0) return Infinity;
  return load / recommended;
}

/** The multiplier for how often and how long; hands low on a long day allow less than the table prints (from memory), so 9 and 10 a minute give zero there. */
export function frequencyMultiplier({ unit, height, perMinute, duration }: Lift): number {
  const row = frequencyTable.find(([often]) => perMinute <= often);
  if (row === undefined) return 0;
  const isLowAndLong = duration === "up to 8 h" && height < constants[unit].height;
  if (isLowAndLong && 8 < row[0]) return 0;
  return row[durations.indexOf(duration) + 1] ?? 0;
}

const durations: readonly LiftDuration[] = ["up to 1 h", "up to 2 h", "up to 8 h"];

function reachMultiplier({ unit, reach }: Lift): number {
  if (liftBounds[unit].reach < reach) return 0;
  return Math.min(1, constants[unit].reach / reach);
}

function heightMultiplier({ unit, height }: Lift): number {
  if (liftBounds[unit].height < height) return 0;
  return 1 - constants[unit].perHeight * Math.abs(height - constants[unit].height);
}

function travelMultiplier({ unit, travel }: Lift): number {
  if (liftBounds[unit].travel < travel) return 0;
  if (travel <= constants[unit].leastTravel) return 1;
  return 0.82 + constants[unit].travel / travel;
}

function gripMultiplier({ unit, grip, height }: Lift): number {
  if (grip === "good") return 1;
  if (grip === "poor") return 0.9;
  return height < constants[unit].height ? 0.95 : 1;
}
