import fc from "fast-check";
import type { Rational } from "../../language/core/rational.ts";
import { ratio } from "../../language/core/rational.ts";

/** Any fraction that shop arithmetic might meet, negative and zero ones with it, and now and then a huge one. */
export const rational: fc.Arbitrary<Rational> = fc
  .oneof(
    { weight: 6, arbitrary: fc.tuple(fc.integer({ min: -5000, max: 5000 }), fc.integer({ min: 1, max: 640 })) },
    {
      weight: 1,
      arbitrary: fc.tuple(fc.bigInt({ min: -(2n ** 90n), max: 2n ** 90n }), fc.bigInt({ min: 1n, max: 2n ** 70n })),
    },
  )
  .map(([n, d]) => ratio(n, d));

export const positive: fc.Arbitrary<Rational> = rational.filter((value) => 0n < value.n);

/** A size as it is read off a tape: 1/64 in up to 200 in. */
export const taped: fc.Arbitrary<Rational> = fc.integer({ min: 1, max: 12_800 }).map((steps) => ratio(steps, 64));
