/**
 * Exact rational numbers. Invariant: `d` is positive and shares no factor with `n`, so two equal values are
 * equal field by field. Everything a build file says is computed with these; rounding happens where a size is shown.
 */
export interface Rational {
  readonly n: bigint;
  readonly d: bigint;
}

export const zero: Rational = { n: 0n, d: 1n };
export const one: Rational = { n: 1n, d: 1n };

/** The fraction `n / d` in lowest terms; `undefined` when `d` is nothing. */
export function fraction(n: bigint, d: bigint): Rational | undefined {
  if (d === 0n) return undefined;
  if (d === 1n) return { n, d };
  const sign = d < 0n ? -1n : 1n;
  const common = gcd(n < 0n ? -n : n, d * sign);
  return { n: (n * sign) / common, d: (d * sign) / common };
}

/** The fraction of two whole numbers written in the source, where the second cannot be nothing. */
export function ratio(n: number | bigint, d: number | bigint = 1n): Rational {
  const made = fraction(BigInt(n), BigInt(d));
  if (made === undefined) throw new Error("a ratio over nothing was written in the source");
  return made;
}

export function add(a: Rational, b: Rational): Rational {
  if (a.d === b.d && a.d === 1n) return { n: a.n + b.n, d: 1n };
  return lowest(a.n * b.d + b.n * a.d, a.d * b.d);
}

export function subtract(a: Rational, b: Rational): Rational {
  if (a.d === b.d && a.d === 1n) return { n: a.n - b.n, d: 1n };
  return lowest(a.n * b.d - b.n * a.d, a.d * b.d);
}

export function negate(a: Rational): Rational {
  return { n: -a.n, d: a.d };
}

export function multiply(a: Rational, b: Rational): Rational {
  return lowest(a.n * b.n, a.d * b.d);
}

/** `a / b`; `undefined` when `b` is nothing. */
export function divide(a: Rational, b: Rational): Rational | undefined {
  return fraction(a.n * b.d, a.d * b.n);
}

export function times(a: Rational, count: number | bigint): Rational {
  return lowest(a.n * BigInt(count), a.d);
}

/** `a / count` for a count that is written in the source and is not nothing. */
export function over(a: Rational, count: number | bigint): Rational {
  return lowest(a.n, a.d * BigInt(count));
}

export function sum(values: readonly Rational[]): Rational {
  return values.reduce(add, zero);
}

/** Negative, zero or positive as `a` is less than, equal to or more than `b`. */
export function compare(a: Rational, b: Rational): number {
  const left = a.n * b.d;
  const right = b.n * a.d;
  return left < right ? -1 : right < left ? 1 : 0;
}

export function less(a: Rational, b: Rational): boolean {
  return a.n * b.d < b.n * a.d;
}

export function equal(a: Rational, b: Rational): boolean {
  return a.n === b.n && a.d === b.d;
}

export function isPositive(a: Rational): boolean {
  return 0n < a.n;
}

export function isZero(a: Rational): boolean {
  return a.n === 0n;
}

export function smallest(first: Rational, ...rest: readonly Rational[]): Rational {
  return rest.reduce((least, next) => (less(next, least) ? next : least), first);
}

export function largest(first: Rational, ...rest: readonly Rational[]): Rational {
  return rest.reduce((most, next) => (less(most, next) ? next : most), first);
}

export function absolute(a: Rational): Rational {
  return a.n < 0n ? negate(a) : a;
}

/** The largest whole number not over `a`. */
export function floor(a: Rational): bigint {
  const whole = a.n / a.d;
  return a.n < 0n && whole * a.d !== a.n ? whole - 1n : whole;
}

/** The nearest double; only for drawings, weights and forces, never for a size that is compared. */
export function toNumber(a: Rational): number {
  if (a.d < doubled && (a.n < 0n ? -a.n : a.n) < doubled) return Number(a.n) / Number(a.d);
  return Number((a.n * 1_000_000_000_000n) / a.d) / 1e12;
}

/** Below this, both parts fit into a double. */
const doubled = 1n << 1000n;

/** The exact text form `29/2` or `14`, which `parseRational` reads back. */
export function toText(a: Rational): string {
  return a.d === 1n ? a.n.toString() : `${a.n}/${a.d}`;
}

/** Reads `12`, `3/4`, `.5`, `0.709`; `undefined` for anything else. */
export function parseRational(text: string): Rational | undefined {
  const whole = /^(-?\d+)(?:\/(\d+))?$/.exec(text);
  if (whole !== null) return fraction(BigInt(whole[1]!), BigInt(whole[2] ?? "1"));
  const decimal = /^(-?)(\d*)\.(\d+)$/.exec(text);
  if (decimal === null) return undefined;
  const digits = decimal[3]!;
  const scaled = BigInt(`${decimal[2]}${digits}`);
  return fraction(decimal[1] === "-" ? -scaled : scaled, 10n ** BigInt(digits.length));
}

function lowest(n: bigint, d: bigint): Rational {
  const common = gcd(n < 0n ? -n : n, d);
  return common === 1n ? { n, d } : { n: n / common, d: d / common };
}

/** Euclid's; plain numbers once both are small, which is nearly always and far faster. */
function gcd(a: bigint, b: bigint): bigint {
  while (mostExact < a || mostExact < b) {
    if (b === 0n) return a;
    [a, b] = [b, a % b];
  }
  let large = Number(a);
  let small = Number(b);
  while (small !== 0) {
    // Taking a tuple apart would make four objects each time, until the program is warm.
    const rest = large % small;
    large = small;
    small = rest;
  }
  return large === 0 ? 1n : BigInt(large);
}

/** Up to here plain numbers hold every whole number. */
const mostExact = BigInt(Number.MAX_SAFE_INTEGER);
