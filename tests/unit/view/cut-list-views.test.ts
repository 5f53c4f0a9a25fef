import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ratio } from "../../../language/core/rational.ts";
import { ownersText } from "../../../language/view/owners.ts";
import { referenceSections, withSections } from "../../../language/view/reference.ts";
import { whyChain, whyLine } from "../../../language/view/why.ts";
import { built, inch, partOf } from "../../support/built.ts";
import { randomDesign } from "../../support/designs.ts";

const reading = { units: "inches", step: ratio(1, 32) } as const;
const text = `project "Drawers"
  inches
  sheet ply { called 3/4  measures 23/32 }
  slides runner { lengths 10 to 28 by 2  behind 1/2 }
  opening d-1 { wide 15 1/2  high 6  deep 22 } opening d-2 { wide 15 1/2  high 6  deep 22 }
  opening d-3 { wide 15 1/2  high 6  deep 22 } opening low { wide 10 1/3  high 4  deep 22 }
  box for d-1 to d-3, low { sides ply  slides runner }`;

/** Reads RFC 4180 text back into its cells. */
function cellsOf(csv: string): readonly (readonly string[])[] {
  const rows: string[][] = [[""]];
  let quoted = false;
  for (let at = 0; at < csv.length; at++) {
    const sign = csv[at]!;
    const row = rows.at(-1)!;
    if (quoted && sign === '"' && csv[at + 1] === '"') row[row.length - 1] += csv[++at]!;
    else if (sign === '"') quoted = !quoted;
    else if (!quoted && sign === ",") row.push("");
    else if (!quoted && sign === "\r" && csv[at + 1] === "\n") {
      rows.push([""]);
      at++;
    } else row[row.length - 1] += sign;
  }
  expect(rows.pop()).toEqual([""]);
  return rows;
}

describe("the cut list", () => {
  test("merges equal parts of different owners, longest first, each row with a mark of its own", () => {
    const { batches } = built(text).rod();
    expect(batches.map((batch) => batch.stock)).toEqual(["ply"]);
    expect(
      batches[0]!.rows.map(({ mark, quantity, length, width, of }) => [mark, quantity, length, width, of]),
    ).toEqual([
      ["A", 6, "20", "5 1/2", "box d-1 to d-3"],
      ["B", 2, "20", "3 1/2", "box low"],
      ["C", 6, "13 1/16", "5 1/2", "box d-1 to d-3"],
      // 10 1/3 − 1 − 1 7/16 = 7 43/48 = 7.8958: a hair under is 7 7/8
      ["D", 2, "7 7/8 −", "3 1/2", "box low"],
    ]);
    expect(batches[0]!.note).toBe("sheet, 23/32 thick");
  });

  test("says a thickness as the calliper does where no rule shows it", () => {
    const note = (measured: string) =>
      built(`inches sheet ply { measures ${measured} } part lid { from ply  long 9  wide 9 }`).rod().batches[0];
    expect([note("0.708")?.note, note("0.708")?.rows[0]?.thickness]).toEqual(["sheet, 0.708 thick", "0.708"]);
    expect(note("18 mm")?.note).toBe("sheet, 0.7087 thick");
    expect(note("45/64")?.note).toBe("sheet, 45/64 thick");
  });

  test("has the same number of pieces in every form", () => {
    fc.assert(
      fc.property(randomDesign, (design) => {
        const build = built(design.statements("inches").join("\n"));
        const total = build.list().parts.reduce((sum, part) => sum + part.quantity, 0);
        expect(build.rod().pieces).toBe(total);
        expect(
          build
            .rod()
            .batches.flatMap((batch) => batch.rows)
            .reduce((sum, row) => sum + row.quantity, 0),
        ).toBe(total);
        const [head, ...rows] = cellsOf(build.csv());
        expect(rows.reduce((sum, row) => sum + Number(row[head!.indexOf("quantity")]), 0)).toBe(total);
        expect(rows.every((row) => row.length === head!.length)).toBe(true);
      }),
      { numRuns: 25 },
    );
  });

  test("for programs is exact, and for the bench as the tape shows it", () => {
    const part = built(text)
      .list()
      .parts.find((one) => one.of === "box low" && one.name === "front");
    expect(part?.length).toEqual({ exact: "379/48", inches: 7.8958333333, mm: 200.5541666667, shop: "7 7/8 −" });
    expect(part).toMatchObject({ quantity: 1, stock: "ply", source: { file: "file:///job/main.scant", line: 7 } });
  });

  test("as csv quotes what must be quoted, and no spreadsheet takes a name for a formula", () => {
    const tricky = "inches part cmd { from ply  long 12  wide 3 } sheet ply { measures 3/4 }";
    const rows = cellsOf(built(tricky).csv());
    expect(rows[1]?.slice(0, 6)).toEqual(["A", "1", "cmd", "part cmd", "ply", "12"]);
    const minus = built(
      "inches case a { wide 30  high 20  deep 12  panels ply  kick 3 high 2 deep  opening one } sheet ply { measures 3/4 }",
    ).csv();
    for (const cell of cellsOf(minus).flat()) expect(cell).not.toMatch(/^[=+@-]/);
    expect(minus).toMatch(/\r\n$/);
    expect(minus.replaceAll("\r\n", "")).not.toMatch(/[\r\n]/);
  });

  test("for a terminal is never wider than 80 columns", () => {
    fc.assert(
      fc.property(randomDesign, (design) => {
        for (const line of built(design.statements("millimetres").join("\n")).text().split("\n"))
          expect(line.length).toBeLessThanOrEqual(80);
      }),
      { numRuns: 25 },
    );
  });

  test("in markdown keeps bars out of its cells", () => {
    const [table] = built(text)
      .markdown()
      .split("\n")
      .filter((line) => line.startsWith("| A"));
    expect(table?.split("|").length).toBe(
      built(text)
        .markdown()
        .split("\n")
        .find((line) => line.startsWith("| mark"))
        ?.split("|").length,
    );
  });
});

