import type { CutRecord, Design } from "../core/design.ts";
import type { Edit } from "../core/finding.ts";
import type { Span } from "../core/span.ts";

/** A file that is written to, by itself, and its text. */
export interface OwnFile {
  readonly own: Design;
  readonly text: string;
}

export function recounted(record: CutRecord, count: number): Edit {
  return { span: record.count.span, text: String(count) };
}

/**
 * The record with its line, where nothing else stands on that, else with one space; the whole block where nothing else
 * stands in it, and the blank line before it where it ends the file. That undoes what `added` does, to the byte.
 */
export function takenOut({ own, text }: OwnFile, record: CutRecord): Edit {
  const block = own.cutBlocks.find(({ span }) => span.start <= record.span.start && record.span.end <= span.end);
  const rest =
    block === undefined
      ? "x"
      : `${text.slice(block.span.start, record.span.start)}${text.slice(record.span.end, block.span.end)}`;
  const isLast = block !== undefined && /^cut\s*\{\s*\}$/.test(rest);
  const [from, to] = isLast ? roundBlock(text, block.span) : roundRecord(text, record.span);
  return { span: spanAt(own.uri, text, from, to), text: "" };
}

function roundRecord(text: string, { start, end }: Span): readonly [number, number] {
  const line = wholeLine(text, start, end);
  if (line !== undefined) return line;
  if (text[end] === " ") return [start, end + 1];
  return text[start - 1] === " " ? [start - 1, end] : [start, end];
}

function roundBlock(text: string, { start, end }: Span): readonly [number, number] {
  const [from, to] = wholeLine(text, start, end) ?? [start, end];
  if (to < text.length) return [from, to];
  // A block that ends the file has a blank line of its own before it, and a line end of its own if the file had one.
  const gap = (to === end ? /(?:\r\n|\n|\r){2}$/ : /(?<=[\n\r])(?:\r\n|\n|\r)$/).exec(text.slice(0, from));
  return [from - (gap?.[0].length ?? 0), to];
}

/** From the beginning of a line to that of the next, where nothing else stands on it. */
function wholeLine(text: string, start: number, end: number): readonly [number, number] | undefined {
  let from = start;
  while (/[ \t]/.test(text[from - 1] ?? "")) from--;
  const to = end + (/^[ \t]*/.exec(text.slice(end))?.[0].length ?? 0);
  const isAlone = (from === 0 || /[\n\r]/.test(text[from - 1]!)) && (to === text.length || /[\n\r]/.test(text[to]!));
  return isAlone ? [from, to + (/^(\r\n|\n|\r)?/.exec(text.slice(to))?.[0].length ?? 0)] : undefined;
}

/** New lines stand before the bracket of the last `cut` block, or in a new one at the end of the file. */
export function added({ own, text }: OwnFile, lines: readonly string[]): readonly Edit[] {
  if (lines.length === 0) return [];
  const newline = text.includes("\r\n") ? "\r\n" : "\n";
  const body = lines.map((line) => `  ${line}${newline}`).join("");
  const put = (place: number, put: string): Edit => ({ span: spanAt(own.uri, text, place, place), text: put });
  const block = own.cutBlocks.at(-1);
  const close = block === undefined ? undefined : block.span.end - 1;
  if (close === undefined || text[close] !== "}") {
    const isEnded = text === "" || /[\n\r]$/.test(text);
    const gap = text === "" ? "" : isEnded ? newline : `${newline}${newline}`;
    return [put(text.length, `${gap}cut {${newline}${body}}${isEnded ? newline : ""}`)];
  }
  let at = close;
  while (/[ \t]/.test(text[at - 1] ?? "")) at--;
  if (/[\n\r]/.test(text[at - 1] ?? "")) return [put(at, body)];
  return [put(close, at < close ? `${lines.join(" ")} ` : ` ${lines.join(" ")}`)];
}

/** The place between two offsets of a text. */
function spanAt(uri: string, text: string, start: number, end: number): Span {
  const at = (offset: number): { readonly line: number; readonly column: number } => {
    const before = text.slice(0, offset).split(/\r\n|\r|\n/);
    return { line: before.length - 1, column: before.at(-1)!.length };
  };
  const [from, to] = [at(start), at(end)];
  return { uri, start, end, line: from.line, column: from.column, endLine: to.line, endColumn: to.column };
}
