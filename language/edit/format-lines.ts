import { isDecimalComma, type Seen } from "../syntax/decimal-comma.ts";
import type { TextToken } from "../syntax/text-tokens.ts";
import { type Cell, type CodeLine, lineUp } from "./columns.ts";
import type { FormatOptions, Line } from "./format.ts";
import type { Outline, OutlineBlock } from "./outline.ts";
import { blocksOf } from "./outline.ts";

/** Each line as it should be; `undefined` for lines that a comment of several lines runs through, which stay as they are. */
export function laidOutLines(
  outline: Outline,
  lines: readonly Line[],
  { indent }: FormatOptions,
): readonly (string | undefined)[] {
  const rows = rowsOf(outline, lines);
  const coded = lineUp(
    rows.map((row, index) => codeLine(outline, rows, row, index, indent, markOf(lines[index]!).length)),
  );
  return lines.map((line, index) => {
    const row = rows[index]!;
    if (row.kept) return undefined;
    const [first] = row.tokens;
    return first === undefined ? markOf(line) : markOf(line) + coded[index]!;
  });
}

/** The mark of the order of bytes that some editors put before a text, and a paste before a line in the middle of one. */
function markOf({ text }: Line): string {
  return text.startsWith("\uFEFF") ? "\uFEFF" : "";
}

interface Row {
  /** The tokens of the line, as counts of the outline's. */
  readonly tokens: readonly number[];
  /** Whether the line stays as it is. */
  readonly kept: boolean;
  /** How many brackets are open where the line begins, less those that it closes first. */
  readonly depth: number;
  /** Whether it goes on with what the line before began. */
  readonly goesOn: boolean;
}

function rowsOf(outline: Outline, lines: readonly Line[]): readonly Row[] {
  const { tokens } = outline;
  const byLine = lines.map((): number[] => []);
  const kept = new Set<number>();
  tokens.forEach((token, index) => {
    byLine[token.line]?.push(index);
    for (let line = token.line; token.line < token.endLine && line <= token.endLine; line++) kept.add(line);
  });
  const depths = depthsOf(outline);
  let last: TextToken | undefined;
  return byLine.map((own, line) => {
    const first = own[0];
    const code = own.findLast((index) => tokens[index]!.kind !== "comment");
    const before = last;
    if (code !== undefined) last = tokens[code];
    if (first === undefined) return { tokens: own, kept: kept.has(line), depth: 0, goesOn: false };
    const goesOn = before !== undefined && (asksForMore(before) || goesOnWith(tokens[first]!));
    return { tokens: own, kept: kept.has(line), depth: depths[first]!, goesOn };
  });
}

/** How many blocks each token stands in; a bracket that closes one stands outside it. */
function depthsOf(outline: Outline): readonly number[] {
  const depths = outline.tokens.map(() => 0);
  const depthOf = (block: OutlineBlock | undefined): number => (block === undefined ? 0 : 1 + depthOf(block.parent));
  for (const block of blocksOf(outline)) {
    const depth = depthOf(block);
    for (let index = block.open + 1; index < block.close; index++) depths[index] = depth;
  }
  return depths;
}

/** Signs that want something behind them: `measures 1/2,` at the end of a line. */
function asksForMore({ kind, text }: TextToken): boolean {
  return (kind === "sign" && [",", "=", "+", "-", "*", "/", "x", "×"].includes(text)) || text === "(";
}

function goesOnWith({ kind, text }: TextToken): boolean {
  return (kind === "sign" && [",", "+", "-", "*", "/", "x", "×", "±"].includes(text)) || text === ")";
}

/** `marked` columns of the line are taken by a mark that is not seen, and count for nothing when lines are lined up. */
function codeLine(
  outline: Outline,
  rows: readonly Row[],
  row: Row,
  index: number,
  indent: string,
  marked: number,
): CodeLine {
  const { tokens } = outline;
  const margin = indent.repeat(row.depth + (row.goesOn ? 1 : 0));
  const code = row.tokens.filter(
    (at) => tokens[at]!.kind !== "comment" || at !== row.tokens.at(-1) || row.tokens.length === 1,
  );
  const last = row.tokens.at(-1);
  const comment = last !== undefined && code.length < row.tokens.length ? tokens[last] : undefined;
  const joined =
    0 < index && rows[index - 1]!.depth === row.depth && 0 < rows[index - 1]!.tokens.length && !rows[index - 1]!.kept;
  return {
    margin,
    joined: joined && !row.kept && 0 < row.tokens.length,
    cells: row.kept
      ? []
      : code.map((at, place): Cell => cellOf(outline, at, place === 0 ? undefined : code[place - 1], marked)),
    comment:
      comment === undefined || row.kept ? undefined : { text: comment.text.trimEnd(), column: comment.column - marked },
    blank: row.tokens.length === 0,
  };
}

function cellOf(outline: Outline, at: number, before: number | undefined, marked: number): Cell {
  const { tokens } = outline;
  const token = tokens[at]!;
  const text = token.kind === "number" ? token.text.replace(/[ \t]+/g, " ") : token.text.trimEnd();
  const last = before === undefined ? undefined : tokens[before]!;
  const column = token.column - marked;
  if (last === undefined) return { text, column, gap: 0, least: 0, most: 0, role: undefined };
  const gap = token.start - last.end;
  const role = token.text === "}" ? undefined : roleOf(outline, at);
  const fixed = isDecimalComma(before!, (index) => seenOf(tokens[index])) ? gap : fixedGap(last, token, gap);
  if (fixed !== undefined)
    return { text, column, gap, least: fixed, most: fixed, role: fixed === 1 ? role : undefined };
  const least = role === 0 && last.text !== "{" ? 2 : 1;
  return { text, column, gap, least, most: least === 2 ? 3 : 1, role };
}

function seenOf(token: TextToken | undefined): Seen | undefined {
  return token === undefined ? undefined : { text: token.text, start: token.start, word: token.kind === "word" };
}

/** The gap between two tokens where it does not depend on what they are in. */
function fixedGap(last: TextToken, token: TextToken, gap: number): number | undefined {
  if (token.text === "," || (token.text === ")" && token.kind === "close")) return 0;
  if (last.text === "(" && last.kind === "open") return 0;
  const apart = [last.text, token.text].some((text) => text === "{" || text === "}" || text === "=");
  if (apart || last.text === "," || token.kind === "comment" || last.kind === "comment")
    return apart && token.text !== "{" ? undefined : 1;
  // What hugs stays so, for a blank could make another word of it.
  return gap === 0 ? 0 : undefined;
}

const roles = new WeakMap<Outline, readonly number[]>();

/** Which word of its statement or property a token is, the first being nought. */
function roleOf(outline: Outline, index: number): number {
  const known = roles.get(outline) ?? rolesOf(outline);
  roles.set(outline, known);
  return known[index] ?? 1;
}

function rolesOf(outline: Outline): readonly number[] {
  const { tokens } = outline;
  const keys = new Set([...outline.items, ...blocksOf(outline).flatMap(({ items }) => items)].map(({ key }) => key));
  let since = 0;
  return tokens.map((token, index) => {
    since = keys.has(index) ? 0 : token.kind === "comment" ? since : since + 1;
    return since;
  });
}
