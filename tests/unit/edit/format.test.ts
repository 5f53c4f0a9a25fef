import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatEdits } from "../../../language/edit/format.ts";
import { edited } from "../../../language/edit/places.ts";
import { lower } from "../../../language/syntax/lower.ts";
import { textTokens } from "../../../language/syntax/text-tokens.ts";
import { buildFiles } from "../../support/build-files.ts";
import { gist, testUri } from "../../support/lowered.ts";

const format = (text: string, indent = "  "): string => edited(text, formatEdits(testUri, text, { indent }));

const comments = (text: string): readonly string[] =>
  textTokens(text).flatMap(({ kind, text: comment }) => (kind === "comment" ? [comment.replace(/[ \t]+$/gm, "")] : []));

/** A design; the texts that are kept of it may have other blanks: `13  3/4` and `13 3/4` say the same. */
const meaning = (text: string): string =>
  gist(lower(text, testUri)).replace(/"text":"[^"]*"/g, (said) => said.replace(/(\s|\\[tnr])+/g, " "));

describe("over every example, starting point and fixture", () => {
  test.each(buildFiles().map(({ name, text }) => [name, text]))(
    "%s: the same design, comments kept, done once",
    (_, text) => {
      const once = format(text);
      expect(format(once)).toBe(once);
      expect(meaning(once)).toBe(meaning(text));
      expect(comments(once)).toEqual(comments(text));
      expect(format(text, "\t").replaceAll("\t", "  ").length).toBeGreaterThan(0);
    },
  );

  test("the examples stand as a maker would leave them", () => {
    const examples = buildFiles().filter(({ name }) => /^(examples|extension)\//.test(name));
    for (const { name, text } of examples) expect([name, format(text)]).toEqual([name, `${text.trimEnd()}\n`]);
  });
});

describe("whatever stands between the words", () => {
  const blanks = fc.constantFrom("", " ", "  ", "    ", "\t", "\n", "\n\n\n", "\r\n", " // why\n", "       ");
  const texts = buildFiles().filter(({ name }) => name.startsWith("examples/"));

  test("blanks put in, taken out and doubled at random: the same words, comments kept, done once", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...texts),
        fc.infiniteStream(fc.tuple(fc.integer({ min: 0, max: 9 }), blanks)),
        ({ text }, stream) => {
          const mangled = text.replace(/[ \t\n]+/g, (gap) => {
            const [often, other] = stream.next().value as [number, string];
            return often < 2 ? other : gap;
          });
          const once = format(mangled);
          expect(format(once)).toBe(once);
          expect(meaning(once)).toBe(meaning(mangled));
          expect(comments(once)).toEqual(comments(mangled));
        },
      ),
      { numRuns: 60 },
    );
  });

  test("half a text is put in order too, or left alone", () => {
    for (const { text } of texts) {
      for (let end = 1; end < text.length; end += 41) {
        const half = text.slice(0, end);
        expect(format(format(half))).toBe(format(half));
        expect(format(half).replace(/\s/g, "")).toBe(half.replace(/\s/g, ""));
      }
    }
  });
});

describe("by hand", () => {
  test.each([
    [
      "a block is indented by its brackets",
      "case a {\nwide 20\n      frame ash {\nstiles 2\n}\n  }\n",
      "case a {\n  wide 20\n  frame ash {\n    stiles 2\n  }\n}\n",
    ],
    [
      "brackets, commas and signs have their blanks",
      "saw{kerf 1/8}\nlet a=( 3/4+ 1/8 )\npart b { thick 1 ,2 }",
      "saw { kerf 1/8 }\nlet a = (3/4+ 1/8)\npart b { thick 1, 2 }\n",
    ],
    [
      "two blanks at least between properties, three at most",
      "box for a { sides ply bottom ply under         holds 4 lb }\n",
      "box for a { sides ply  bottom ply under   holds 4 lb }\n",
    ],
    [
      "what hugs its number is a tolerance and stays one",
      "slides a { clearance 1/2   +1/32 -0 }\n",
      "slides a { clearance 1/2 +1/32 -0 }\n",
    ],
    [
      "columns stay columns",
      "sheet a {\n called   3/4\n measures 45/64\n}\n",
      "sheet a {\n  called   3/4\n  measures 45/64\n}\n",
    ],
    [
      "names in one column",
      "screws wide-headed { gauge #8  long 1 }\nscrews pan  { gauge #8  long 1 }\n",
      "screws wide-headed { gauge #8  long 1 }\nscrews pan { gauge #8  long 1 }\n",
    ],
    [
      "a column is kept when lines move",
      "  saw     { kerf 1/8 }\n  grooves { wide 1/4 }\n",
      "saw     { kerf 1/8 }\ngrooves { wide 1/4 }\n",
    ],
    [
      "comments in one column",
      "inches      // a\nread to 1/32  // b\nsaw { kerf 1/8 }  // c\nsaw { kerf 1/8 }  // d\n",
      "inches      // a\nread to 1/32  // b\nsaw { kerf 1/8 }  // c\nsaw { kerf 1/8 }  // d\n",
    ],
    ["blank lines: one at most, none at the ends", "\n\ninches\n\n\n\nsaw { }\n\n\n", "inches\n\nsaw { }\n"],
    ["what goes on is indented", "sheet a { measures 1/2,\n1/4 }\n", "sheet a { measures 1/2,\n    1/4 }\n"],
    ["carriage returns stay", "inches\r\nsaw{ kerf 1/8 }", "inches\r\nsaw { kerf 1/8 }\r\n"],
    ["a comment of several lines stays as it is", "/* a\n     b\n*/\n  inches\n", "/* a\n     b\n*/\ninches\n"],
    ["nothing of nothing", "   \n\n", "   \n\n"],
  ])("%s", (_, text, wanted) => {
    expect(format(text)).toBe(wanted);
    expect(format(wanted)).toBe(wanted);
  });
});
