import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { longestFile, lower } from "../../../language/syntax/lower.ts";
import { clean, codesOf, findingLines, gist, testUri } from "../../support/lowered.ts";

const sample = readFileSync(new URL("../../../examples/print-room.scant", import.meta.url), "utf8");

describe("texts as editors and other systems leave them", () => {
  test("the sample has nothing that cannot be read, and nothing of it is lost", () => {
    const design = clean(sample);
    const counts = [
      design.sheets,
      design.boards,
      design.slides,
      design.hinges,
      design.cases,
      design.boxes,
      design.fronts,
    ];
    expect(counts.map((blocks) => blocks.length)).toEqual([2, 1, 1, 1, 1, 2, 2]);
    expect([design.shelves, design.cuts, design.offcuts, design.uses].map((list) => list.length)).toEqual([1, 3, 1, 1]);
    expect(design.project?.text).toBe("Print room plan chest");
    expect(design.slides[0]?.clearance?.measure).toMatchObject({ plus: { kind: "number" }, minus: { kind: "number" } });
    expect(design.boards[0]?.species?.text).toBe("hard maple");
    expect(design.boards[0]?.costs?.per).toBe("board foot");
    expect(design.cuts.map((cut) => [cut.of.text, cut.part?.text, cut.at?.text, cut.spoiled?.text])).toEqual([
      ["plan-1", "side", undefined, undefined],
      ["inks", "rail", "13 11/16", undefined],
      ["rollers", "stile", undefined, "spoiled"],
    ]);
  });

  test("a byte order mark, line ends of any kind, tabs and no-break spaces change nothing but places", () => {
    const plain = gist(clean(sample));
    const texts = [
      `\uFEFF${sample}`,
      sample.replaceAll("\n", "\r\n"),
      sample.replaceAll("\n", "\r"),
      sample.replaceAll("  ", "\t"),
    ];
    for (const text of texts) expect(gist(clean(text)).replaceAll("\\t", "  ")).toBe(plain);
  });

  test("lines and columns count carriage returns as the editor does", () => {
    expect(findingLines(lower("inches\r\nsheet {\r\n}\r\n", testUri))).toEqual([
      '2:7 syntax/unreadable: "{" was not expected here: a name is missing before it',
    ]);
  });

  test("a sign with nothing behind it says what is missing, also where a statement follows", () => {
    expect(findingLines(lower("let a = 3 +\nopening left { wide 12  high 6  deep 20 }\n", testUri))).toEqual([
      '1:11 syntax/unreadable: "+" was not expected here: a length is missing behind it',
    ]);
  });

  test.each([
    ["slides s { mount sid }", '"sid" was not expected here: side, under or centre can stand here'],
    ["box for o { holds 40 }", '"}" was not expected here: lb or kg can stand here'],
    ["door for o { hinged }", '"}" was not expected here: left, right, top or bottom can stand here'],
    ["opening o { wide 15 lb }", '"lb" was not expected here: a weight is not asked for here'],
    ["case k { openings a-1 to a-3 equal, rail 18 }", '"," was not expected here: no list goes on here'],
    ["opening o { wide 15", 'the file ends in the middle of something: "}" is missing before it'],
  ])("%s says what could stand there, and of no brace that is not missing", (text, message) => {
    expect(lower(text, testUri).findings[0]?.message).toBe(message);
  });

  test("comments of both kinds stand anywhere, and hide what is in them", () => {
    const [opening] = clean(
      "// opening a { }\nopening /* b */ left { /* wide 3 */ wide 12 // high 9\n  high 6 } /* the end",
    ).openings;
    expect([opening?.name.text, opening?.wide?.values.length, opening?.high?.values[0]?.measure.text]).toEqual([
      "left",
      1,
      "6",
    ]);
  });

  test("a comment that is never closed ends with the file", () => {
    expect(clean("inches /* sheet ply { }\nsheet ply { }").sheets).toEqual([]);
  });

  test("a string that is never closed ends with its line", () => {
    const design = lower('project "Plan chest\ninches\nsheet ply { measures 3/4 }', testUri);
    expect([design.project?.text, design.units, design.sheets.length]).toEqual(["Plan chest", "inches", 1]);
  });

  test("an inch mark is no quotation mark", () => {
    const [opening] = clean('opening left { wide 15 1/2"  high 6"  deep 22" }').openings;
    expect([opening?.wide?.values[0]?.measure.text, opening?.deep?.values[0]?.measure.text]).toEqual([
      '15 1/2"',
      '22"',
    ]);
  });

  test("names keep letters of other tongues", () => {
    expect(clean("sheet Kiefer-größer { measures 18mm }").sheets[0]?.name.text).toBe("Kiefer-größer");
  });

  test("signs that mean nothing here are one finding each, and everything round them stands", () => {
    const design = lower("sheet ply { measures 3/4 } § opening left { wide 12 ¶ high 6 }", testUri);
    expect(design.findings.map((finding) => finding.span.start)).toEqual([27, 52]);
    expect([design.sheets.length, design.openings[0]?.high?.values.length]).toEqual([1, 1]);
  });

  test("the marks of a merge that went wrong leave what is whole", () => {
    const text = `inches\n<<<<<<< HEAD\nsheet ply { measures 3/4 }\n=======\nsheet thin { measures 1/2 }\n>>>>>>> other\nboard oak { thick 3/4 }\n`;
    const design = lower(text, testUri);
    expect(design.findings.every((finding) => finding.code === "syntax/unreadable")).toBe(true);
    expect(design.findings.length).toBeGreaterThan(0);
    expect(design.sheets.map((sheet) => sheet.name.text)).toEqual(["ply", "thin"]);
    expect(design.boards.map((board) => board.name.text)).toEqual(["oak"]);
  });

  test("a file that is too long is not read, and says so once", () => {
    const design = lower(`sheet ply { measures 3/4 }${" ".repeat(longestFile)}`, testUri);
    expect(design.findings.map(({ code }) => code)).toEqual(["syntax/too-long"]);
    expect(design.sheets).toEqual([]);
  });

  test("nothing at all is a design without anything", () => {
    for (const text of ["", " ", "\n\n", "// only a comment", "\uFEFF"]) expect(clean(text).sheets).toEqual([]);
  });
});

