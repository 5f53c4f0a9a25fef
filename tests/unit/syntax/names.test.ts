import { describe, expect, test } from "vitest";
import type { BlockWord } from "../../../language/core/vocabulary.ts";
import { propertiesOf, vocabulary } from "../../../language/core/vocabulary.ts";
import { lower } from "../../../language/syntax/lower.ts";
import { languageServices } from "../../../language/syntax/parser.ts";
import { followTable } from "../../../language/syntax/words.ts";
import { clean, codesOf, findingLines, testUri } from "../../support/lowered.ts";

const propertyWords = [
  ...new Set((Object.keys(vocabulary) as BlockWord[]).flatMap((block) => [...propertiesOf(block).keys()])),
].filter((word) => /^[a-z]+$/.test(word));
/** Every word of the grammar; each may be the name of something. */
const words = [...followTable(languageServices().Grammar).keys()].filter((word) => /^[a-z]+(-[a-z]+)*$/.test(word));
const kinds = ["sheet", "board", "edging", "slides", "hinges", "screws", "case", "opening", "part"];

describe("a word of the language as a name", () => {
  test.each(kinds)("%s gives its name to a block", (kind) => {
    for (const word of words) {
      const design = lower(`${kind} ${word} { }`, testUri);
      expect([word, findingLines(design)]).toEqual([word, []]);
      const blocks = [design.sheets, design.boards, design.edgings, design.slides, design.hinges, design.screws];
      const all = [...blocks, design.cases, design.openings, design.parts].flat();
      expect(all.map((block) => block.name.text)).toEqual([word]);
    }
  });

  test.each(propertyWords)("let %s = ... names a length, which can be reckoned with", (word) => {
    const design = clean(
      `let ${word} = 3/32\nlet twice = ${word} + ${word}\nopening left { wide 12 - ${word}  high (${word} * 9) }`,
    );
    expect(design.lets[0]?.name.text).toBe(word);
    expect(design.openings[0]?.wide?.values[0]?.measure.value).toMatchObject({
      kind: "binary",
      right: { kind: "name" },
    });
  });

  test.each(propertyWords)("opening %s: boxes, fronts and shelves go into it, alone or in a list", (word) => {
    const text = `opening ${word} { wide 12  high 6 }
      box for ${word} { slides runner }
      front for other, ${word} like ${word} { overlay 1/2 }
      front spanning ${word}, other { }
      shelf in ${word} { from ply }`;
    const design = clean(text);
    expect(design.boxes[0]?.openings.map((name) => name.text)).toEqual([word]);
    expect(design.fronts[0]?.openings.map((name) => name.text)).toEqual(["other", word]);
    expect(design.fronts[0]?.like?.text).toBe(word);
    expect(design.fronts[1]?.openings.map((name) => name.text)).toEqual([word, "other"]);
    expect(design.shelves[0]?.openings.map((name) => name.text)).toEqual([word]);
  });

  test.each(propertyWords)("an opening %s stands in a layout, with or without a share", (word) => {
    const design = clean(`case low { across { opening ${word} 6  partition  down rest { opening ${word} } } }`);
    expect(design.cases[0]?.layout[0]).toMatchObject({
      items: [{ name: { text: word }, share: { kind: "size" } }, {}, {}],
    });
  });

  test.each(["shelf", "front", "rail", "gap", "side", "quarter"])(
    "%s is read where only a name can be meant",
    (word) => {
      expect(clean(`opening left { wide ${word}.width  high left.${word} }`).openings).toHaveLength(1);
      const front = clean(`sheet ${word} { } front for a, b { slab ${word}  edging ${word} on left }`).fronts[0];
      expect([front?.slab?.stocks[0]?.text, front?.edging[0]?.stocks[0]?.text]).toEqual([word, word]);
      expect(clean(`offcut of ${word} 12 x 30`).offcuts[0]?.stock.text).toBe(word);
    },
  );

  test("a stock whose name is a word of the language, from another file, is still read behind a property", () => {
    expect(clean("door for left { panel quarter  slab quarter }").fronts[0]?.panel?.stocks[0]?.text).toBe("quarter");
  });
});

