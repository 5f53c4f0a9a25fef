import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Reading } from "../../../language/core/length.ts";
import {
  countOf,
  decimalText,
  exactText,
  inUnit,
  inUnits,
  mixedText,
  parseCount,
  readOff,
  show,
  showText,
  toMillimetres,
  withUnit,
  writtenText,
} from "../../../language/core/length.ts";
import { add, compare, equal, less, ratio, subtract, times } from "../../../language/core/rational.ts";
import { positive, rational, taped } from "../../support/arbitraries.ts";

const inches: Reading = { units: "inches", step: ratio(1, 32) };
const millimetres: Reading = { units: "millimetres", step: inUnit(ratio(1), "mm") };

describe("units", () => {
  test("an inch is 25.4 mm exactly, and every unit follows from the two", () => {
    expect(toMillimetres(ratio(1))).toEqual(ratio(254, 10));
    expect(inUnit(ratio(254), "mm")).toEqual(ratio(10));
    expect(inUnit(ratio(1), "cm")).toEqual(inUnit(ratio(10), "mm"));
    expect(inUnit(ratio(1), "m")).toEqual(inUnit(ratio(1000), "mm"));
    expect(inUnit(ratio(1), "ft")).toEqual(ratio(12));
    expect(inUnit(ratio(3), "in")).toEqual(ratio(3));
  });

  test("there and back is the same length", () => {
    fc.assert(
      fc.property(rational, (length) => {
        expect(inUnit(toMillimetres(length), "mm")).toEqual(length);
        for (const units of ["inches", "millimetres"] as const) {
          expect(inUnits(countOf(length, units), units)).toEqual(length);
        }
      }),
    );
  });
});

describe("counts as they are written", () => {
  test.each([
    ["23", ratio(23)],
    ["0.709", ratio(709, 1000)],
    [".5", ratio(1, 2)],
    ["3/4", ratio(3, 4)],
    ["13 3/4", ratio(55, 4)],
    ["13-3/4", ratio(55, 4)],
    ["13   3/4", ratio(55, 4)],
    ["13\t3/4", ratio(55, 4)],
    ["13¾", ratio(55, 4)],
    ["13 ¾", ratio(55, 4)],
    ["⅛", ratio(1, 8)],
    ["2⅝", ratio(21, 8)],
    ["007", ratio(7)],
    ["12 36/8", ratio(33, 2)],
  ])("%s", (text, value) => expect(parseCount(text)).toEqual(value));

  test("every typographic fraction of the grammar is known", () => {
    const values = "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞".split("").map((sign) => parseCount(sign));
    const expected = [
      "1/4",
      "1/2",
      "3/4",
      "1/7",
      "1/9",
      "1/10",
      "1/3",
      "2/3",
      "1/5",
      "2/5",
      "3/5",
      "4/5",
      "1/6",
      "5/6",
    ];
    expect(values).toEqual([...expected, "1/8", "3/8", "5/8", "7/8"].map(parseCount));
    expect(values).not.toContain(undefined);
  });

  test.each([
    "",
    "3/0",
    "13 3/0",
    "13 - 3/4",
    "1 2",
    "½½",
    "1/2 3/4",
    "13--3/4",
    "-1",
    "1.2.3",
    "¼1",
    "13 3/4 x",
    "a ¼",
  ])("%j is no plain count", (text) =>
    expect(parseCount(text)?.n ?? undefined).toEqual(text === "-1" ? -1n : undefined),
  );

  test("what is written for a length reads back as exactly that length", () => {
    fc.assert(
      fc.property(positive, (length) => {
        expect(parseCount(mixedText(length))).toEqual(length);
        for (const units of ["inches", "millimetres"] as const) {
          const read = parseCount(writtenText(length, units));
          expect(read === undefined ? undefined : inUnits(read, units)).toEqual(length);
        }
      }),
    );
  });
});

test("what is written for a length in inches is a fraction of a rule, else decimals where they say it exactly", () => {
  const texts = [ratio(45, 64), ratio(177, 250), ratio(303, 5), ratio(1, 3), ratio(1, 256)];
  expect(texts.map((length) => writtenText(length, "inches"))).toEqual(["45/64", "0.708", "60.6", "1/3", "1/256"]);
});

