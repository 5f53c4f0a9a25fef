import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { add, equal, less, one, ratio, sum, toNumber, zero } from "../../../language/core/rational.ts";
import {
  alongside,
  around,
  boxOf,
  common,
  type Range,
  shared,
  swept,
  volumeOf,
  without,
} from "../../../language/solid/box.ts";
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

  test("ends that lie closer than plain numbers are trusted are told apart exactly", () => {
    // Whole inches and less than a millionth more or less: on both sides of what plain numbers decide.
    const end = fc
      .tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: -300, max: 300 }))
      .map(([whole, bit]) => add({ n: BigInt(whole), d: 1n }, ratio(bit, 2 ** 30)));
    const stretch = fc.tuple(end, end).map(([a, b]) => (less(a, b) ? { from: a, to: b } : { from: b, to: a }));
    const wide: Range = { from: zero, to: one };
    fc.assert(
      fc.property(stretch, stretch, (a, b) => {
        const [first, second] = [boxOf(a, wide, wide), boxOf(b, wide, wide)];
        expect(first === undefined).toBe(equal(a.from, a.to));
        fc.pre(first !== undefined && second !== undefined);
        const overlap = shared(a, b);
        const both = common(first, second);
        expect(both?.x).toEqual(overlap);
        expect(alongside(first, second, "x")).toBe(overlap !== undefined);
        const round = { from: less(a.from, b.from) ? a.from : b.from, to: less(a.to, b.to) ? b.to : a.to };
        expect(around([first, second])?.x).toEqual(round);
        if (both !== undefined) expect(both.rough.slice(0, 2)).toEqual([both.x.from, both.x.to].map(toNumber));
      }),
      { numRuns: 500 },
    );
  });

  test("a sweep grows a box one way only", () => {
    const one = boxFrom([0, 16], [0, 16], [16, 32]);
    expect(swept(one, "z", { n: -1n, d: 1n }).rough).toEqual([0, 1, 0, 1, 0, 2]);
    expect(swept(one, "z", { n: 1n, d: 2n }).rough).toEqual([0, 1, 0, 1, 1, 2.5]);
  });
});
