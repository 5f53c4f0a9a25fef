import type { AstNode } from "langium";
import { languageServices } from "../../language/syntax/parser.ts";

/** The whole of a text read at once by langium's parser, with nothing made of it: what our times are compared with. */
export function bareParse(text: string): { readonly tree: AstNode; readonly errors: number } {
  const { value, parserErrors, lexerErrors } = languageServices().parser.LangiumParser.parse(text);
  return { tree: value, errors: parserErrors.length + lexerErrors.length };
}
