import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { beforeAll, expect, test } from "vitest";
import type { SemanticTokens } from "vscode-languageserver-protocol";
import oniguruma from "vscode-oniguruma";
import textmate, { type IGrammar } from "vscode-textmate";
import { nameIndex } from "../../../language/edit/names.ts";
import { outlineOf } from "../../../language/edit/outline.ts";
import type { TypedToken } from "../../../language/edit/token-types.ts";
import { tokenTypes, typedTokens, wordClass } from "../../../language/edit/token-types.ts";
import { lower } from "../../../language/syntax/lower.ts";
import { buildFiles } from "../../support/build-files.ts";
import { testUri } from "../../support/lowered.ts";
import { bench } from "./cursors.ts";

const GRAMMAR = new URL("../../../extension/syntaxes/scantling.tmLanguage.json", import.meta.url);
let grammar: IGrammar;
let source: string;

beforeAll(async () => {
  source = await readFile(GRAMMAR, "utf8");
  const wasm = createRequire(import.meta.url).resolve("vscode-oniguruma/release/onig.wasm");
  await oniguruma.loadWASM(await readFile(wasm));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (patterns) => new oniguruma.OnigScanner(patterns),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(source, "scantling.json"),
  });
  grammar = (await registry.loadGrammar("source.scantling"))!;
});

function typed(text: string): readonly TypedToken[] {
  return typedTokens(outlineOf(text), nameIndex([lower(text, testUri)]).all);
}

/** What the editor's own grammar must call each kind of word. */
const scopes: Readonly<Record<TypedToken["type"], RegExp>> = {
  keyword: /^keyword\.control/,
  property: /^keyword\.other\.property/,
  enumMember: /^constant\.language/,
  unit: /^keyword\.other\.unit/,
  type: /^entity\.name\.type/,
  variable: /^(variable\.other|entity\.name\.variable|constant\.other\.code)/,
  number: /^constant\.numeric/,
  string: /^(string\.quoted|punctuation\.definition\.string)/,
  comment: /^(comment|punctuation\.definition\.comment)/,
  operator: /^keyword\.operator/,
};

test("a word has the class that the grammar of colours gives it", () => {
  const words = (comment: string): readonly string[] => {
    const { patterns } = (
      JSON.parse(source) as { repository: { words: { patterns: { comment?: string; match: string }[] } } }
    ).repository.words;
    const match = patterns.find((each) => each.comment?.startsWith(comment))!.match;
    return /\(\?:([a-z|-]+)\)/.exec(match)![1]!.split("|");
  };
  const wrong = (comment: string, wanted: string): readonly string[] =>
    words(comment).filter((word) => wordClass(word) !== wanted);
  expect(wrong("what begins", "keyword")).toEqual([]);
  expect(wrong("properties", "property")).toEqual([]);
  expect(wrong("choices", "enumMember")).toEqual([]);
});

test("over every example and starting point the two agree, but where one line at a time cannot tell", () => {
  const differ: string[] = [];
  const spelledAlike: string[] = [];
  let count = 0;
  for (const { name, text } of buildFiles().filter((file) => /^(examples|extension)\//.test(file.name))) {
    const lines = text.split("\n");
    let stack = textmate.INITIAL;
    const coloured = lines.map((line) => {
      const { tokens, ruleStack } = grammar.tokenizeLine(line, stack);
      stack = ruleStack;
      return tokens;
    });
    for (const token of typed(text)) {
      count++;
      const found = coloured[token.line]!.find(
        (each) => each.startIndex <= token.column && token.column < each.endIndex,
      );
      const scope = found?.scopes.at(-1) ?? "";
      const piece = lines[token.line]!.slice(token.column, token.column + token.length);
      // `hinges cup` uses a name that is spelled as a word of the language: that takes the whole text to see.
      if (token.type === "variable" && scope.startsWith("keyword.other.property")) spelledAlike.push(piece);
      else if (!scopes[token.type].test(scope))
        differ.push(`${name}:${token.line + 1} ${piece}: ${token.type}, ${scope}`);
    }
  }
  expect(count).toBeGreaterThan(1000);
  expect(differ).toEqual([]);
  expect(new Set(spelledAlike)).toEqual(new Set(["cup", "lap", "top"]));
});

test("a word of the language that is a name here is told apart, and where a name is given", async () => {
  const shop = await bench(
    "let gap = 3/32\nsheet ply { called 3/4 }\nopening shelf { wide gap  high 4 mm }\n/* two\nlines */ box for shelf { sides ply }\n",
  );
  const { data } = await shop.askFile<SemanticTokens>("textDocument/semanticTokens/full");
  const lines = shop.text.split("\n");
  let [line, column] = [0, 0];
  const said: string[] = [];
  for (let at = 0; at < data.length; at += 5) {
    const [down, right, length, type, modifiers] = data.slice(at, at + 5) as [number, number, number, number, number];
    line += down;
    column = down === 0 ? column + right : right;
    said.push(`${lines[line]!.slice(column, column + length)}:${tokenTypes[type]}${modifiers === 1 ? "!" : ""}`);
  }
  expect(said).toEqual([
    ...["let:keyword", "gap:variable!", "=:operator", "3/32:number"],
    ...["sheet:keyword", "ply:type!", "called:property", "3/4:number"],
    ...["opening:keyword", "shelf:type!", "wide:property", "gap:variable", "high:property", "4:number", "mm:unit"],
    ...[
      "/* two:comment",
      "lines */:comment",
      "box:keyword",
      "for:keyword",
      "shelf:variable",
      "sides:property",
      "ply:variable",
    ],
  ]);
});

test("some lines alone, their first token placed from the beginning of the file", async () => {
  const shop = await bench("let gap = 3/32\nsheet ply { called 3/4 }\nlet two = 2\n");
  const all = await shop.askFile<SemanticTokens>("textDocument/semanticTokens/full");
  const range = { start: { line: 1, character: 0 }, end: { line: 1, character: 5 } };
  const { data } = await shop.askFile<SemanticTokens>("textDocument/semanticTokens/range", { range });
  // `let gap = 3/32` are four; the line below has four as well.
  expect(data).toEqual(all.data.slice(20, 40));
});