describe("the word screws at the end of a joint", () => {
  test.each(["joint pocket screws", "joint screws", "corners pocket screws", "corners screws"])(
    "%s begins no block of screws, whether what opens next stands beside it or below it",
    (joint) => {
      for (const gap of [" ", "\n"]) {
        for (const next of ["across", "down", "rear"]) {
          const text = `case low { ${joint}${gap}${next} { } wide 30 }\nsheet ply { measures 3/4 }`;
          const design = lower(text, testUri);
          const unread = design.findings.filter((finding) => finding.code === "syntax/unreadable");
          expect([text, unread]).toEqual([text, []]);
          expect([design.screws.length, design.cases[0]?.wide?.values.length]).toEqual([0, 1]);
        }
      }
    },
  );

  test("a block of screws below a joint that is half written is still one", () => {
    const design = lower("case low {\n  joint\n\nscrews pan { long 1 }", testUri);
    expect(design.screws.map((block) => block.name.text)).toEqual(["pan"]);
  });
});

describe("half-typed properties", () => {
  test("a word that waits for its name does not take the property of the next line for it", () => {
    const design = lower("box for left {\n  sides\n  bottom ply under\n  slides runner\n}", testUri);
    expect(findingLines(design)).toEqual([
      '3:3 syntax/unreadable: "bottom" was not expected here: a name is missing before it',
    ]);
    expect(design.boxes[0]?.bottom?.stocks[0]?.text).toBe("ply");
    expect(design.boxes[0]?.slides?.name.text).toBe("runner");
    expect(design.boxes[0]?.sides).toBeUndefined();
  });

  test.each(["sides", "front", "back", "bottom", "packing", "slides"])(
    "%s alone on its line leaves the rest of the box whole",
    (word) => {
      const rest = ["wide 12", "high 4", "deep 20", "holds 40 lb"];
      const design = lower(
        `box for left {\n  ${word}\n  ${rest.join("\n  ")}\n}\nopening left { wide 13  high 6 }`,
        testUri,
      );
      expect(design.findings).toHaveLength(1);
      expect(design.boxes[0]).toMatchObject({ wide: {}, high: {}, deep: {}, holds: {} });
      expect(design.openings).toHaveLength(1);
    },
  );

  test.each([
    "opening",
    "opening left",
    "box",
    "box for",
    "box for left",
    "front for a, b like",
    "sheet",
    "case",
    "shelf in",
    "cut",
  ])("%s above another block leaves that block whole", (half) => {
    for (const next of [
      "sheet ply { measures 3/4 }",
      "box for right { sides ply }",
      "opening right { wide 12  high 6 }",
    ]) {
      const design = lower(`inches\n${half}\n\n${next}\nboard oak { thick 3/4 }`, testUri);
      const { sheets, boxes, openings, boards } = design;
      expect([half, next, sheets.length + boxes.length + openings.length, boards.length]).toEqual([half, next, 1, 1]);
      expect(design.findings.map((finding) => finding.code)).toEqual(["syntax/unreadable"]);
    }
  });

  test("a size that is not there yet leaves the sizes beside it", () => {
    const [opening] = lower("opening left { wide   high 6   deep }", testUri).openings;
    expect([opening?.wide, opening?.high?.values.length, opening?.deep]).toEqual([undefined, 1, undefined]);
  });
});

describe("ranges of names", () => {
  test("count upwards, each name at the place of the range", () => {
    const names = clean("front for inks, plan-1 to plan-4, a9 to a11 { }").fronts[0]?.openings;
    expect(names?.map((name) => name.text)).toEqual([
      "inks",
      "plan-1",
      "plan-2",
      "plan-3",
      "plan-4",
      "a9",
      "a10",
      "a11",
    ]);
    expect(names?.[2]?.span).toMatchObject({ start: 16, end: 32 });
  });

  test.each(["a-2 to a-1", "a-1 to b-2", "a to c", "a-1 to a-900", "a-1 to a-99999999999"])("%s is none", (range) => {
    expect(codesOf(`front for ${range} { }`)).toEqual(["name/range"]);
  });
});
