import { describe, expect, test } from "vitest";
import type { BlockWord } from "../../../language/core/vocabulary.ts";
import { article, belongsIn, propertiesOf, vocabulary } from "../../../language/core/vocabulary.ts";

const blocks = Object.keys(vocabulary) as BlockWord[];

describe.each(blocks)("%s", (block) => {
  test("each property's form begins with its word, and says what it means", () => {
    for (const [key, property] of propertiesOf(block)) {
      expect(property.form.split(" ")[0]).toBe(key);
      expect(property.means).toMatch(/^[^.]+[^. ]$/);
      expect(belongsIn(key)).toContain(block);
    }
  });

  test("its form begins with a word of the language", () => {
    expect(vocabulary[block].form).toMatch(/^[a-z]+ .*\{ \.\.\. \}$/);
    expect(vocabulary[block].gives).not.toBe("");
  });
});

test("the article goes by the sound of the word", () => {
  expect([article("opening"), article("box"), article("edging")]).toEqual(["An opening", "A box", "An edging"]);
});

test("a word that is no property belongs nowhere, not even one that every object has", () => {
  expect(belongsIn("toString")).toEqual([]);
  expect(propertiesOf("box").has("constructor")).toBe(false);
});
