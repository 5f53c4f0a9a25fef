import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Rational } from "../../../language/core/rational.ts";
import {
  absolute,
  add,
  compare,
  divide,
  equal,
  floor,
  fraction,
  isPositive,
  isZero,
  largest,
  less,
  multiply,
  negate,
  one,
  over,
  parseRational,
  ratio,
  smallest,
  subtract,
  sum,
  times,
  toNumber,
  toText,
  zero,
} from "../../../language/core/rational.ts";
import { rational } from "../../support/arbitraries.ts";

const holds = (law: (a: Rational, b: Rational, c: Rational) => void) =>
  fc.assert(fc.property(rational, rational, rational, law));

describe("arithmetic is exact", () => {
  test("sums and products do not depend on order or grouping", () => {
    holds((a, b, c) => {
      expect(add(a, b)).toEqual(add(b, a));
      expect(add(add(a, b), c)).toEqual(add(a, add(b, c)));
      expect(multiply(a, b)).toEqual(multiply(b, a));
      expect(multiply(multiply(a, b), c)).toEqual(multiply(a, multiply(b, c)));
      expect(multiply(a, add(b, c))).toEqual(add(multiply(a, b), multiply(a, c)));
    });
  });

  test("what is added comes off again, what is multiplied divides out", () => {
    holds((a, b) => {
      expect(subtract(add(a, b), b)).toEqual(a);
      expect(add(a, negate(a))).toEqual(zero);
      expect(divide(multiply(a, b), b)).toEqual(isZero(b) ? undefined : a);
      expect(multiply(a, one)).toEqual(a);
    });
  });

  test("every result is in lowest terms over a positive number, so equal values are equal field by field", () => {
    const gcd = (a: bigint, b: bigint): bigint => (b === 0n ? a : gcd(b, a % b));
    holds((a, b) => {
      for (const value of [add(a, b), subtract(a, b), multiply(a, b), divide(a, b) ?? one, times(a, 7), over(a, 6)]) {
        expect(0n < value.d).toBe(true);
        expect(gcd(value.n < 0n ? -value.n : value.n, value.d)).toBe(1n);
      }
      expect(equal(a, b)).toBe(compare(a, b) === 0);
    });
  });

  test("a third of 23 1/4 is 7 3/4 and a third of 10 stays 10/3", () => {
    expect(over(ratio(93, 4), 3)).toEqual(ratio(31, 4));
    expect(toText(over(ratio(10), 3))).toBe("10/3");
  });

  test("dividing by nothing gives nothing", () => {
    expect(fraction(3n, 0n)).toBeUndefined();
    expect(divide(one, zero)).toBeUndefined();
    expect(parseRational("3/0")).toBeUndefined();
    expect(() => ratio(1, 0)).toThrow();
  });

  test("a sign below the line moves above it", () => {
    expect(fraction(3n, -6n)).toEqual({ n: -1n, d: 2n });
    expect(fraction(0n, -6n)).toEqual(zero);
  });
});

describe("order", () => {
  test("is total, and agrees with the sign of the difference", () => {
    holds((a, b) => {
      const order = compare(a, b);
      expect(Math.sign(order)).toBe(isPositive(subtract(a, b)) ? 1 : isZero(subtract(a, b)) ? 0 : -1);
      expect(less(a, b)).toBe(order < 0);
      expect(compare(b, a) === -order || order === 0).toBe(true);
    });
  });

  test("nothing is less than itself, and nought is not positive", () => {
    for (const value of [zero, one, ratio(-3, 4), ratio(10n ** 40n, 7)]) {
      expect(compare(value, { ...value })).toBe(0);
      expect(less(value, { ...value })).toBe(false);
      expect(equal(value, { ...value })).toBe(true);
    }
    expect([zero, ratio(1, 9), ratio(-1, 9)].map(isPositive)).toEqual([false, true, false]);
    expect([zero, ratio(1, 9), ratio(-1, 9)].map(isZero)).toEqual([true, false, false]);
    // Of one fraction only the part above or below the line is the same.
    expect(equal(ratio(1, 3), ratio(2, 3)) || equal(ratio(2, 3), ratio(2, 5))).toBe(false);
  });

  test("smallest and largest are of the list and bound it", () => {
    fc.assert(
      fc.property(rational, fc.array(rational, { maxLength: 6 }), (first, rest) => {
        const all = [first, ...rest];
        expect(all).toContainEqual(smallest(first, ...rest));
        expect(all.every((value) => compare(smallest(first, ...rest), value) <= 0)).toBe(true);
        expect(all.every((value) => compare(value, largest(first, ...rest)) <= 0)).toBe(true);
        expect(sum(all)).toEqual(rest.reduce(add, first));
      }),
    );
  });

  test("floor is the whole number just below, below nought too", () => {
    expect([ratio(7, 2), ratio(-7, 2), ratio(4), ratio(-4), ratio(-1, 9)].map(floor)).toEqual([3n, -4n, 4n, -4n, -1n]);
    holds((a) => {
      const below = { n: floor(a), d: 1n };
      expect(compare(below, a) <= 0 && less(a, add(below, one))).toBe(true);
    });
  });

  test("absolute loses the sign only", () => {
    holds((a) => {
      expect([a, negate(a)]).toContainEqual(absolute(a));
      expect(compare(zero, absolute(a)) <= 0).toBe(true);
    });
  });
});

