import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { add, equal, sum, toNumber } from "../../../language/core/rational.ts";
import { common, swept, volumeOf, without } from "../../../language/solid/box.ts";
import { boxFrom } from "./support.ts";

const range = fc
  .tuple(fc.integer({ min: -40, max: 40 }), fc.integer({ min: 1, max: 40 }))
  .map(([from, long]) => [from, from + long] as const);
const box = fc.tuple(range, range, range).map(([x, y, z]) => boxFrom(x, y, z));

describe("boxes cut out of boxes", () => {
  test("what is left and what is taken make the whole, exactly, and share nothing", () => {
    fc.assert(
      fc.property(box, box, (whole, cut) => {
        const left = without(whole, cut);
        const taken = common(whole, cut);
        const volume = add(sum(left.map(volumeOf)), taken === undefined ? sum([]) : volumeOf(taken));
        expect(equal(volume, volumeOf(whole))).toBe(true);
        expect(left.some((piece) => common(piece, cut) !== undefined)).toBe(false);
        for (const [index, piece] of left.entries())
          expect(left.slice(index + 1).some((other) => common(piece, other) !== undefined)).toBe(false);
      }),
    );
  });

  test("boxes that touch share nothing, and boxes that overlap by a millionth share that", () => {
    const one = boxFrom([0, 16], [0, 16], [0, 16]);
    const beside = boxFrom([16, 32], [0, 16], [0, 16]);
    expect(common(one, beside)).toBeUndefined();
    const nearer = { ...beside, x: { from: { n: 999_999n, d: 1_000_000n }, to: beside.x.to } };
    expect(toNumber(volumeOf(common(one, nearer)!))).toBeCloseTo(1e-6, 12);
  });

  test("a sweep grows a box one way only", () => {
    const one = boxFrom([0, 16], [0, 16], [16, 32]);
    expect(swept(one, "z", { n: -1n, d: 1n }).rough).toEqual([0, 1, 0, 1, 0, 2]);
    expect(swept(one, "z", { n: 1n, d: 2n }).rough).toEqual([0, 1, 0, 1, 1, 2.5]);
  });
});
