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
import type { BuildFile } from "../generated/ast.ts";
import { ScantlingGeneratedModule, ScantlingGeneratedSharedModule } from "../generated/module.ts";
import type { Said, TokenError } from "./tokens.ts";
import { WordLexer, WordTokenBuilder } from "./words.ts";

/** A place where the text cannot be read, as offsets into it. */
export interface SyntaxProblem {
  readonly start: number;
  readonly end: number;
  readonly code: Said["code"];
  readonly message: string;
}

export interface Parsed {
  readonly file: BuildFile;
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

/** Reads any text: what cannot be read is a problem at its place, and the rest of the tree stands. */
export function parse(text: string): Parsed {
  try {
    return parsed(text);
  } catch {
    // The parser keeps its state from text to text; after a throw it must be built anew.
    services = undefined;
    const message = "this file could not be read";
    return { file: parsed("").file, problems: [{ start: 0, end: text.length, code: "syntax/unreadable", message }] };
  }
}

function parsed(text: string): Parsed {
  const result = untraced(() => languageServices().parser.LangiumParser.parse<BuildFile>(text));
  const lexing = result.lexerErrors.map((error) => lexingProblem(text, error));
  return { file: result.value, problems: [...lexing, ...result.parserErrors.map((error) => problemOf(text, error))] };
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

function problemOf(text: string, error: ParserError): SyntaxProblem {
  const { token } = error;
  const expected = expectation(error.message);
  const code = "syntax/unreadable";
  if (Number.isNaN(token.startOffset) || token.image === "") {
    // Behind the last word, not behind the comments that may follow it.
    const before = (error as { readonly previousToken?: typeof token }).previousToken;
    const last = before?.endOffset;
    const end = last === undefined || Number.isNaN(last) ? text.trimEnd().length : last + 1;
    return { start: end, end, code, message: `the file ends in the middle of something${expected}` };
  }
  return {
    start: token.startOffset,
    end: token.startOffset + token.image.length,
    code,
    message: `"${token.image}" was not expected here${expected}`,
  };
}

/** What the parser waited for, in words; nothing where it waited for many things. */
function expectation(message: string): string {
  const wanted = /Expecting token of type '([^']+)'/.exec(message)?.[1];
  if (wanted === undefined) return "";
  if (wanted === "EOF") return ": no block is open here";
  return `: ${terminalNames[wanted] ?? `"${wanted}"`} is missing before it`;
}

const terminalNames: Record<string, string> = {
  COUNT: "a number",
  ID: "a name",
  STRING: "a text in quotation marks",
  GAUGE: "a gauge such as #8",
};
