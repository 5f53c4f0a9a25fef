import { beginsStatement } from "./close-blocks.ts";
import { longestFile } from "./lower.ts";
import { languageServices } from "./parser.ts";
import type { Token } from "./tokens.ts";
import { WordLexer } from "./words.ts";

/** What a piece of text is, as far as one can say without reading what stands round it. `other` is what no word can be. */
export type TokenKind =
  | "word"
  | "name"
  | "number"
  | "gauge"
  | "text"
  | "unit"
  | "sign"
  | "open"
  | "close"
  | "comment"
  | "other";

/** A piece of a build file with its place: offsets from the start, zero-based lines and columns. */
export interface TextToken {
  readonly kind: TokenKind;
  readonly text: string;
  readonly start: number;
  readonly end: number;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  /** Whether a statement begins here that never stands inside a block. */
  readonly begins: boolean;
}

/** All of a text but the blanks, in order: comments and what cannot be read too. Nothing of a text that is too long to be read. */
export function textTokens(text: string): readonly TextToken[] {
  if (longestFile < text.length) return [];
  const { Lexer } = languageServices().parser;
  if (!(Lexer instanceof WordLexer)) return [];
  const { tokens, hidden } = Lexer.words(text);
  const place = placing(text);
  const made: TextToken[] = [];
  tokens.forEach((token, index) => {
    const kind = kindOf(token, tokens[index - 1]);
    made.push(place(kind, token.startOffset, token.image.length, beginsStatement(tokens, index)));
  });
  for (const token of hidden)
    if (token.image.startsWith("/")) made.push(place("comment", token.startOffset, token.image.length));
  made.sort((a, b) => a.start - b.start);
  return withOthers(text, made, place);
}

type Place = (kind: TokenKind, start: number, length: number, begins?: boolean) => TextToken;

/** Made for texts read from their start on: the line of each place is looked for from that of the one before. */
function placing(text: string): Place {
  const starts = [0];
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 10 || (code === 13 && text.charCodeAt(at + 1) !== 10)) starts.push(at + 1);
  }
  let near = 0;
  const lineOf = (offset: number): number => {
    while (0 < near && offset < starts[near]!) near--;
    while (near + 1 < starts.length && starts[near + 1]! <= offset) near++;
    return near;
  };
  return (kind, start, length, begins = false) => {
    const end = start + length;
    const line = lineOf(start);
    const endLine = lineOf(end);
    const column = start - starts[line]!;
    return {
      kind,
      text: text.slice(start, end),
      start,
      end,
      line,
      column,
      endLine,
      endColumn: end - starts[endLine]!,
      begins,
    };
  };
}

function kindOf({ image, tokenType }: Token, before: Token | undefined): TokenKind {
  const kind = terminals[tokenType.name];
  if (kind !== undefined) return kind;
  // `13 3/4 in`, but `bottom ply in groove`.
  if (image === "in" && before?.tokenType.name === "COUNT") return "unit";
  if (image === "{" || image === "(") return "open";
  if (image === "}" || image === ")") return "close";
  if (units.has(image)) return "unit";
  return /^[A-Za-z]/.test(image) ? "word" : "sign";
}

const terminals: Readonly<Record<string, TokenKind>> = {
  ID: "name",
  COUNT: "number",
  GAUGE: "gauge",
  STRING: "text",
  INCH_MARK: "unit",
  FOOT_MARK: "unit",
  TOLERANCE_SIGN: "sign",
  BY: "sign",
};

const units = new Set(["mm", "cm", "m", "ft", "lb", "kg", "%"]);

/** Puts in what stands between the tokens and is not blank. */
function withOthers(text: string, tokens: readonly TextToken[], place: Place): readonly TextToken[] {
  const all: TextToken[] = [];
  let at = 0;
  const fill = (end: number): void => {
    for (const match of text.slice(at, end).matchAll(/[^\s\uFEFF]+/g)) {
      all.push(place("other", at + match.index, match[0].length));
    }
  };
  for (const token of tokens) {
    if (at < token.start) fill(token.start);
    all.push(token);
    at = Math.max(at, token.end);
  }
  if (at < text.length) fill(text.length);
  return all;
}
