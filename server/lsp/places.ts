import type { Range } from "vscode-languageserver";
import type { Span } from "../../language/core/span.ts";

/** A place as the protocol has it; both count lines and UTF-16 columns from zero. */
export function rangeOf(span: Span): Range {
  return {
    start: { line: span.line, character: span.column },
    end: { line: span.endLine, character: span.endColumn },
  };
}

/** Whether two ranges share a character, or touch: a cursor behind a word is still at it. */
export function touches(a: Range, b: Range): boolean {
  return !isBefore(a, b) && !isBefore(b, a);
}

function isBefore(a: Range, b: Range): boolean {
  return a.end.line < b.start.line || (a.end.line === b.start.line && a.end.character < b.start.character);
}
