import { describe, expect, test } from "vitest";
import type { BlockWord } from "../../../language/core/vocabulary.ts";
import { belongsIn, propertiesOf, vocabulary } from "../../../language/core/vocabulary.ts";
import { lower } from "../../../language/syntax/lower.ts";
import { expanded } from "../../support/forms.ts";
import { clean, codesOf, gist, testUri } from "../../support/lowered.ts";

const blocks = Object.keys(vocabulary) as BlockWord[];

/** A block of each kind round a property. */
const around: Record<BlockWord, (property: string) => string> = {
  sheet: (p) => `sheet thing { ${p} }`,
  board: (p) => `board thing { ${p} }`,
  edging: (p) => `edging thing { ${p} }`,
  slides: (p) => `slides thing { ${p} }`,
  hinges: (p) => `hinges thing { ${p} }`,
  screws: (p) => `screws thing { ${p} }`,
  saw: (p) => `saw { ${p} }`,
  grooves: (p) => `grooves { ${p} }`,
  pockets: (p) => `pockets { ${p} }`,
  place: (p) => `place { ${p} }`,
  times: (p) => `times { ${p} }`,
  case: (p) => `case thing { ${p} }`,
  rear: (p) => `case thing { rear { ${p} } }`,
  "face frame": (p) => `case thing { frame oak { ${p} } }`,
  opening: (p) => `opening thing { ${p} }`,
  box: (p) => `box for thing { ${p} }`,
  front: (p) => `front for thing { ${p} }`,
  door: (p) => `door for thing { ${p} }`,
  shelf: (p) => `shelf in thing { ${p} }`,
  part: (p) => `part thing { ${p} }`,
};

const properties = blocks.flatMap((block) => [...propertiesOf(block)].map(([key, { form }]) => ({ block, key, form })));

describe.each(properties)("$block: $form", ({ block, key, form }) => {
  test("is read in every shape of its form, and nothing of it is lost", () => {
    const empty = gist(clean(around[block]("")));
    // Dividers run along unless it is said otherwise: saying so is no difference.
    const texts = expanded(form).filter((text) => !text.includes(" along"));
    const gists = texts.map((text) => gist(clean(around[block](text))));
    for (const one of gists) expect(one).not.toBe(empty);
    // What differs in the text differs in the design.
    expect(new Set(gists).size).toBe(texts.length);
  });

  test("is a finding on its word in every other block", () => {
    const text = expanded(form)[0]!;
    for (const other of blocks.filter((one) => !belongsIn(key).includes(one))) {
      const { findings } = lower(around[other](text), testUri);
      expect([other, findings.map(({ code }) => code)]).toEqual([other, ["statement/not-here"]]);
      expect(findings[0]!.span.end - findings[0]!.span.start).toBe(key.length);
      expect(findings[0]!.message).toContain(`"${key}"`);
    }
  });
});

describe("the words of the table and of the grammar", () => {
  test("a layout stands in a case, in its frame and on its rear, and is a finding elsewhere", () => {
    const layouts = ["across { opening a }", "down 3 { }", "rail", "stile 2", "opening a", "openings a-1 to a-3 equal"];
    for (const block of blocks) {
      const home = ["case", "rear", "face frame"].includes(block);
      for (const layout of layouts) {
        const found = codesOf(around[block](layout));
        // `rail` and such are the beginning of nothing else in any block.
        expect([block, layout, found]).toEqual([block, layout, home ? [] : ["statement/not-here"]]);
      }
    }
  });

  test("what a door says of its frame and what a case says of its own are told apart", () => {
    expect(codesOf("door for thing { frame oak { stiles 2 } }")).toEqual(["statement/not-here"]);
    expect(codesOf("case thing { frame oak 2 wide }")).toEqual(["statement/not-here"]);
  });

  test("a word with an s too few or too many is taken for the one that the block has", () => {
    const offered = (text: string) => lower(text, testUri).findings[0]?.fixes.map(({ title }) => title);
    expect(offered("box for thing { corner left other }")).toEqual(["Write corners"]);
    expect(offered("sheet thing { sides ply }")).toEqual([]);
  });

  test("an opening of a layout has its width and height from there", () => {
    expect(codesOf("case thing { across { opening a 3 { deep 4 } } }")).toEqual([]);
    expect(codesOf("case thing { across { opening a 3 { wide 4 } } }")).toEqual(["statement/not-here"]);
  });
});