describe("sizes as they are shown", () => {
  const readings = [inches, millimetres, { ...inches, step: ratio(1, 64) }, { ...millimetres, step: ratio(5, 254) }];

  test("never more than the exact size, and less than one step under it", () => {
    fc.assert(
      fc.property(positive, fc.constantFrom(...readings), (length, reading) => {
        const shown = show(length, reading);
        const value = inUnits(parseCount(shown.text)!, reading.units);
        expect(compare(value, length) <= 0).toBe(true);
        expect(less(subtract(length, value), reading.step)).toBe(true);
        expect(shown.rounded).toBe(equal(value, length) ? undefined : "under");
      }),
    );
  });

  test("upwards never less than the exact size, and less than one step over it", () => {
    fc.assert(
      fc.property(positive, fc.constantFrom(...readings), (length, reading) => {
        const shown = show(length, reading, "over");
        const value = inUnits(parseCount(shown.text)!, reading.units);
        expect(compare(length, value) <= 0).toBe(true);
        expect(less(subtract(value, length), reading.step)).toBe(true);
      }),
    );
  });

  test("a size on a mark of the tape is shown as it is", () => {
    fc.assert(
      fc.property(taped, (length) => {
        const shown = show(length, { ...inches, step: ratio(1, 64) });
        expect(shown).toEqual({ text: mixedText(length), rounded: undefined });
      }),
    );
  });

  test("what was rounded says so: a hair under, a hair over", () => {
    expect(showText(add(ratio(229, 32), ratio(1, 100)), inches)).toBe("7 5/32 −");
    expect(showText(add(ratio(229, 32), ratio(1, 100)), inches, "over")).toBe("7 3/16 +");
    expect(showText(ratio(229, 32), inches)).toBe("7 5/32");
    expect(showText(inUnit(ratio(3505, 10), "mm"), millimetres)).toBe("350 −");
  });

  test("a step of nothing shows the size in full", () => {
    expect(show(ratio(1, 3), { units: "inches", step: ratio(0) })).toEqual({ text: "1/3", rounded: undefined });
  });

  test("a length under nought rounds down, away from nought", () => {
    expect(show(ratio(-1, 100), inches)).toEqual({ text: "-1/32", rounded: "under" });
  });

  test("the size that is read off is the one that is shown", () => {
    // 7 5/32 = 229/32; a hundredth of an inch is less than the next 1/32
    expect(readOff(add(ratio(229, 32), ratio(1, 100)), inches)).toEqual(ratio(229, 32));
    expect(readOff(ratio(229, 32), inches)).toEqual(ratio(229, 32));
    expect(readOff(inUnit(ratio(3505, 10), "mm"), millimetres)).toEqual(inUnit(ratio(350), "mm"));
    expect(readOff(ratio(-1, 100), inches)).toEqual(ratio(-1, 32));
    // Where nothing is rounded to, it is the size itself.
    expect(readOff(ratio(1, 3), { units: "inches", step: ratio(0) })).toEqual(ratio(1, 3));
  });
});

describe("texts for messages", () => {
  test("shop fractions in full, other sizes to four decimals of an inch or two of a millimetre", () => {
    expect(exactText(ratio(55, 4), "inches")).toBe("13 3/4");
    expect(exactText(ratio(1, 3), "inches")).toBe("0.3333");
    expect(exactText(inUnit(ratio(8), "mm"), "inches")).toBe("0.315");
    expect(withUnit(inUnit(ratio(350), "mm"), "millimetres")).toBe("350 mm");
    expect(withUnit(ratio(1, 3), "millimetres")).toBe("8.47 mm");
    expect(withUnit(ratio(55, 4), "inches")).toBe("13 3/4 in");
  });

  test("the finest shop fraction is a 128th; 1/256 = 0.00390625 is said in decimals", () => {
    expect(exactText(ratio(1, 128), "inches")).toBe("1/128");
    expect(exactText(ratio(1, 256), "inches")).toBe("0.0039");
  });

  test("a mixed number has a whole, a fraction, or both, and its sign once", () => {
    const texts = [ratio(14), ratio(0), ratio(3, 4), ratio(55, 4), ratio(-1, 8), ratio(-9, 4), ratio(-3)].map(
      mixedText,
    );
    expect(texts).toEqual(["14", "0", "3/4", "13 3/4", "-1/8", "-2 1/4", "-3"]);
  });

  test("a fix writes fractions into inches, and decimals into millimetres where decimals say it exactly", () => {
    expect([ratio(55, 4), ratio(14), ratio(1, 3)].map((length) => writtenText(length, "inches"))).toEqual([
      "13 3/4",
      "14",
      "1/3",
    ]);
    const inMillimetres = (n: number, d = 1) => writtenText(inUnit(ratio(n, d), "mm"), "millimetres");
    // 184/10 = 92/5; 1/8 = 0.125; 1/40 = 0.025; nothing over 3 or 6 ends.
    expect([inMillimetres(355), inMillimetres(25, 2), inMillimetres(92, 5)]).toEqual(["355", "12.5", "18.4"]);
    expect([inMillimetres(1, 8), inMillimetres(1, 40), inMillimetres(3, 100)]).toEqual(["0.125", "0.025", "0.03"]);
    expect([inMillimetres(1, 3), inMillimetres(35, 6)]).toEqual(["1/3", "5 5/6"]);
  });

  test("decimals round to the nearest, half up, without trailing noughts", () => {
    const texts = [ratio(1, 3), ratio(2, 3), ratio(1, 8), ratio(-1, 8), ratio(5), ratio(-1, 1000), ratio(199, 200)];
    expect(texts.map((value) => decimalText(value, 2))).toEqual(["0.33", "0.67", "0.13", "-0.12", "5", "0", "1"]);
  });

  test("decimals are within half of their last place", () => {
    fc.assert(
      fc.property(positive, fc.integer({ min: 0, max: 6 }), (value, places) => {
        const read = parseCount(decimalText(value, places))!;
        const off = subtract(read, value);
        expect(
          less(times({ n: off.n < 0n ? -off.n : off.n, d: off.d }, 2n * 10n ** BigInt(places)), ratio(1001, 1000)),
        ).toBe(true);
      }),
    );
  });
});