describe("where a number comes from", () => {
  test("is one line: the rule's formula with every input and its name", () => {
    const side = partOf(built(text), "box d-1", "front").length;
    expect(whyLine(side, reading)).toBe("14 1/2 (outside) − 2 × 23/32 (thickness)");
    expect(whyLine(inch("3/4"), reading)).toBe("written");
    const clearance = built(text).derivation.model.boxes[0]!.slides.clearance;
    expect(whyLine(clearance, reading)).toBe(
      "default, common practice: the thickness of an ordinary side-mounted slide",
    );
  });

  test("is a chain, down to what is written and the defaults, each value once", () => {
    const chain = whyChain("length", partOf(built(text), "box d-1", "front").length, reading);
    expect(chain.map(({ depth, name, size }) => `${" ".repeat(depth)}${name} ${size}`)).toEqual([
      "length 13 1/16",
      " outside 14 1/2",
      "  opening width 15 1/2",
      "  clearance 1/2",
      " thickness 23/32",
    ]);
    expect(whyChain("length", partOf(built(text), "box d-1", "front").length, reading, 0)).toHaveLength(1);
  });
});

describe("owners", () => {
  test("are said in few words", () => {
    expect(ownersText(["box a-1", "box a-2", "box a-3", "box a-5"])).toBe("box a-1 to a-3, a-5");
    expect(ownersText(["box a-1", "box a-2"])).toBe("box a-1, a-2");
    expect(ownersText(["box a", "front b", "box c", "box a"])).toBe("box a, c; front b");
    expect(ownersText([])).toBe("");
  });
});

describe("the language reference", () => {
  const document = readFileSync(new URL("../../../docs/language.md", import.meta.url), "utf8");

  test("in the docs is made from the tables that the program uses (npm run reference)", () => {
    expect(withSections(document)).toBe(document);
    for (const section of Object.values(referenceSections())) expect(document).toContain(section);
  });

  test("leaves a text without markers alone", () => {
    expect(withSections("no markers here")).toBe("no markers here");
    expect(withSections("<!-- /blocks --> <!-- blocks -->")).toBe("<!-- /blocks --> <!-- blocks -->");
  });
});
