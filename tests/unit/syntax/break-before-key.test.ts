import { describe, expect, test } from "vitest";
import { lower } from "../../../language/syntax/lower.ts";
import { clean, findingLines, testUri } from "../../support/lowered.ts";

const box = (body: string) => clean(`box for left {\n${body}\n}`).boxes[0]!;

describe("a word that is an edge and begins a property", () => {
  test.each([
    ["on the next line", "sides ply\n  wide 11\n  bottom ply under"],
    ["on the same line", "sides ply  wide 11  bottom ply under"],
    ["behind a sum", "sides ply  wide 12 - 2 * (room + 1/8)  bottom ply under"],
    ["behind a name", "sides ply  wide room  bottom ply under"],
    ["behind units and a tolerance", 'sides ply  wide 11" +1/32 -0  bottom ply under'],
    ["behind a size that is read", "sides ply  wide left.width - 1  bottom ply under"],
  ])("begins one where a name follows, %s", (_, body) => {
    const made = box(body);
    expect(made.bottom?.stocks.map(({ text }) => text)).toEqual(["ply"]);
    expect(made.wide).toBeDefined();
  });

  test("takes nothing from the place of the property before it", () => {
    const { wide } = box("wide 11\n\n  bottom ply under");
    expect(wide?.measure.span).toMatchObject({ line: 1, column: 5, endLine: 1, endColumn: 7 });
  });

  test("begins the top of a case, whatever that is", () => {
    for (const top of ["panel ply", "panel", "stretchers 3", "none"]) {
      const [made] = clean(`case chest { wide 24  high 34 1/2  deep 24\n  top ${top}\n}`).cases;
      expect([top, made?.top !== undefined, made?.deep !== undefined]).toEqual([top, true, true]);
    }
  });

  test("is an edge where a comma, a number, another property or the end follows", () => {
    const edges = (text: string) =>
      clean(`opening left { ${text} }`).openings[0]!.wide!.values.map(({ edge }) => edge?.text);
    expect(edges("wide 23 1/2 top, 23 5/8 bottom  high 6")).toEqual(["top", "bottom"]);
    expect(edges("wide 23 1/2 top 23 5/8 bottom")).toEqual(["top", "bottom"]);
    expect(edges("wide room top, other bottom")).toEqual(["top", "bottom"]);
    expect(edges("wide 23 1/2 bottom\n  high 6")).toEqual(["bottom"]);
  });

  test("and one that is half written is one mistake, where it is", () => {
    expect(findingLines(lower("box for left {\n  wide 11\n  bottom\n  sides ply\n}", testUri))).toEqual([]);
    expect(findingLines(lower("box for left {\n  bottom ply\n  front\n  sides ply\n}", testUri))).toEqual([
      '4:3 syntax/unreadable: "sides" was not expected here: a name is missing before it',
    ]);
  });

  test("begins its property by itself behind a size that is written before its word", () => {
    const [made] = clean("case hold { wide 24  kick 5 high 2 deep\n  bottom half\n  top none\n}").cases;
    expect([made?.kick !== undefined, made?.bottom?.stocks[0]?.text, made?.top !== undefined]).toEqual([
      true,
      "half",
      true,
    ]);
    const { frame, panel } = clean("front for left { frame ash 2 wide  panel ply }").fronts[0]!;
    expect([frame?.stock.text, panel?.stocks[0]?.text]).toEqual(["ash", "ply"]);
  });

  test("begins no property in a record of what was cut, but the next record", () => {
    const { cuts } = clean("cut {\n  box till side 1 at 22\n  front till rail 2 at 12\n}");
    expect(cuts.map(({ owner, of }) => `${owner.text} ${of.text}`)).toEqual(["box till", "front till"]);
  });
});
