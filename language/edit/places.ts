import type { Span } from "../core/span.ts";
import type { TextToken } from "../syntax/text-tokens.ts";
import type { Outline, OutlineItem } from "./outline.ts";

/** The place from one token to another, both counted in. */
export function spanOfTokens(uri: string, first: TextToken, last: TextToken): Span {
  const { start, line, column } = first;
  return { uri, start, end: last.end, line, column, endLine: last.endLine, endColumn: last.endColumn };
}

/** The place of a statement or property, its block counted in. */
export function spanOfItem(uri: string, { tokens }: Outline, item: OutlineItem): Span {
  return spanOfTokens(uri, tokens[item.key]!, tokens[item.end - 1] ?? tokens[item.key]!);
}

/** The tokens of a statement from its first word up to its bracket or its end, without comments. */
export function headOf({ tokens }: Outline, item: OutlineItem): readonly TextToken[] {
  return tokens.slice(item.key, item.block?.open ?? item.end).filter((token) => token.kind !== "comment");
}

/** A text with some places of it replaced; places that overlap one before are left out. */
export function edited(text: string, edits: readonly { readonly span: Span; readonly text: string }[]): string {
  const ordered = [...edits].sort((a, b) => a.span.start - b.span.start);
  let [made, at] = ["", 0];
  for (const { span, text: written } of ordered) {
    if (span.start < at) continue;
    made += text.slice(at, span.start) + written;
    at = span.end;
  }
  return made + text.slice(at);
}
