import type {
  CstNode,
  GrammarAST,
  LangiumCoreServices,
  LangiumSharedCoreServices,
  Module,
  ParseResult,
  PartialLangiumCoreServices,
  ValueType,
} from "langium";
import {
  createDefaultCoreModule,
  createDefaultSharedCoreModule,
  DefaultValueConverter,
  EmptyFileSystem,
  inject,
} from "langium";
import type { BuildFile, Statement } from "../generated/ast.ts";
import { ScantlingGeneratedModule, ScantlingGeneratedSharedModule } from "../generated/module.ts";
import { detached } from "./detached.ts";
import type { Said, Token, TokenError } from "./tokens.ts";
import { WordLexer, WordTokenBuilder } from "./words.ts";

/** A place where the text cannot be read, as offsets into it. */
export interface SyntaxProblem extends Said {
  readonly start: number;
  readonly end: number;
}

/** Statements that are read by themselves, up to the end of a block that stands in no other: no statement goes on behind one. */
export interface Piece {
  readonly tokens: readonly Token[];
  /** Whether nothing follows. */
  readonly isLast: boolean;
}

/** A text as pieces, and what was wrong with it before any was parsed. */
export interface Pieces {
  readonly pieces: readonly Piece[];
  readonly problems: readonly SyntaxProblem[];
}

export interface Parsed {
  readonly statements: readonly Statement[];
  readonly problems: readonly SyntaxProblem[];
}

const languageModule: Module<LangiumCoreServices, PartialLangiumCoreServices> = {
  parser: {
    TokenBuilder: () => new WordTokenBuilder(),
    Lexer: (services) => new WordLexer(services),
    ValueConverter: () => new PlainValues(),
  },
};

/** Leaves texts as they are written: taking off a quotation mark that is not there yet would take a letter. */
class PlainValues extends DefaultValueConverter {
  protected override runConverter(rule: GrammarAST.AbstractRule, input: string, node: CstNode): ValueType {
    return rule.name === "STRING" ? input : super.runConverter(rule, input, node);
  }
}

/** One parser serves the whole program: it keeps no state between texts, and building it is the dear part. */
let services: LangiumCoreServices | undefined;

export function languageServices(): LangiumCoreServices {
  if (services !== undefined) return services;
  const shared: LangiumSharedCoreServices = inject(
    createDefaultSharedCoreModule(EmptyFileSystem),
    ScantlingGeneratedSharedModule,
  );
  services = inject(createDefaultCoreModule({ shared }), ScantlingGeneratedModule, languageModule);
  shared.ServiceRegistry.register(services);
  return services;
}

/** Divides any text; a slip in one piece cannot reach another. */
export function piecesOf(text: string): Pieces {
  const { tokens, errors } = lexer().tokenize(text);
  const ends: number[] = [];
  let depth = 0;
  for (const [index, { image }] of tokens.entries()) {
    if (image === "{") depth++;
    else if (image === "}" && 0 < depth && --depth === 0) ends.push(index + 1);
  }
  if (ends.at(-1) !== tokens.length) ends.push(tokens.length);
  const pieces = ends.map((end, at) => ({
    tokens: tokens.slice(ends[at - 1] ?? 0, end),
    isLast: end === tokens.length,
  }));
  return { pieces, problems: errors.map((error) => lexingProblem(text, error)) };
}

/** Reads a piece of a text: what cannot be read is a problem at its place, and the rest of the tree stands. */
export function parse(text: string, piece: Piece): Parsed {
  try {
    const read = () => languageServices().parser.LangiumParser.parse<BuildFile>(text);
    for (const token of piece.tokens) token.image = detached(token.image);
    const { value, parserErrors } = untraced(() => lexer().giving(piece.tokens, read));
    return { statements: value.statements, problems: parserErrors.map((error) => problemOf(text, piece, error)) };
  } catch {
    // The parser keeps its state from text to text; after a throw it must be built anew.
    services = undefined;
    const [start, end] = [piece.tokens[0]?.startOffset ?? 0, endOf(piece) ?? text.length];
    return { statements: [], problems: [{ start, end, code: "syntax/unreadable", message: "this could not be read" }] };
  }
}

