import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { beforeAll, describe, expect, test } from "vitest";
import oniguruma from "vscode-oniguruma";
import textmate, { type IGrammar } from "vscode-textmate";

const GRAMMAR = new URL("../../extension/syntaxes/scantling.tmLanguage.json", import.meta.url);
const LANGUAGE = new URL("../../language/grammar/scantling.langium", import.meta.url);

let grammar: IGrammar;

beforeAll(async () => {
  const wasm = createRequire(import.meta.url).resolve("vscode-oniguruma/release/onig.wasm");
  await oniguruma.loadWASM(await readFile(wasm));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(await readFile(GRAMMAR, "utf8"), "scantling.json"),
  });
  const loaded = await registry.loadGrammar("source.scantling");
  if (loaded === null) throw new Error("The TextMate grammar did not load.");
  grammar = loaded;
});

/** The innermost scope of each piece of the text, without the language's own ending. */
function scopes(text: string): readonly (readonly [string, string])[] {
  let stack = textmate.INITIAL;
  const found: [string, string][] = [];
  for (const line of text.split("\n")) {
    const { tokens, ruleStack } = grammar.tokenizeLine(line, stack);
    stack = ruleStack;
    for (const token of tokens) {
      const piece = line.slice(token.startIndex, token.endIndex);
      const scope = token.scopes.at(-1)?.replace(/\.scantling$/, "") ?? "";
      if (piece.trim() !== "") found.push([piece, scope]);
    }
  }
  return found;
}

function scopeOf(text: string, piece: string): string | undefined {
  return scopes(text).find(([each]) => each === piece)?.[1];
}

describe("every word of the language has a colour", () => {
  test("as it is read off the grammar the parser is made from", async () => {
    const text = await readFile(LANGUAGE, "utf8");
    const rules = text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/^(hidden )?terminal .*$/gm, "");
    const words = new Set([...rules.matchAll(/'([A-Za-z][A-Za-z-]*)'/g)].map((match) => match[1] ?? ""));
    expect(words.size).toBeGreaterThan(150);
    const plain = [...words].filter((word) => scopeOf(word, word)?.startsWith("variable") !== false);
    expect(plain).toEqual([]);
  });

  test("and a word that is not one has the colour of a name", () => {
    expect(scopeOf("wibble", "wibble")).toBe("variable.other");
  });
});

describe("lengths", () => {
  test.each([
    ["13 3/4", ["13 3/4"]],
    ["13-3/4", ["13-3/4"]],
    ["13¾", ["13¾"]],
    [".5", [".5"]],
    ["0.709", ["0.709"]],
    ["1/2", ["1/2"]],
  ])("%s is one number", (text, pieces) => {
    expect(scopes(text)).toEqual(pieces.map((piece) => [piece, "constant.numeric"]));
  });

  test.each([
    ['13 3/4"', "13 3/4", '"'],
    ["18mm", "18", "mm"],
    ["2.4 m", "2.4", "m"],
    ["1 ft", "1", "ft"],
    ["8%", "8", "%"],
  ])("%s is a number and its unit", (text, count, unit) => {
    const inner = scopes(text).map(([piece, scope]) => [piece.trim(), scope]);
    expect(inner).toContainEqual([count, "constant.numeric"]);
    expect(inner).toContainEqual([unit, "keyword.other.unit"]);
  });

  test("an inch mark does not open a string", () => {
    expect(scopeOf('wide 13 3/4" high 4', "high")).toBe("keyword.other.property");
  });

  test("48x96 is a number, the sign and a number", () => {
    expect(scopes("48x96").map(([, scope]) => scope)).toEqual([
      "constant.numeric",
      "keyword.operator.by",
      "constant.numeric",
    ]);
  });
});

describe("names", () => {
  test("a name that is declared stands out, also when it is a word of the trade", () => {
    expect(scopeOf("sheet birch-18 {", "birch-18")).toBe("entity.name.type");
    expect(scopeOf("let gap = 3/32", "gap")).toBe("entity.name.variable");
    expect(scopeOf("opening shelf 6", "shelf")).toBe("entity.name.type");
    expect(scopeOf("openings plan-1 to plan-4 equal", "plan-4")).toBe("entity.name.type");
  });

  test("a name that is used does not look declared", () => {
    expect(scopeOf("slides runner 20", "runner")).toBe("variable.other");
    expect(scopeOf("slides runner {", "runner")).toBe("entity.name.type");
    expect(scopeOf("box for inks like plan-1 {", "plan-1")).toBe("variable.other");
  });

  test("a name that begins or ends as a word of the language is one name", () => {
    for (const name of ["full-overlay-2", "front-left", "side_1", "thick2", "on-site"]) {
      expect(scopes(name)).toEqual([[name, "variable.other"]]);
    }
    expect(scopes("tools.width").map(([piece]) => piece)).toEqual(["tools", ".width"]);
  });
});

describe("comments and strings", () => {
  test("hold everything in them", () => {
    expect(scopeOf("// box for inks", " box for inks")).toBe("comment.line.double-slash");
    expect(scopes("/* box\nfor */wide").map(([, scope]) => scope.split(".")[0])).not.toContain("variable");
    expect(scopes("/* box\nfor */wide").at(-1)).toEqual(["wide", "keyword.other.property"]);
    expect(scopeOf('project "Print room 12"', "Print room 12")).toBe("string.quoted.double");
  });

  test("an unclosed string ends with its line", () => {
    expect(scopes('project "Print\ninches').at(-1)).toEqual(["inches", "keyword.control"]);
  });
});
