import { describe, expect, test } from "vitest";
import { intervalOf } from "../../../language/core/interval.ts";
import { mixedText } from "../../../language/core/length.ts";
import { built, errorsOf, exact, openingOf } from "../../support/built.ts";

const lets = "inches\nlet a = 12\nlet b = 4\nlet t = 1/2 +1/32 -1/64\n";
const left = (expression: string) => built(`${lets}opening left { wide ${expression}  high 6 }`);
const wide = (expression: string) => exact(openingOf(left(expression), "left").wide);
const ends = (expression: string) => {
  const { low, high } = intervalOf(openingOf(left(expression), "left").wide);
  return [mixedText(low), mixedText(high)];
};

describe("an expression", () => {
  test.each([
    // A bare number is a count where it multiplies, and inches where it meets a length.
    ["a + 1/4", "12 1/4"],
    ["2 * a - b", "20"],
    ["(a + b) / 2", "8"],
    ["a - -b", "16"],
    ["2 * (3 + 4)", "14"],
    ["1 ft + 254 mm", "22"],
    // The ratio of two lengths multiplies: 12 ÷ 4 = 3
    ["b * (a / b)", "12"],
    ["(a / b) * (a / b) * b", "36"],
    ["b * (a / b + a / b)", "24"],
    ["b * (a / b - 1)", "8"],
    ["b * (1 + a / b)", "16"],
    ["b * (2 * (a / b))", "24"],
    ["b * ((a / b) / 2)", "6"],
  ])("%s is %s", (expression, result) => expect(wide(expression)).toBe(result));

  test.each([
    ["a * b", "length/not-a-length"],
    ["a / b", "length/not-a-length"],
    ["2 * (a / b)", "length/not-a-length"],
    ["a / b + a", "length/not-a-length"],
    ["a + a / b", "length/not-a-length"],
    ["2 / a", "length/not-a-length"],
    ["a / 0", "length/over-nothing"],
    ["a / (b - 4)", "length/over-nothing"],
    ["a + lost", "name/unknown-length"],
    ["lost + a", "name/unknown-length"],
    ["-lost", "name/unknown-length"],
    ["a +lost -1/64", "name/unknown-length"],
    ["a +1/64 -lost", "name/unknown-length"],
    ["a to lost", "name/unknown-length"],
    ["lost to a", "name/unknown-length"],
  ])("%s is a finding: %s, once", (expression, code) => expect(errorsOf(left(expression))).toEqual([code]));

  test("over names says its arithmetic with them, in brackets where it is one inside another", () => {
    const formula = (expression: string) => {
      const { origin } = openingOf(left(expression), "left").wide;
      return origin.kind === "derived" ? origin.rule.formula : origin.kind;
    };
    expect(formula("a - 2 * b")).toBe("{a} − (2 × {b})");
    expect(formula("(a + b) / 2")).toBe("({a} + {b}) ÷ 2");
    expect(formula("a + 10 mm")).toBe("{a} + 10 mm");
    expect(formula("a - -b")).toBe("{a} − −{b}");
    expect(formula("12 + 1/4")).toBe("written");
  });
});

describe("a measure with a tolerance", () => {
  test("goes from its least to its most, which are told from the value", () => {
    expect([wide("12 +1/32 -1/64"), ...ends("12 +1/32 -1/64")]).toEqual(["12", "11 63/64", "12 1/32"]);
    expect([wide("12 +1/32 -0"), ...ends("12 +1/32 -0")]).toEqual(["12", "12", "12 1/32"]);
    expect([wide("12 +0 -1/64"), ...ends("12 +0 -1/64")]).toEqual(["12", "11 63/64", "12"]);
  });

  test("as a range is used at its middle, whichever end is written first", () => {
    // (12 + 12 1/8) ÷ 2
    for (const range of ["12 to 12 1/8", "12 1/8 to 12"])
      expect([wide(range), ...ends(range)]).toEqual(["12 1/16", "12", "12 1/8"]);
  });

  test("carries its tolerance into what hangs on it", () => {
    // 12 − 2 × (1/2 + 1/32) = 10 15/16; 12 − 2 × (1/2 − 1/64) = 11 1/32
    expect([wide("a - 2 * t"), ...ends("a - 2 * t")]).toEqual(["11", "10 15/16", "11 1/32"]);
    // b × (t ÷ t) does not move, and t × (a ÷ b) is three times as uncertain: 3 × 33/64 − … : 1 29/64 to 1 19/32
    expect(ends("b * (t / t)")).toEqual(["4", "4"]);
    expect(ends("t * (a / b)")).toEqual(["1 29/64", "1 19/32"]);
  });
});
