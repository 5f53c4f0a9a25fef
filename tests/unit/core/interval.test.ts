import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { asCut, intervalOf } from "../../../language/core/interval.ts";
import type { Length } from "../../../language/core/length.ts";
import {
  add,
  equal,
  less,
  multiply,
  over,
  ratio,
  smallest,
  subtract,
  times,
  toText,
} from "../../../language/core/rational.ts";
import { derived, type Rule, type Sourced } from "../../../language/core/sourced.ts";
import { startOfFile } from "../../../language/core/span.ts";
import { betweenTwo } from "../../../language/derive/rules/between-two.ts";
import { boxWidth } from "../../../language/derive/rules/box-width.ts";
import { overlaySize } from "../../../language/derive/rules/overlay-size.ts";

let places = 0;

function known(value: Length, low?: Length, high?: Length): Sourced<Length> {
  places += 10;
  const span = { ...startOfFile("file:///a.scant"), start: places, end: places + 3 };
  const origin = { kind: "written" as const, span, text: toText(value) };
  return low === undefined || high === undefined ? { value, origin } : { value, origin, low, high };
}

const rule: Rule = { gives: "test", formula: "", tag: "geometry" };

describe("the interval of a derived length", () => {
  it("is the length itself where nothing under it is uncertain", () => {
    const { low, high, contributions } = intervalOf(betweenTwo(known(ratio(20)), known(ratio(3, 4))));
    expect([toText(low), toText(high), contributions.length]).toEqual(["37/2", "37/2", 0]);
  });

  it("takes a thickness on both sides as one unknown: 20 less twice 45/64 to 23/32", () => {
    const ply = known(ratio(91, 128), ratio(45, 64), ratio(23, 32));
    const { low, high, contributions } = intervalOf(betweenTwo(known(ratio(20)), ply));
    // By hand: 20 - 23/16 = 297/16; 20 - 45/32 = 595/32.
    expect([toText(low), toText(high)]).toEqual(["297/16", "595/32"]);
    expect(contributions.map((one) => [one.name, toText(one.spread)])).toEqual([["thickness", "1/32"]]);
  });

  it("cancels what is added and taken away again", () => {
    const ply = known(ratio(3, 4), ratio(11, 16), ratio(25, 32));
    const inside = betweenTwo(known(ratio(20)), ply);
    const { low, high, contributions } = intervalOf(overlaySize(inside, ply, ply));
    expect([toText(low), toText(high), contributions.length]).toEqual(["20", "20", 0]);
  });

  it("reads one written measure as one unknown, however often it was evaluated", () => {
    const once = known(ratio(1, 2), ratio(1, 2), ratio(17, 32));
    const again: Sourced<Length> = { ...once };
    const sum = derived(rule, { one: once, other: again }, (of) => subtract(of.one, of.other));
    expect(intervalOf(sum).contributions).toEqual([]);
  });

  it("names the largest contributor first", () => {
    const opening = known(ratio(15), ratio(15), ratio(1921, 128));
    const clearance = known(ratio(1, 2), ratio(1, 2), ratio(17, 32));
    const { contributions } = intervalOf(boxWidth(opening, clearance));
    expect(contributions.map((one) => [one.name, toText(one.spread)])).toEqual([
      ["clearance", "1/16"],
      ["opening width", "1/128"],
    ]);
  });

  it("gives each cut an error of its own", () => {
    const cut = (size: Sourced<Length>) => asCut(size, known(ratio(1, 64)));
    const side = known(ratio(10));
    const sum = derived(rule, { one: cut(side), other: cut(side) }, (of) => add(of.one, of.other));
    const { low, high } = intervalOf(sum);
    expect([toText(low), toText(high)]).toEqual(["639/32", "641/32"]);
  });

  it("works rules that are not linear out at their corners", () => {
    const a = known(ratio(10), ratio(9), ratio(11));
    const b = known(ratio(10), ratio(8), ratio(12));
    const least = derived(rule, { a, b }, (of) => smallest(of.a, of.b));
    const { low, high, contributions } = intervalOf(least);
    expect([toText(low), toText(high)]).toEqual(["8", "11"]);
    // The other one at 10, a goes from 9 to 10 and b from 8 to 10.
    expect(contributions.map((one) => [one.name, toText(one.spread)])).toEqual([
      ["b", "2"],
      ["a", "1"],
    ]);
  });

  it("finds the ends at whichever corners they lie", () => {
    const a = known(ratio(2), ratio(1), ratio(3));
    const b = known(ratio(2), ratio(1), ratio(3));
    const value = derived(rule, { a, b }, (of) => multiply(subtract(ratio(10), of.a), of.b));
    const { low, high } = intervalOf(value);
    // a at its most and b at its least: (10 − 3) × 1; the other way round: (10 − 1) × 3
    expect([toText(low), toText(high)]).toEqual(["7", "27"]);
  });

  it("works all out at corners where a rule that is not linear lies deeper", () => {
    const a = known(ratio(10), ratio(9), ratio(11));
    const b = known(ratio(10), ratio(8), ratio(12));
    const least = derived(rule, { a, b }, (of) => smallest(of.a, of.b));
    const { low, high } = intervalOf(boxWidth(known(ratio(40)), least));
    // 40 − 2 × 11 and 40 − 2 × 8
    expect([toText(low), toText(high)]).toEqual(["18", "24"]);
  });

  it("works ten sizes out at every corner: ten readings of 10 give or take 1/4", () => {
    const readings = Object.fromEntries(
      Array.from({ length: 10 }, (_, index) => [`reading ${index + 1}`, known(ratio(10), ratio(39, 4), ratio(41, 4))]),
    );
    const least = derived(rule, readings, (of) => smallest(...(Object.values(of) as [Length, ...Length[]])));
    const { low, high } = intervalOf(least);
    expect([toText(low), toText(high)]).toEqual(["39/4", "41/4"]);
  });

  it("takes more than ten sizes as independent: eleven readings of 10 give or take 1/4", () => {
    const readings = Object.fromEntries(
      Array.from({ length: 11 }, (_, index) => [`reading ${index + 1}`, known(ratio(10), ratio(39, 4), ratio(41, 4))]),
    );
    const least = derived(rule, readings, (of) => smallest(...(Object.values(of) as [Length, ...Length[]])));
    const { low, high, contributions } = intervalOf(least);
    // Each alone goes from 9 3/4 to 10, where the others lie: 1/4. Eleven times that is 11/4.
    expect([toText(low), toText(high), contributions.length]).toEqual(["29/4", "51/4", 11]);
  });

  it("lets a count that hangs on an uncertain length stand as it is", () => {
    const each = known(ratio(2), ratio(1), ratio(3));
    const many = derived(rule, { each }, () => 3);
    const { low, high } = intervalOf(derived(rule, { each, many }, (of) => times(of.each, of.many)));
    expect([toText(low), toText(high)]).toEqual(["3", "9"]);
  });

  it("goes through each size once, though two to the sixtieth paths lead to it", () => {
    const ends = (rule: (one: Sourced<Length>, other: Sourced<Length>) => Sourced<Length>) => {
      let value = known(ratio(1), ratio(0), ratio(2));
      for (let step = 0; step < 60; step++) value = rule(value, value);
      const { low, high } = intervalOf(value);
      return [toText(low), toText(high)];
    };
    // Doubled sixty times: 2 × 2^60; the smaller of a size and itself is that size.
    expect(ends((a, b) => derived(rule, { a, b }, (of) => add(of.a, of.b)))).toEqual(["0", `${2n ** 61n}`]);
    expect(ends((a, b) => derived(rule, { a, b }, (of) => smallest(of.a, of.b)))).toEqual(["0", "2"]);
  });

  it("sees that a product of two uncertain sizes is not linear though each factor is", () => {
    const a = known(ratio(2), ratio(1), ratio(3));
    const b = known(ratio(2), ratio(1), ratio(3));
    const product = derived(rule, { a, b }, (of) => multiply(of.a, of.b));
    const { low, high } = intervalOf(product);
    expect([toText(low), toText(high)]).toEqual(["1", "9"]);
  });

  it("holds every value that the sizes under it can take, and both its ends are reached", () => {
    const size = fc.integer({ min: 1, max: 4000 }).map((n) => ratio(n, 64));
    const slack = fc.integer({ min: 0, max: 8 }).map((n) => ratio(n, 128));
    fc.assert(
      fc.property(
        size,
        size,
        slack,
        slack,
        fc.integer({ min: -3, max: 3 }),
        fc.integer({ min: 0, max: 8 }),
        (w, t, minus, plus, k, at) => {
          const whole = known(w);
          const thickness = known(t, subtract(t, minus), add(t, plus));
          const formula = (x: Length): Length => over(add(subtract(w, times(x, 2)), times(x, k)), 2);
          const value = derived(rule, { whole, thickness }, (of) =>
            over(add(subtract(of.whole, times(of.thickness, 2)), times(of.thickness, k)), 2),
          );
          const { low, high } = intervalOf(value);
          const inside = add(subtract(t, minus), multiply(add(minus, plus), ratio(at, 8)));
          const ends = [formula(subtract(t, minus)), formula(add(t, plus))];
          expect(less(formula(inside), low) || less(high, formula(inside))).toBe(false);
          expect(ends.some((end) => equal(end, low)) && ends.some((end) => equal(end, high))).toBe(true);
        },
      ),
    );
  });
});
