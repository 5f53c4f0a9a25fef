import type { Span } from "../core/span.ts";
import { startOfFile } from "../core/span.ts";
import type { Outline, OutlineBlock, OutlineItem } from "./outline.ts";
import { tokenBefore } from "./outline.ts";
import { spanOfItem, spanOfTokens } from "./places.ts";

/** What a selection at a place grows to, the smallest first: word, what a comma ends, property, block, file. */
export function selectionsAt(uri: string, outline: Outline, offset: number): readonly Span[] {
  const { tokens, text } = outline;
  const touched = [tokenBefore(outline, offset), tokenBefore(outline, offset + 1)].find((index) => {
    const token = tokens[index];
    return token !== undefined && token.start <= offset && offset <= token.end;
  });
  const word = touched === undefined ? [] : [spanOfTokens(uri, tokens[touched]!, tokens[touched]!)];
  const lines = text.split(/\r\n|\r|\n/);
  const file = { ...startOfFile(uri), end: text.length, endLine: lines.length - 1, endColumn: lines.at(-1)!.length };
  const spans = [...word, ...inItems(uri, outline, outline.items, offset), file];
  const kept: Span[] = [];
  for (const span of spans) {
    const last = kept.at(-1);
    const isMore = last === undefined || span.start < last.start || last.end < span.end;
    if (isMore && (last === undefined || (span.start <= last.start && last.end <= span.end))) kept.push(span);
  }
  return kept;
}

function inItems(uri: string, outline: Outline, items: readonly OutlineItem[], offset: number): readonly Span[] {
  const item = items.find((one) => holds(spanOfItem(uri, outline, one), offset));
  if (item === undefined) return [];
  const inner =
    item.block === undefined ? pieces(uri, outline, item, offset) : inBlock(uri, outline, item.block, offset);
  return [...inner, spanOfItem(uri, outline, item)];
}

function inBlock(uri: string, outline: Outline, block: OutlineBlock, offset: number): readonly Span[] {
  const { tokens } = outline;
  const [open, close] = [
    tokens[block.open]!,
    tokens[block.closed ? block.close : block.close - 1] ?? tokens[block.open]!,
  ];
  if (offset < open.end || close.end < offset) return [];
  const [first, last] = [tokens[block.open + 1], tokens[block.close - 1]];
  const held =
    first === undefined || last === undefined || last.start < first.start ? [] : [spanOfTokens(uri, first, last)];
  return [...inItems(uri, outline, block.items, offset), ...held, spanOfTokens(uri, open, close)];
}

/** Of a property: what stands between two commas, and all behind its first word. */
function pieces(uri: string, { tokens }: Outline, item: OutlineItem, offset: number): readonly Span[] {
  const said = tokens.slice(item.key + 1, item.end).filter((token) => token.kind !== "comment");
  const at = said.findIndex((token) => token.start <= offset && offset <= token.end);
  if (at < 0) return [];
  let [from, to] = [at, at];
  while (0 < from && said[from - 1]!.text !== ",") from--;
  while (to < said.length - 1 && said[to + 1]!.text !== ",") to++;
  return [spanOfTokens(uri, said[from]!, said[to]!), spanOfTokens(uri, said[0]!, said.at(-1)!)];
}

function holds(span: Span, offset: number): boolean {
  return span.start <= offset && offset <= span.end;
}
