import type { Position } from "vscode-languageserver-protocol";
import type { Random } from "./random.ts";

/** A request of the editor, with what it is sent along. */
export interface Asked {
  readonly method: string;
  readonly params: object;
}

interface Where {
  readonly uri: string;
  readonly random: Random;
  readonly position: Position;
  readonly range: { readonly start: Position; readonly end: Position };
}

type Make = (where: Where) => readonly Asked[];

const atPlace =
  (method: string): Make =>
  ({ uri, position }) => [{ method, params: { textDocument: { uri }, position } }];
const ofFile =
  (method: string): Make =>
  ({ uri }) => [{ method, params: { textDocument: { uri } } }];
const own =
  (method: string, more: object = {}): Make =>
  ({ uri }) => [{ method, params: { uri, ...more } }];

const options = { tabSize: 2, insertSpaces: true };

/** The requests behind each ability that a server may say it has; one that is missing here is not tried by any test. */
export const byAbility: ReadonlyMap<string, Make> = new Map<string, Make>([
  ["hoverProvider", atPlace("textDocument/hover")],
  ["definitionProvider", atPlace("textDocument/definition")],
  ["declarationProvider", atPlace("textDocument/declaration")],
  ["implementationProvider", atPlace("textDocument/implementation")],
  ["typeDefinitionProvider", atPlace("textDocument/typeDefinition")],
  ["documentHighlightProvider", atPlace("textDocument/documentHighlight")],
  ["completionProvider", atPlace("textDocument/completion")],
  ["signatureHelpProvider", atPlace("textDocument/signatureHelp")],
  ["linkedEditingRangeProvider", atPlace("textDocument/linkedEditingRange")],
  ["documentSymbolProvider", ofFile("textDocument/documentSymbol")],
  ["codeLensProvider", ofFile("textDocument/codeLens")],
  ["documentLinkProvider", ofFile("textDocument/documentLink")],
  ["foldingRangeProvider", ofFile("textDocument/foldingRange")],
  ["semanticTokensProvider", ofFile("textDocument/semanticTokens/full")],
  [
    "workspaceSymbolProvider",
    ({ random }) => [{ method: "workspace/symbol", params: { query: random.pick(queries) } }],
  ],
  [
    "inlayHintProvider",
    ({ uri, range }) => [{ method: "textDocument/inlayHint", params: { textDocument: { uri }, range } }],
  ],
  [
    "selectionRangeProvider",
    ({ uri, position, range }) => [
      { method: "textDocument/selectionRange", params: { textDocument: { uri }, positions: [position, range.end] } },
    ],
  ],
  [
    "referencesProvider",
    ({ uri, position, random }) => [
      {
        method: "textDocument/references",
        params: { textDocument: { uri }, position, context: { includeDeclaration: random.oneIn(2) } },
      },
    ],
  ],
  [
    "renameProvider",
    ({ uri, position, random }) => [
      { method: "textDocument/prepareRename", params: { textDocument: { uri }, position } },
      { method: "textDocument/rename", params: { textDocument: { uri }, position, newName: random.pick(queries) } },
    ],
  ],
  [
    "codeActionProvider",
    ({ uri, range }) => [
      { method: "textDocument/codeAction", params: { textDocument: { uri }, range, context: { diagnostics: [] } } },
    ],
  ],
  [
    "documentFormattingProvider",
    ({ uri }) => [{ method: "textDocument/formatting", params: { textDocument: { uri }, options } }],
  ],
  [
    "documentRangeFormattingProvider",
    ({ uri, range }) => [
      { method: "textDocument/rangeFormatting", params: { textDocument: { uri }, range, options } },
      { method: "textDocument/rangesFormatting", params: { textDocument: { uri }, ranges: [range, range], options } },
    ],
  ],
  [
    "documentOnTypeFormattingProvider",
    ({ uri, position, random }) => [
      {
        method: "textDocument/onTypeFormatting",
        params: { textDocument: { uri }, position, ch: random.pick(["}", "\n"]), options },
      },
    ],
  ],
]);

const queries = ["", "a", "ply", "box", "new-name", "13", "__proto__", 'x"', "é", "a b", "slides"];

/** The requests of the program's own that any text can be asked about. */
export const ownRequests: ReadonlyMap<string, Make> = new Map<string, Make>([
  ["scantling/rod", own("scantling/rod")],
  ["scantling/cutList", own("scantling/cutList")],
  ["scantling/list", own("scantling/list")],
  ["scantling/drawings", own("scantling/drawings")],
  ["scantling/plan", own("scantling/plan", { seconds: 0, keepBest: true })],
]);

/** A place in a text, its very ends and places that are not in it among them. */
export function placeIn(random: Random, text: string): Position {
  if (random.oneIn(12)) return random.pick([...oddPlaces]);
  const before = text.slice(0, random.below(text.length + 1)).split("\n");
  return { line: before.length - 1, character: before.at(-1)!.length };
}

const oddPlaces: readonly Position[] = [
  { line: 0, character: 0 },
  { line: 1_000_000, character: 0 },
  { line: 0, character: 1_000_000 },
  { line: 2 ** 31 - 1, character: 2 ** 31 - 1 },
];
