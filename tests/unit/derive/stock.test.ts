import { describe, expect, test } from "vitest";
import { mixedText } from "../../../language/core/length.ts";
import { built, errorsOf, exact, partOf } from "../../support/built.ts";

const stock = (text: string) => {
  const [first] = built(`inches\n${text}`).derivation.model.stocks.values();
  if (first === undefined) throw new Error("no stock");
  return first;
};
const thickness = (text: string) => {
  const { thickness } = stock(text);
  return [thickness.value, ...(thickness.low === undefined ? [] : [thickness.low, thickness.high!])].map(mixedText);
};

describe("how thick a stock is", () => {
  test("is what was measured, or the middle of several readings, which keeps the smallest and largest", () => {
    expect(thickness("sheet ply { called 3/4  measures 23/32 }")).toEqual(["23/32"]);
    // (45/64 + 47/64) ÷ 2 = 46/64
    expect(thickness("sheet ply { measures 47/64, 45/64, 23/32 }")).toEqual(["23/32", "45/64", "47/64"]);
    // Readings with ranges of their own: from 11/16 to 3/4; their middles 45/64 and 47/64
    expect(thickness("sheet ply { measures 11/16 to 23/32, 23/32 to 3/4 }")).toEqual(["23/32", "11/16", "3/4"]);
    expect(thickness("board oak { thick 3/4, 13/16 }")).toEqual(["25/32", "3/4", "13/16"]);
  });

  test("is its label while it has not been measured, anywhere that its standard allows", () => {
    // Plywood sold as 3/4 may be 23/32 category: 0.688 at the least; 0.781 at the most
    expect(thickness("sheet ply { called 3/4 }")).toEqual(["3/4", "86/125", "781/1000"]);
    // MDF within 0.010, particle board within 0.013: 0.74 to 0.76, 0.737 to 0.763
    expect(thickness("sheet board { called 3/4  core mdf }")).toEqual(["3/4", "37/50", "19/25"]);
    expect(thickness("sheet board { called 3/4  core particle }")).toEqual(["3/4", "737/1000", "763/1000"]);
    // A label that no standard has stands for itself.
    expect(thickness("sheet odd { called 2/3 }")).toEqual(["2/3"]);
    const { thickness: labelled } = stock("sheet ply { called 3/4 }");
    expect(labelled.origin).toMatchObject({ kind: "derived", rule: { gives: "thickness as labelled" } });
  });

  test("of a board bought by its nominal size is the dressed one: PS 20 for boards, two sides planed where it is bought rough", () => {
    expect(thickness("board pine { called 1 }")).toEqual(["3/4"]);
    expect(thickness("board oak { called 1  rough }")).toEqual(["13/16"]);
    expect(thickness("board oak { called 5/4  rough }")).toEqual(["1 1/16"]);
    // A single figure is printed for 1 3/4.
    expect(thickness("board oak { called 1 3/4  rough }")).toEqual(["1 1/2"]);
    expect(thickness("board oak { called 7/8 }")).toEqual(["7/8"]);
    expect(stock("board pine { called 1 }").thickness.origin).toMatchObject({
      rule: { source: expect.stringMatching(/PS 20/) },
    });
  });

  test("of edging is a default where it is not said, of others a finding", () => {
    expect(thickness("edging band { thick 1/16 }")).toEqual(["1/16"]);
    expect(stock("edging band { }").thickness.origin).toMatchObject({ kind: "default", key: "edging.thick" });
    expect(errorsOf(built("inches\nsheet ply { }\nboard oak { }"))).toEqual([
      "stock/no-thickness",
      "stock/no-thickness",
    ]);
  });

  test("is that of the first of two with one name", () => {
    const build = built("inches\nsheet ply { measures 1/2 }\nsheet ply { measures 3/4 }");
    expect(errorsOf(build)).toEqual(["name/twice"]);
    expect(exact(build.derivation.model.stocks.get("ply")!.thickness)).toBe("1/2");
  });
});

describe("the grain of a part", () => {
  const grain = (block: string) =>
    partOf(built(`inches\n${block}\npart lid { from it  long 20  wide 10 }`), "part lid", "lid").grain;

  test("runs along it, unless its stock has none", () => {
    expect(grain("board it { thick 3/4 }")).toBe("long");
    expect(grain("sheet it { measures 3/4 }")).toBe("long");
    expect(grain("sheet it { measures 3/4  core veneer }")).toBe("long");
    for (const core of ["mdf", "particle", "hardboard"])
      expect(grain(`sheet it { measures 3/4  core ${core} }`)).toBe("none");
  });

  test("is as its sheet says, whatever it is made of", () => {
    expect(grain("sheet it { measures 3/4  grain none }")).toBe("none");
    expect(grain("sheet it { measures 3/4  core mdf  grain long }")).toBe("long");
  });
});

describe("figures that only plan, weights and prices rest on", () => {
  const wrong = (text: string) => built(`inches\n${text}`).findings.filter(({ severity }) => severity === "error");

  test.each([
    ["saw { kerf -1/8 }", "this is -1/8 in"],
    ["saw { trim -1 }", "this is -1 in"],
    ["sheet it { measures 1/2  size -4 x 96 }", "this size is -4 in"],
    ["board it { thick 1  wide 4, 0  long 96 }", "this size is 0 in"],
    ["sheet it { measures 1/2 }  offcut of it 4 x -3", "this size is -3 in"],
    ["sheet it { measures 1/2  have 2.5 }", "this is not a number of pieces"],
    ["sheet it { measures 1/2  costs -4.25 }", "this is -4.25"],
    ["board it { thick 1  density -3 }", "this is -3"],
    ["slides it { lengths 10 to 20 by 2  carries -5 lb }", "this is -5"],
    ["lift -5 lb", "this is -5"],
  ])("%s is found once, while it is typed", (text, message) => {
    expect(wrong(text).map((found) => found.message)).toEqual([message]);
  });

  test("may be nought, where nought is an amount", () => {
    expect(wrong("saw { kerf 0  trim 0 }  sheet it { measures 1/2  size 4 x 96  have 0  costs 0 }")).toEqual([]);
  });
});