describe("statements", () => {
  test("the first project, unit and reading hold", () => {
    expect(clean("millimetres").units).toBe("millimetres");
    expect(clean("").units).toBe("inches");
    expect(codesOf("inches inches")).toEqual([]);
    expect(codesOf("inches millimetres")).toEqual(["statement/units-twice"]);
    expect(clean("read to 1/64").reading?.text).toBe("1/64");
  });

  test("lift, offcut, cut and use keep all that is said", () => {
    const design = clean(
      'lift 50 lb reach 20 from 10 up 60\noffcut of ply 23 x 41\nuse "a/b.scant"\ncut { box a side 2 at 20 x 5 spoiled }',
    );
    expect(design.shop.lifts[0]).toMatchObject({
      amount: { unit: "lb" },
      reach: { text: "20" },
      low: { text: "10" },
      high: { text: "60" },
    });
    expect(design.offcuts[0]).toMatchObject({ stock: { text: "ply" }, first: { text: "23" }, second: { text: "41" } });
    expect(design.uses[0]?.path.text).toBe("a/b.scant");
    expect(design.cuts[0]).toMatchObject({ at: { text: "20" }, wide: { text: "5" }, part: { text: "side" } });
  });

  test("an allowance holds for its block, or for the file, and wants a reason", () => {
    const design = clean('allow slide/too-long "the plinth" box for a { allow box/too-wide "so be it" }');
    expect(design.allows).toMatchObject([{ code: { text: "slide/too-long" }, reason: { text: "the plinth" } }]);
    expect(design.allows[0]?.scope).toBeUndefined();
    expect(design.boxes[0]?.allows[0]?.scope).toEqual(design.boxes[0]?.span);
    expect(codesOf("allow slide/too-long")).toEqual(["statement/allow-without-reason"]);
  });

  test("a block knows its head, and the place where a property can be written", () => {
    const [box] = clean("box for a { slides runner }").boxes;
    expect([box?.head.start, box?.head.end, box?.open.start, box?.span.end]).toEqual([0, 10, 11, 27]);
  });
});
