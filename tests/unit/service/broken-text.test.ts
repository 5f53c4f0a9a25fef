import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { toText } from "../../../language/core/rational.ts";
import type { Build } from "../../../language/service.ts";
import { createWorkspace } from "../../../language/service.ts";
import { languageServices } from "../../../language/syntax/parser.ts";
import { fixtureFiles } from "../../support/carets.ts";

const examples = fileURLToPath(new URL("../../../examples/", import.meta.url));
const fixtures = fileURLToPath(new URL("../../fixtures/findings/", import.meta.url));
const others = new Map(
  [
    ...readdirSync(examples)
      .filter((name) => name.endsWith(".scant"))
      .map((name) => [name, `${examples}${name}`] as const),
    ["shop.scant", `${fixtures}shop.scant`] as const,
  ].map(([name, path]) => [name, readFileSync(path, "utf8")]),
);
const uri = "file:///job/broken.scant";

/** Builds a text with the examples beside it, and asks for every view of it. */
function everything(text: string): Build {
  const workspace = createWorkspace({ root: "file:///job" });
  for (const [name, other] of others) workspace.set(`file:///job/${name}`, other);
  workspace.set(uri, text);
  const build = workspace.build(uri);
  // The views must stand whatever the text; none of them may be the one that throws.
  for (const view of [build.list(), build.rod(), build.csv(), build.markdown(), build.text(), build.left().text()])
    expect(view).toBeDefined();
  return build;
}

interface Place {
  readonly start: number;
  readonly end: number;
}

function tokensOf(text: string): readonly Place[] {
  return languageServices()
    .parser.Lexer.tokenize(text)
    .tokens.map(({ startOffset, image }) => ({ start: startOffset, end: startOffset + image.length }));
}

function without(text: string, { start, end }: Place): string {
  return text.slice(0, start) + text.slice(end);
}

/** Every part by its owner, sizes exact. */
function pieces(build: Build): ReadonlyMap<string, string> {
  const table = new Map<string, string>();
  for (const part of build.derivation.model.parts) {
    // A mount in the middle is cut for the boxes on both of its sides.
    if (part.name.endsWith("mount")) continue;
    const sizes = [part.length, part.width, part.thickness].map((size) => toText(size.value)).join(" x ");
    table.set(part.of, `${table.get(part.of) ?? ""}${part.quantity} ${part.name} ${part.stock} ${sizes}\n`);
  }
  return table;
}

const names = [...others.keys()].filter((name) => name !== "shop.scant" && name !== "rack.scant");

describe.each(names)("%s", (name) => {
  const text = others.get(name)!;
  const whole = everything(text);

  test("is whole, and its rod has rows", () => {
    expect(whole.whole).toBe(true);
    expect(whole.rod().batches.length).toBeGreaterThan(0);
  });

  const long = { timeout: 120_000 };
  test("with any one token deleted: nothing throws, what hangs on nothing that broke stays as it is", long, () => {
    const { boxes, fronts, shelves, parts } = whole.derivation.context.design;
    const blocks = [...boxes, ...fronts, ...shelves, ...parts];
    const before = pieces(whole);
    for (const token of tokensOf(text)) {
      const build = everything(without(text, token));
      if (build.derivation.model.parts.length !== 0) expect(build.rod().batches.length).toBeGreaterThan(0);
      const home = blocks.find(({ span }) => span.start <= token.start && token.end <= span.end);
      // A block that others are like takes them with it when it breaks.
      const names = home === undefined || !("openings" in home) ? [] : home.openings.map((word) => word.text);
      const leads = blocks.some(
        (block) => "like" in block && block.like !== undefined && names.includes(block.like.text),
      );
      if (home === undefined || leads) continue;
      const own = new Set(
        whole.derivation.model.parts
          .filter((part) => home.span.start <= part.source.start && part.source.end <= home.span.end)
          .map((part) => part.of),
      );
      for (const name of names) for (const kind of ["box", "front", "door", "shelf"]) own.add(`${kind} ${name}`);
      const after = pieces(build);
      for (const [owner, rows] of before) {
        if (!own.has(owner))
          expect([text.slice(token.start, token.end), token.start, owner, after.get(owner)]).toEqual([
            text.slice(token.start, token.end),
            token.start,
            owner,
            rows,
          ]);
      }
    }
  });

  test("cut off at any line, and at every seventh character, it gives all that was said before", long, () => {
    let most = 0;
    for (let end = 0; end <= text.length; end++) {
      if (end % 7 !== 0 && text[end] !== "\n") continue;
      const build = everything(text.slice(0, end));
      most = Math.max(most, build.derivation.model.parts.length);
    }
    expect(most).toBe(whole.derivation.model.parts.length);
  });

  test("with its beginning cut off, nothing throws", () => {
    for (let start = 0; start <= text.length; start += 101) everything(text.slice(start));
  });
});

describe("fixtures", () => {
  test("with tokens deleted, and cut off anywhere, nothing throws", { timeout: 120_000 }, () => {
    for (const { text } of fixtureFiles(fixtures)) {
      tokensOf(text).forEach((token, index) => {
        if (index % 5 === text.length % 5) everything(without(text, token));
      });
      for (let end = 0; end < text.length; end += 37) everything(text.slice(0, end));
    }
  });
});
