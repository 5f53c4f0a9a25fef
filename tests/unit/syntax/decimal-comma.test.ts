import { describe, expect, test } from "vitest";
import { formatEdits } from "../../../language/edit/format.ts";
import { edited } from "../../../language/edit/places.ts";
import { lower } from "../../../language/syntax/lower.ts";
import { testUri } from "../../support/lowered.ts";

const decimal = "length/decimal-comma";
const taken = (text: string): readonly string[] =>
  lower(`millimetres\n${text}`, testUri).findings.map(({ code, fixes }) =>
    code === decimal ? fixes.map(({ title }) => title).join() : code,
  );

describe("a comma between two figures with no blank behind it", () => {
  test("is a decimal's where nothing can be parted", () => {
    expect(taken("saw { kerf 3,2 }")).toEqual(["Write 3.2"]);
    expect(taken("let g = 1,6")).toEqual(["Write 1.6"]);
    expect(taken("read to 0,5")).toEqual(["Write 0.5"]);
    expect(taken("sheet ply { called 18  size 1220,5 x 2440  costs 42,50 }")).toEqual(["Write 1220.5", "Write 42.50"]);
    expect(taken("slides s { mount side  clearance 12,7 +0,8 -0 }")).toEqual(["Write 12.7", "Write 0.8"]);
    expect(taken("case c { across { opening a 300,5 opening b } }")).toEqual(["Write 300.5"]);
  });

  test("is one too where readings would be far apart, and where a thickness is read to a tenth", () => {
    expect(taken("opening a { wide 50,8 cm  high 150  deep 400,5 }")).toEqual(["Write 50.8", "Write 400.5"]);
    expect(taken("sheet ply { measures 17,8, 17,9 }")).toEqual(["Write 17.8", "Write 17.9"]);
    expect(taken("sheet ply { measures 5,5 }")).toEqual(["Write 5.5"]);
    expect(taken("opening a { wide 0,508 m  high 2,75  deep 400 }")).toEqual(["Write 0.508", "Write 2.75"]);
  });

  test("parts readings and sizes that are sold, and is left alone in thousands", () => {
    expect(taken("opening a { wide 500,502,501  high 150, 8  deep 400 }")).toEqual([]);
    expect(taken("board ash { thick 20  wide 90,140,190  long 2400,3000 }")).toEqual([]);
    expect(taken("board ash { thick 20  wide 4,10 }")).toEqual([]);
    expect(taken("slides s { lengths 250,300,350 }")).toEqual([]);
    expect(taken("lift 1,200 lb")).toEqual(["syntax/unreadable"]);
    expect(taken("sheet ply { measures 17 ,8 }")).toEqual([]);
  });

  test("is read as the number that it is taken for, and stays as it is when the file is formatted", () => {
    const design = lower("millimetres\nopening a { wide 50,8 cm  high 150  deep 400 }", testUri);
    expect(design.openings[0]!.wide!.values.map(({ measure }) => measure.text)).toEqual(["50,8 cm"]);
    expect(design.openings[0]!.wide!.values[0]!.measure.value).toMatchObject({ value: { n: 254n, d: 5n }, unit: "cm" });
    const text = "opening a { wide 50,8 cm  high 500,502 }";
    expect(edited(text, formatEdits(testUri, text, { indent: "  " }))).toContain("wide 50,8 cm  high 500, 502");
  });
});
