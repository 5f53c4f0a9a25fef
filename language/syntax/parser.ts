import type { LangiumCoreServices, LangiumSharedCoreServices, Module, PartialLangiumCoreServices } from "langium";
import { createDefaultCoreModule, createDefaultSharedCoreModule, EmptyFileSystem, inject } from "langium";
import type { BuildFile } from "../generated/ast.ts";
import { ScantlingGeneratedModule, ScantlingGeneratedSharedModule } from "../generated/module.ts";
import { WordLexer, WordTokenBuilder } from "./words.ts";

/** A place where the text cannot be read, as offsets into it. */
export interface SyntaxProblem {
  readonly start: number;
  readonly end: number;
  readonly message: string;
}

export interface Parsed {
  readonly file: BuildFile;
  readonly problems: readonly SyntaxProblem[];
}

const languageModule: Module<LangiumCoreServices, PartialLangiumCoreServices> = {
  parser: { TokenBuilder: () => new WordTokenBuilder(), Lexer: (services) => new WordLexer(services) },
};

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
  const result = languageServices().parser.LangiumParser.parse<BuildFile>(text);
  const lexing = result.lexerErrors.map((error) => ({
    start: error.offset,
    end: error.offset + error.length,
    message: `this cannot be read: ${JSON.stringify(text.slice(error.offset, error.offset + Math.min(error.length, 12)))}`,
  }));
  const parsing = result.parserErrors.map((error) => {
    const token = error.token;
    const at = Number.isNaN(token.startOffset) ? text.trimEnd().length : token.startOffset;
    return { start: at, end: Number.isNaN(token.startOffset) ? at : at + token.image.length, message: error.message };
  });
  return { file: result.value, problems: [...lexing, ...parsing] };
}