function lexer(): WordLexer {
  const { Lexer } = languageServices().parser;
  if (!(Lexer instanceof WordLexer)) throw new Error("the parser was built with another lexer than the language's own");
  return Lexer;
}

function endOf({ tokens }: Piece): number | undefined {
  const last = tokens.at(-1);
  return last === undefined ? undefined : last.startOffset + last.image.length;
}

/**
 * Runs something that throws errors by the thousand to find its way, and catches them all: the parser, in a text that is
 * half typed. Writing down for each where in the program it was thrown costs more than the parsing.
 */
function untraced<T>(run: () => T): T {
  const before = Error.stackTraceLimit;
  Error.stackTraceLimit = 0;
  try {
    return run();
  } finally {
    Error.stackTraceLimit = before;
  }
}

function lexingProblem(text: string, error: TokenError): SyntaxProblem {
  const place = { start: error.offset, end: error.offset + error.length };
  if (error.said !== undefined) return { ...place, ...error.said };
  const piece = text.slice(error.offset, error.offset + Math.min(error.length, 12));
  return { ...place, code: "syntax/unreadable", message: `${JSON.stringify(piece)} cannot be read here` };
}

type ParserError = ParseResult["parserErrors"][number];

function problemOf(text: string, piece: Piece, error: ParserError): SyntaxProblem {
  // What is put before a word stands for the word.
  const token = error.token.tokenType?.name === "BREAK" ? following(piece, error.token) : error.token;
  const expected = expectation(error.message, token);
  const code = "syntax/unreadable";
  if (!Number.isNaN(token.startOffset) && token.image !== "") return unexpected(token, expected);
  const last = piece.tokens.at(-1);
  if (!piece.isLast && last !== undefined) return unexpected(last, "");
  // Behind the last word, not behind the comments that may follow it.
  const before = (error as { readonly previousToken?: typeof token }).previousToken?.endOffset;
  const end = before === undefined || Number.isNaN(before) ? text.trimEnd().length : before + 1;
  return { start: end, end, code, message: `the file ends in the middle of something${expected}` };
}

function following({ tokens }: Piece, token: Token): Token {
  return tokens[tokens.indexOf(token) + 1] ?? token;
}

function unexpected({ startOffset, image }: Token, expected: string): SyntaxProblem {
  const message = `"${image}" was not expected here${expected}`;
  return { start: startOffset, end: startOffset + image.length, code: "syntax/unreadable", message };
}

/** What the parser waited for, in words; nothing where it waited for many things. */
function expectation(message: string, { image }: Token): string {
  const wanted = /Expecting token of type '([^']+)'/.exec(message)?.[1];
  if (wanted === undefined) return choice(message);
  // Within a block the parser waits for its end whenever it can read no further: that tells of no brace.
  if (wanted === "}" && image !== "") {
    if (image === ",") return ": no list goes on here";
    return image === "lb" || image === "kg" ? ": a weight is not asked for here" : "";
  }
  if (wanted === "EOF") {
    if (image === "}") return ": no block is open here";
    return ["+", "-", "*", "/"].includes(image) ? ": a length is missing behind it" : "";
  }
  return `: ${terminalNames[wanted] ?? `"${wanted}"`} is missing before it`;
}

/** Where one of a few words can stand, which. */
function choice(message: string): string {
  const words = [...message.matchAll(/^ *\d+\. \[([^\],]+)/gm)].map((match) => match[1]!);
  if (words.includes("COUNT") && words.includes("(")) return ": a length is missing before it";
  const isFew = 1 < words.length && words.length <= mostWords && words.every((word) => /^[a-z-]+$/.test(word));
  return isFew ? `: ${words.slice(0, -1).join(", ")} or ${words.at(-1)} can stand here` : "";
}

/** More words than that are no help on one line. */
const mostWords = 10;

const terminalNames: Record<string, string> = {
  COUNT: "a number",
  ID: "a name",
  STRING: "a text in quotation marks",
  GAUGE: "a gauge such as #8",
};