describe("texts and doubles", () => {
  test("the text form reads back as the same number", () => {
    holds((a) => {
      expect(parseRational(toText(a))).toEqual(a);
    });
  });

  test.each([
    ["12", ratio(12)],
    ["-3/4", ratio(-3, 4)],
    [".5", ratio(1, 2)],
    ["0.709", ratio(709, 1000)],
    ["-0.25", ratio(-1, 4)],
    ["6/8", ratio(3, 4)],
  ])("%s is read", (text, value) => expect(parseRational(text)).toEqual(value));

  test.each(["", "-", "1.", "1e3", "1 2", "3/-4", "a", "--1", "1/2/3", ".", "x12", "12x", "x.5", ".5x", "3/", " 1"])(
    "%j is not a number",
    (text) => expect(parseRational(text)).toBeUndefined(),
  );

  test("beyond what a double holds exactly, fractions are still in lowest terms", () => {
    const edge = 2n ** 53n;
    for (const far of [edge - 1n, edge, edge + 1n, 2n ** 80n + 1n]) {
      expect(fraction(far * 6n, far * 4n)).toEqual({ n: 3n, d: 2n });
      expect(fraction(-far * 6n, far * 4n)).toEqual({ n: -3n, d: 2n });
      expect(fraction(far, far * far)).toEqual({ n: 1n, d: far });
      expect(fraction(0n, far)).toEqual(zero);
    }
  });

  test("doubles of numbers above and below a thousand bits", () => {
    const bits = 2n ** 1000n;
    expect(toNumber({ n: bits - 1n, d: bits - 1n })).toBe(1);
    expect(toNumber(ratio(-7, 2))).toBe(-3.5);
    expect(toNumber({ n: bits * 5n, d: 2n * bits })).toBe(2.5);
    expect(toNumber({ n: -bits * 5n, d: 2n * bits })).toBe(-2.5);
    expect(toNumber({ n: 3n, d: bits * 2n })).toBe(0);
    expect(toNumber({ n: bits * 2n ** 200n, d: bits * 2n ** 198n + 1n })).toBeCloseTo(4, 9);
    // 2^1100 alone is beyond any double, 2^1100 / 2^999 = 2^101 is not.
    expect(toNumber({ n: 2n ** 1100n, d: 2n ** 999n }) / 2 ** 101).toBeCloseTo(1, 9);
    expect(toNumber({ n: -(2n ** 1100n), d: 2n ** 999n }) / 2 ** 101).toBeCloseTo(-1, 9);
  });

  test("the nearest double is near, and finite for numbers of a thousand digits", () => {
    expect(toNumber(ratio(1, 3))).toBeCloseTo(1 / 3, 15);
    const huge = 10n ** 1000n;
    expect(toNumber(ratio(huge * 3n, huge * 2n + 1n))).toBeCloseTo(1.5, 9);
    expect(toNumber(ratio(-huge * 3n - 1n, huge * 2n))).toBeCloseTo(-1.5, 9);
  });
});
