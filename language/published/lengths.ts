/** A length as two whole numbers, numerator over denominator, in lowest terms, so that exact arithmetic can start from it. */
export type Fraction = readonly [numerator: number, denominator: number];

/** One length of a table: exact, in the unit the table prints, with its decimal beside it. */
export type ShopLength = { readonly exact: Fraction; readonly unit: "in" | "mm"; readonly decimal: number };

/** Reads "3/4", "1-1/16", "1 1/16", "0.719" or "12" as a fraction; undefined for anything else or a zero denominator. */
export function readFraction(text: string): Fraction | undefined {
  const mixed = /^(?:(\d+)[- ])?(\d+)\/(\d+)$/.exec(text.trim());
  if (mixed !== null) {
    const whole = Number(mixed[1] ?? 0);
    const denominator = Number(mixed[3]);
    return reduced(whole * denominator + Number(mixed[2]), denominator);
  }
  const decimal = /^(\d+)(?:\.(\d+))?$/.exec(text.trim());
  if (decimal === null) return undefined;
  const digits = decimal[2] ?? "";
  return reduced(Number(`${decimal[1]}${digits}`), 10 ** digits.length);
}

/** A length of a table in inches, from its printed text; throws on text that is no number, which only a slip in a table can cause. */
export function inches(text: string): ShopLength {
  return shopLength(text, "in");
}

/** A length of a table in millimetres, from its printed text; throws on text that is no number, which only a slip in a table can cause. */
export function millimetres(text: string): ShopLength {
  return shopLength(text, "mm");
}

/** The lowest terms of numerator over denominator; undefined unless both are safe whole numbers and the denominator is above zero. */
export function reduced(numerator: number, denominator: number): Fraction | undefined {
  if (!Number.isSafeInteger(numerator) || !Number.isSafeInteger(denominator) || denominator <= 0) return undefined;
  const divisor = commonDivisor(Math.abs(numerator), denominator);
  return [numerator / divisor, denominator / divisor];
}

/** True when two fractions are the same number, whatever their terms; false when a denominator is zero. */
export function sameFraction(a: Fraction, b: Fraction): boolean {
  return a[1] !== 0 && b[1] !== 0 && a[0] * b[1] === b[0] * a[1];
}

/** a + k*b, exact, with the sign and size of k a fraction too; undefined when the terms grow past the safe whole numbers. */
export function addScaled(a: Fraction, k: Fraction, b: Fraction): Fraction | undefined {
  const denominator = k[1] * b[1];
  return reduced(a[0] * denominator + k[0] * b[0] * a[1], a[1] * denominator);
}

/** The decimal of a fraction; NaN for a zero denominator. */
export function decimalOf([numerator, denominator]: Fraction): number {
  return denominator === 0 ? Number.NaN : numerator / denominator;
}

/** The fraction as a table length in the unit given. */
export function lengthOf(exact: Fraction, unit: "in" | "mm"): ShopLength {
  return { exact, unit, decimal: decimalOf(exact) };
}

function shopLength(text: string, unit: "in" | "mm"): ShopLength {
  const exact = readFraction(text);
  if (exact === undefined) throw new Error(`a published table holds "${text}", which is no length`);
  return lengthOf(exact, unit);
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? Math.max(a, 1) : commonDivisor(b, a % b);
}
