import type { Length } from "../core/length.ts";
import { fraction, type Rational } from "../core/rational.ts";

/** Lengths as whole numbers of one unit, so that a packing can count exactly. */
export interface Scale {
  /** Whole units of a length; a length that no whole number says is taken up to the next, so that nothing is cut small. */
  readonly units: (length: Length) => number;
  /** The length that so many units are. */
  readonly length: (units: number) => Length;
}

/** Finer than any tape, and coarse enough that a sheet's area still counts exactly in plain numbers. */
const finest = 100_000n;

/** The coarsest unit in which all of these lengths are whole, or a ten-thousandth of an inch where that would be too fine. */
export function scaleFor(lengths: readonly Length[]): Scale {
  const exact = lengths.reduce((least, length) => (finest < least ? least : lcm(least, length.d)), 1n);
  const perInch = finest < exact ? 10_000n : exact;
  return {
    units: (length) => Number(ceiling(length.n * perInch, length.d)),
    length: (units) => fraction(BigInt(units), perInch) as Rational,
  };
}

function ceiling(n: bigint, d: bigint): bigint {
  const whole = n / d;
  return whole * d < n ? whole + 1n : whole;
}

function lcm(a: bigint, b: bigint): bigint {
  return (a / gcd(a, b)) * b;
}

function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? a : gcd(b, a % b);
}
