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
    const { low, high } = intervalOf(least);
    expect([toText(low), toText(high)]).toEqual(["8", "11"]);
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
