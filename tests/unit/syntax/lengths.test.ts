import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inUnit, mixedText, writtenText } from "../../../language/core/length.ts";
import type { Rational } from "../../../language/core/rational.ts";
import { add, over, ratio, subtract, times } from "../../../language/core/rational.ts";
import { positive, taped } from "../../support/arbitraries.ts";
import { clean, codesOf, lengthFrom } from "../../support/lowered.ts";

const mm = (n: number, d = 1): Rational => inUnit(ratio(n, d), "mm");
const value = (text: string, units?: string): Rational | string => {
  const length = lengthFrom(text, units);
  return typeof length === "string" ? length : length.value;
};

describe("every form of length", () => {
  test.each<[string, Rational]>([
    ["23", ratio(23)],
    ["0.709", ratio(709, 1000)],
    [".5", ratio(1, 2)],
    ["3/4", ratio(3, 4)],
    ["13 3/4", ratio(55, 4)],
    ["13-3/4", ratio(55, 4)],
    ["13 - 3/4", ratio(49, 4)],
    ['13 3/4"', ratio(55, 4)],
    ["13 3/4 in", ratio(55, 4)],
    ["13 3/4″", ratio(55, 4)],
    ["1' 1 3/4\"", ratio(55, 4)],
    ["1′ 1 3/4″", ratio(55, 4)],
    ["1 ft", ratio(12)],
    ["1 ft 1 3/4 in", ratio(55, 4)],
    ["13¾", ratio(55, 4)],
    ["¾", ratio(3, 4)],
    ["13 ¾", ratio(55, 4)],
    ["18mm", mm(18)],
    ["18 mm", mm(18)],
    ["2.4 m", mm(2400)],
    ["60 cm", mm(600)],
    ["3/4 - 1/64", ratio(47, 64)],
    ["2 * (3/4 + 1/8)", ratio(7, 4)],
    ["(17 - 3 * 2) / 4", ratio(11, 4)],
    ["10 / 3", ratio(10, 3)],
    ["-3/4 + 1", ratio(1, 4)],
    ["1 - -3/4", ratio(7, 4)],
    ["2 * 3 + 4", ratio(10)],
    ["2 + 3 * 4", ratio(14)],
    ["12 / 3 / 2", ratio(2)],
    ["12 - 3 - 2", ratio(7)],
  ])("%s in a file of inches", (text, expected) => expect(value(text)).toEqual(expected));

  test.each<[string, Rational]>([
    ["18", mm(18)],
    ["17.6", mm(176, 10)],
    ["3/4 in", ratio(3, 4)],
    ['3/4"', ratio(3, 4)],
    ["1 in + 1", add(ratio(1), mm(1))],
    ["2 * 9", mm(18)],
    ["900 - 2 * 17.6", mm(8648, 10)],
  ])("%s in a file of millimetres", (text, expected) => expect(value(text, "millimetres")).toEqual(expected));

  test("a tolerance goes above and below, whatever comes first", () => {
    const ends = (text: string) => {
      const length = lengthFrom(text);
      return typeof length === "string" ? length : [length.low, length.value, length.high];
    };
    const around = (below: Rational, above: Rational) => [
      subtract(ratio(3, 4), below),
      ratio(3, 4),
      add(ratio(3, 4), above),
    ];
    expect(ends("3/4 +1/64 -1/32")).toEqual(around(ratio(1, 32), ratio(1, 64)));
    expect(ends("3/4 -1/32 +1/64")).toEqual(around(ratio(1, 32), ratio(1, 64)));
    expect(ends("3/4 +1/32 -0")).toEqual(around(ratio(0), ratio(1, 32)));
    expect(ends("3/4 +.02")).toEqual(around(ratio(0), ratio(1, 50)));
    expect(ends("3/4 ± 1/64")).toEqual(around(ratio(1, 64), ratio(1, 64)));
    expect(ends("3/4 ±1/64")).toEqual(around(ratio(1, 64), ratio(1, 64)));
    expect(ends("3/4 +1/2mm")).toEqual(around(ratio(0), mm(1, 2)));
  });

  test("a measured range is used at its middle and keeps both ends, however it is written", () => {
    const range = { value: ratio(91, 128), low: ratio(45, 64), high: ratio(23, 32) };
    expect(lengthFrom("45/64 to 23/32")).toMatchObject(range);
    expect(lengthFrom("23/32 to 45/64")).toMatchObject(range);
  });

  test("a sign between spaces is arithmetic; hugging its number it is a tolerance", () => {
    expect(value("3/4 + 1/64")).toEqual(ratio(49, 64));
    expect(value("3/4+1/64")).toEqual(ratio(49, 64));
    expect(value("3/4 +1/64")).toEqual(ratio(3, 4));
  });

  test("a length of nothing, or over nothing, is refused at the spot", () => {
    expect(value("3/0")).toBe("length/over-nothing");
    expect(value("3 / (2 - 2)")).toBe("length/over-nothing");
    expect(value("1ft * 1ft")).toBe("length/not-a-length");
    expect(value("1ft / 1in")).toBe("length/not-a-length");
    expect(value("1ft + 12in / 1in")).toBe("length/not-a-length");
    expect(value("1ft * (12in / 1in)")).toEqual(ratio(144));
  });

  test("any length that the tool writes it reads back exactly, in either kind of file", () => {
    fc.assert(
      fc.property(positive, (length) => {
        expect(value(mixedText(length))).toEqual(length);
        for (const units of ["inches", "millimetres"] as const)
          expect(value(writtenText(length, units), units)).toEqual(length);
      }),
    );
  });

  test("arithmetic of a file is arithmetic of fractions", () => {
    fc.assert(
      fc.property(taped, taped, fc.integer({ min: 1, max: 9 }), (a, b, n) => {
        const [x, y] = [mixedText(a), mixedText(b)];
        expect(value(`(${x} + ${y}) * ${n}`)).toEqual(times(add(a, b), n));
        expect(value(`(${x} - ${y}) / ${n}`)).toEqual(over(subtract(a, b), n));
      }),
    );
  });
});

describe("what may be meant otherwise", () => {
  test("a whole number less a proper fraction gets a hint, other subtractions none", () => {
    expect(codesOf("let a = 13 - 3/4")).toEqual(["length/mixed-or-minus"]);
    expect(codesOf("let a = 13 - 4/3 let b = 13 - 3 let c = 13 1/2 - 3/4 let d = 13in - 3/4 let e = 13 + 3/4")).toEqual(
      [],
    );
  });

  test("a tolerance in brackets is nearly always arithmetic written too close", () => {
    expect(codesOf("let a = 2 * (3 +1/2)")).toEqual(["length/tolerance-in-brackets"]);
    expect(codesOf("let a = 2 * (3 + 1/2)")).toEqual([]);
  });

  test("sizes of a sheet are divided by an x with or without spaces, and by the sign ×", () => {
    const sizes = [
      "48 x 96",
      "48x96",
      "48×96",
      "48 × 96",
      '48"x96"',
      "48 1/2x96 1/4",
      "48 in x 96 in",
      "48x 96",
      "4' x 8'",
    ];
    for (const size of sizes) {
      const [sheet] = clean(`sheet ply { measures 3/4  size ${size} }`).sheets;
      expect([size, sheet?.size?.first.text, sheet?.size?.second.text]).toEqual([size, ...size.split(/ ?[x×] ?/)]);
    }
  });
});
