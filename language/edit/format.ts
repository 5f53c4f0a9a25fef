import type { Edit } from "../core/finding.ts";
import { type TextToken, textTokens } from "../syntax/text-tokens.ts";
import { laidOutLines } from "./format-lines.ts";
import { type Outline, outlineOf } from "./outline.ts";
import { edited } from "./places.ts";

/** How far a block is indented. */
export interface FormatOptions {
  /** What stands before each line of a block: spaces or a tab. */
  readonly indent: string;
}

/**
 * The edits that put a file in order: indented by its blocks, one blank at most between two lines, gaps even, columns
 * that the maker lined up lined up again. Lines stay lines, and words stay as they are, so that what the file means stays.
 * Nothing is changed where that could not be kept.
 */
export function formatEdits(uri: string, text: string, options: FormatOptions): readonly Edit[] {
  const outline = outlineOf(text);
  if (outline.tokens.length === 0) return [];
  const edits = lineEdits(uri, text, outline, options);
  return saysTheSame(outline.tokens, textTokens(edited(text, edits))) ? edits : [];
}

/** The same for some lines only, counted from zero, both counted in. */
export function formatLines(
  uri: string,
  text: string,
  options: FormatOptions,
  from: number,
  to: number,
): readonly Edit[] {
  return formatEdits(uri, text, options).filter(
    ({ span }) => from <= span.line && span.line <= to && span.endLine <= to + 1,
  );
}

function lineEdits(uri: string, text: string, outline: Outline, options: FormatOptions): readonly Edit[] {
  const lines = linesOf(text);
  const laid = laidOutLines(outline, lines, options);
  const edits: Edit[] = [];
  const end = laid.findLastIndex((line) => line !== "");
  let blank = true;
  lines.forEach((line, index) => {
    const made = laid[index];
    const isBlank = made === "";
    const next = lines[index + 1];
    const isLast = next === undefined;
    // A second blank line, one at the start, and those at the end go with their breaks.
    const drops = isBlank && !isLast && (blank || end < index);
    if (drops) {
      edits.push(replace(uri, index, line.start, next.start, "", index + 1, 0));
      return;
    }
    blank = isBlank;
    if (made !== undefined && made !== line.text) {
      edits.push(replace(uri, index, line.start, line.start + line.text.length, made, index, line.text.length));
    }
    if (isLast && made !== "" && made !== undefined) {
      const at = line.start + line.text.length;
      const column = line.text.length;
      edits.push({
        span: { uri, start: at, end: at, line: index, column, endLine: index, endColumn: column },
        text: text.includes("\r\n") ? "\r\n" : "\n",
      });
    }
  });
  return edits;
}

function replace(
  uri: string,
  line: number,
  start: number,
  end: number,
  text: string,
  endLine: number,
  endColumn: number,
): Edit {
  return { span: { uri, start, end, line, column: 0, endLine, endColumn }, text };
}

/** A line without its break. */
export interface Line {
  readonly text: string;
  readonly start: number;
}

function linesOf(text: string): readonly Line[] {
  const lines: Line[] = [];
  let start = 0;
  for (const match of text.matchAll(/\r\n|\r|\n/g)) {
    lines.push({ text: text.slice(start, match.index), start });
    start = match.index + match[0].length;
  }
  return [...lines, { text: text.slice(start), start }];
}

/** Whether two texts hold the same words in the same order, whatever stands between them. */
function saysTheSame(a: readonly TextToken[], b: readonly TextToken[]): boolean {
  const same = (one: TextToken, other: TextToken | undefined): boolean =>
    other !== undefined && one.kind === other.kind && one.begins === other.begins && plain(one) === plain(other);
  return a.length === b.length && a.every((token, index) => same(token, b[index]));
}

/** A mixed number may lose blanks between its two halves, and a comment those at the ends of its lines. */
function plain({ kind, text }: TextToken): string {
  if (kind === "number") return text.replace(/[ \t]+/g, " ");
  return kind === "comment" ? text.replace(/[ \t]+$/gm, "") : text;
}
