import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { AstNode } from "langium";
import { expect, test } from "vitest";
import type { OutlineItem } from "../../../language/edit/outline.ts";
import { outlineOf } from "../../../language/edit/outline.ts";
import { bareParse } from "../../support/bare-parse.ts";
import { buildFiles } from "../../support/build-files.ts";

/** Where the parser sees statements, properties and items of a layout begin. */
function parsedStarts(text: string): readonly number[] {
  const starts: number[] = [];
  const visit = (node: AstNode): void => {
    for (const holder of ["statements", "properties", "entries", "items"]) {
      for (const child of (node as unknown as Record<string, AstNode[] | undefined>)[holder] ?? []) {
        starts.push(child.$cstNode!.offset);
        visit(child);
      }
    }
  };
  visit(bareParse(text).tree);
  return starts.sort((a, b) => a - b);
}

function outlinedStarts(text: string): readonly number[] {
  const { tokens, items } = outlineOf(text);
  const all = (list: readonly OutlineItem[]): readonly number[] =>
    list.flatMap((item) => [tokens[item.key]!.start, ...all(item.block?.items ?? [])]);
  return all(items);
}

test("the outline, which knows no grammar, begins each property where the parser does", () => {
  const whole = buildFiles().filter(({ text }) => bareParse(text).errors === 0);
  expect(whole.length).toBeGreaterThan(100);
  for (const { name, text } of whole) {
    // Properties in the wrong block are the parser's; to the outline they are words that go on.
    const misplaced = /statement\//.test(name);
    if (!misplaced) expect([name, outlinedStarts(text)]).toEqual([name, parsedStarts(text)]);
  }
});

test("half a text is divided as far as it goes", () => {
  const text = "case a {\n  wide 20\n  frame ash {\n    stiles 2\nbox for b { sides ply\n";
  const { tokens, items } = outlineOf(text);
  const [first, second] = items;
  expect(items.map(({ key }) => tokens[key]!.text)).toEqual(["case", "box"]);
  expect(first?.block?.closed).toBe(false);
  expect(first?.block?.items.map(({ key }) => tokens[key]!.text)).toEqual(["wide", "frame"]);
  expect(first?.block?.items[1]?.block?.word).toBe("face frame");
  expect(second?.block?.items.map(({ key }) => tokens[key]!.text)).toEqual(["sides"]);
});

test("comments and what cannot be read are among the tokens, so that nothing is ever lost", () => {
  const folder = fileURLToPath(new URL("../../../examples/", import.meta.url));
  for (const name of readdirSync(folder).filter((each) => each.endsWith(".scant"))) {
    const text = `${readFileSync(join(folder, name), "utf8")}\n~~ ?? /* open`;
    const { tokens } = outlineOf(text);
    const kept = tokens.map((token) => token.text).join("");
    expect(kept.replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
  }
});
