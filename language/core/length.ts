import type { Rational } from "./rational.ts";
import {
  absolute,
  divide,
  equal,
  floor,
  fraction,
  multiply,
  parseRational,
  ratio,
  subtract,
  times,
} from "./rational.ts";

/** A length in inches, exact. One inch is 25.4 mm by definition, so metric lengths are exact too. */
export type Length = Rational;

export type Units = "inches" | "millimetres";

export type LengthUnit = "in" | "ft" | "mm" | "cm" | "m";

/** How a file shows sizes: its units, and the smallest step its maker reads on the tape (in inches). */
export interface Reading {
  readonly units: Units;
  readonly step: Length;
}

/** A length as shown: its text, and on which side of the exact value the text lies. */
export interface Shown {
  readonly text: string;
  readonly rounded: "under" | "over" | undefined;
}

const millimetre = ratio(5, 127);

const unitInInches: Record<LengthUnit, Rational> = {
  in: ratio(1),
  ft: ratio(12),
  mm: millimetre,
  cm: times(millimetre, 10),
  m: times(millimetre, 1000),
};

/** `count` of a unit, in inches. */
export function inUnit(count: Rational, unit: LengthUnit): Length {
  return multiply(count, unitInInches[unit]);
}

/** A bare number in the units of the file, in inches. */
export function inUnits(count: Rational, units: Units): Length {
  return units === "inches" ? count : multiply(count, millimetre);
}

/** An exact length in millimetres. */
export function toMillimetres(length: Length): Rational {
  return multiply(length, ratio(127, 5));
}

/** The number that a length is in the units of the file. */
export function countOf(length: Length, units: Units): Rational {
  return units === "inches" ? length : toMillimetres(length);
}

/**
 * A size as the tape shows it. Rounds down to the reading, since a part that is a hair small still goes in and one
 * that is a hair large does not; what was rounded says so.
 */
export function show(length: Length, reading: Reading, toward: "under" | "over" = "under"): Shown {
  const steps = divide(length, reading.step);
  if (steps === undefined) return { text: numberText(length, reading.units), rounded: undefined };
  const whole = toward === "under" ? floor(steps) : -floor({ n: -steps.n, d: steps.d });
  const shown = times(reading.step, whole);
  return {
    text: numberText(shown, reading.units),
    rounded: equal(shown, length) ? undefined : toward,
  };
}

/** The size that `show` reads off: the exact one rounded down to the reading, or itself where nothing is rounded to. */
export function readOff(length: Length, { step }: Reading): Length {
  const steps = divide(length, step);
  return steps === undefined ? length : times(step, floor(steps));
}

/** `show` as one text: `7 5/32 −` where the size shown is a hair under the exact one, `+` where it is over. */
export function showText(length: Length, reading: Reading, toward: "under" | "over" = "under"): string {
  const shown = show(length, reading, toward);
  return shown.rounded === undefined ? shown.text : `${shown.text} ${shown.rounded === "under" ? "−" : "+"}`;
}

/** A length in full, unrounded where a shop fraction can say it: for messages, where a rounded amount would mislead. */
export function exactText(length: Length, units: Units): string {
  const count = countOf(length, units);
  // Halves of halves only: 8 mm is 40/127 in, which no tape shows.
  if (units === "inches" && count.d <= 128n && isHalved(count)) return mixedText(count);
  return decimalText(count, units === "inches" ? 4 : 2);
}

function isHalved({ d }: Rational): boolean {
  return (d & (d - 1n)) === 0n;
}

/** A length with its unit, as `exactText`: `13 3/4 in`, `350 mm`. */
export function withUnit(length: Length, units: Units): string {
  return `${exactText(length, units)} ${units === "inches" ? "in" : "mm"}`;
}

/**
 * As `withUnit`, but what is made in millimetres, and stands on no rule of inches, in those whatever the file's units: the
 * 35 mm of a cup is a bit of 35 mm and no 1.378 in.
 */
export function asMade(length: Length, units: Units): string {
  if (units === "inches" && !isHalved(length)) {
    const halves = times(toMillimetres(length), 2);
    if (halves.d === 1n) return withUnit(length, "millimetres");
  }
  return withUnit(length, units);
}

/** The text that, written in a build file of these units, reads back as exactly this length. */
export function writtenText(length: Length, units: Units): string {
  const count = countOf(length, units);
  // Halves of halves stand on a rule; what was measured as 0.708 is 0.708 again, and not 177/250.
  if (units === "inches" && isHalved(count)) return mixedText(count);
  const decimals = decimalPlaces(count.d);
  return decimals === undefined ? mixedText(count) : decimalText(count, decimals);
}

/** A number with at most `places` decimals, rounded to the nearest, without trailing noughts. */
export function decimalText(value: Rational, places: number): string {
  const scale = 10n ** BigInt(places);
  const scaled = floor({ n: value.n * scale * 2n + value.d, d: value.d * 2n });
  const size = scaled < 0n ? -scaled : scaled;
  const whole = size / scale;
  const rest = (size % scale).toString().padStart(places, "0").replace(/0+$/, "");
  const sign = scaled < 0n ? "-" : "";
  return rest === "" ? `${sign}${whole}` : `${sign}${whole}.${rest}`;
}

/** A count as a mixed number: `13 3/4`, `3/4`, `-1/8`. */
export function mixedText(count: Rational): string {
  const size = absolute(count);
  const whole = floor(size);
  const rest = subtract(size, { n: whole, d: 1n });
  const sign = count.n < 0n ? "-" : "";
  if (rest.n === 0n) return `${sign}${whole}`;
  return whole === 0n ? `${sign}${rest.n}/${rest.d}` : `${sign}${whole} ${rest.n}/${rest.d}`;
}

const vulgar: Record<string, string> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅐": "1/7",
  "⅑": "1/9",
  "⅒": "1/10",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅕": "1/5",
  "⅖": "2/5",
  "⅗": "3/5",
  "⅘": "4/5",
  "⅙": "1/6",
  "⅚": "5/6",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};

/**
 * Reads a plain count as written: `23`, `.5`, `3/4`, `13 3/4`, `13-3/4`, `13¾`. `undefined` for anything else, also
 * for a fraction over nothing.
 */
export function parseCount(text: string): Rational | undefined {
  const typographic = /^(\d*)[ \t]*([¼½¾⅐-⅞])$/.exec(text);
  if (typographic !== null) return joined(typographic[1]!, vulgar[typographic[2]!] ?? "");
  const mixed = /^(\d+)(?:-|[ \t]+)(\d+\/\d+)$/.exec(text);
  if (mixed !== null) return joined(mixed[1]!, mixed[2]!);
  return parseRational(text);
}

function joined(whole: string, part: string): Rational | undefined {
  const rest = parseRational(part);
  if (rest === undefined) return undefined;
  return whole === "" ? rest : fraction(BigInt(whole) * rest.d + rest.n, rest.d);
}

function numberText(length: Length, units: Units): string {
  return units === "inches" ? mixedText(length) : decimalText(toMillimetres(length), 2);
}

/** How many decimals write `1/d` exactly; `undefined` when none do. */
function decimalPlaces(d: bigint): number | undefined {
  let places = 0;
  let rest = d;
  while (rest % 10n === 0n) [rest, places] = [rest / 10n, places + 1];
  while (rest % 2n === 0n) [rest, places] = [rest / 2n, places + 1];
  while (rest % 5n === 0n) [rest, places] = [rest / 5n, places + 1];
  return rest === 1n ? places : undefined;
}
