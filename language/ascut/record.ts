import type { CutRecord, Design } from "../core/design.ts";
import type { Edit } from "../core/finding.ts";
import { writtenText } from "../core/length.ts";
import { equal } from "../core/rational.ts";
import type { Span } from "../core/span.ts";
import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import { cutList } from "../plan/cut-list.ts";
import type { AsCut, Count } from "./as-cut.ts";
import { nameOf } from "./findings/words.ts";
import { type Measured, sizeIn } from "./measured.ts";
import type { Piece } from "./pieces.ts";

/** What is to be written down: so many pieces of a part, or fewer where the count is below nought. */
export interface RecordRequest {
  /** The key of a part (`box plan-1/side`), or the mark of its row (`C`): then the first owner that still wants one. */
  readonly part: string;
  readonly count: number;
  /** As measured, in the words of the file: `13 11/16`. Missing: as it must be cut. */
  readonly size?: { readonly length?: string; readonly width?: string };
  readonly spoiled?: boolean;
}

/** The edits that write it down, or why it cannot be. */
export type Recording = { readonly edits: readonly Edit[] } | { readonly refused: string };

export interface Book {
  readonly context: Context;
  readonly model: Model;
  readonly made: AsCut;
  /** The file that is written to, by itself, and its text. */
  readonly own: Design;
  readonly text: string;
}

/**
 * The text edits for ticks, one or several: each adds to the record that says the same, or to the `cut` block, or makes
 * one at the end of the file. Nothing is written where one of them makes no sense.
 */
export function recordEdits(book: Book, requests: readonly RecordRequest[]): Recording {
  const lines: string[] = [];
  const counts = new Map<CutRecord, number>();
  for (const request of requests) {
    const refused = writeDown(book, request, lines, counts);
    if (refused !== undefined) return { refused };
  }
  const edits = [...counts].map(([record, count]) => (count === 0 ? takenOut(book, record) : recounted(record, count)));
  return { edits: [...edits, ...added(book, lines)] };
}

function writeDown(
  book: Book,
  request: RecordRequest,
  lines: string[],
  counts: Map<CutRecord, number>,
): string | undefined {
  if (!Number.isInteger(request.count) || request.count === 0 || 1000 < Math.abs(request.count))
    return "how many were cut must be a whole number that is not nought";
  const found = countFor(book, request);
  if (typeof found === "string") return found;
  const sizes = sizesOf(book, request, found);
  if (typeof sizes === "string") return sizes;
  const spoiled = request.spoiled === true;
  const same = ownPieces(book, found).filter(
    (piece) =>
      piece.spoiled === spoiled && (isOfSize(piece, found, sizes) || (request.count < 0 && request.size === undefined)),
  );
  if (0 < request.count) {
    const before = same[0];
    if (before === undefined) lines.push(lineFor(book, found, request.count, sizes, spoiled));
    else counts.set(before.record, (counts.get(before.record) ?? before.count) + request.count);
    return undefined;
  }
  return takeOff(same, -request.count, counts)
    ? undefined
    : `so many of ${nameOf(found.wanted)} are not written down in this file`;
}

/** The last that were written down go first. */
function takeOff(same: readonly Piece[], many: number, counts: Map<CutRecord, number>): boolean {
  let rest = many;
  for (const piece of [...same].reverse()) {
    const before = counts.get(piece.record) ?? piece.count;
    const off = Math.min(before, rest);
    if (0 < off) counts.set(piece.record, before - off);
    rest -= off;
  }
  return rest === 0;
}

function countFor({ made, model }: Book, { part, count, spoiled }: RecordRequest): Count | string {
  const byKey = made.counts.find(({ wanted }) => wanted.key === part);
  if (byKey !== undefined) return byKey;
  const row = cutList(model)
    .flatMap((batch) => batch.rows)
    .find(({ mark }) => mark === part);
  const own = made.counts.filter(({ wanted }) => wanted.parts.some((one) => row?.parts.includes(one)));
  if (own.length === 0) return `there is no part "${part}"`;
  if (0 < count) return own.find(({ left }) => 0 < left) ?? own.at(-1)!;
  const isThere = (one: Count): boolean => (spoiled === true ? 0 < one.spoiled : one.left < one.wanted.quantity);
  return [...own].reverse().find(isThere) ?? own[0]!;
}

interface Sizes {
  readonly length: Measured;
  readonly width: Measured;
}

function sizesOf({ context }: Book, { size }: RecordRequest, count: Count): Sizes | string {
  const one = (dimension: "length" | "width"): Measured | string => {
    const said = size?.[dimension];
    const { value } = count[dimension];
    return said === undefined ? { value, text: writtenText(value, context.units) } : sizeIn(said, context.units);
  };
  const [length, width] = [one("length"), one("width")];
  if (typeof length === "string") return length;
  return typeof width === "string" ? width : { length, width };
}

/** Pieces that this very file, and no other that it uses, records of a part. */
function ownPieces({ made, own }: Book, { wanted }: Count): readonly Piece[] {
  return made.pieces.filter((piece) => piece.wanted === wanted && piece.record.span.uri === own.uri);
}

function isOfSize(piece: Piece, { wanted }: Count, { length, width }: Sizes): boolean {
  return (
    equal((piece.length ?? wanted.part.length).value, length.value) &&
    equal((piece.width ?? wanted.part.width).value, width.value)
  );
}

/** The size is always written: when the design changes, the pieces do not. The stock only where the name would not do. */
function lineFor({ made }: Book, { wanted }: Count, count: number, { length, width }: Sizes, spoiled: boolean): string {
  const { of, name } = wanted;
  const alike = made.counts.filter((one) => one.wanted.of === of && one.wanted.name === name);
  const stocks = new Set(alike.map((one) => one.wanted.part.stock));
  const from = 1 < stocks.size ? ` from ${wanted.part.stock}` : "";
  const what = of === `part ${name}` ? of : `${of} ${name}`;
  return `${what} ${count} at ${length.text} x ${width.text}${from}${spoiled ? " spoiled" : ""}`;
}

function recounted(record: CutRecord, count: number): Edit {
  return { span: record.count.span, text: String(count) };
}

/**
 * The record with its line, where nothing else stands on that, else with one space; the whole block where nothing else
 * stands in it, and the blank line before it where it ends the file. That undoes what `added` does, to the byte.
 */
function takenOut({ own, text }: Book, record: CutRecord): Edit {
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
function added({ own, text }: Book, lines: readonly string[]): readonly Edit[] {
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
export function spanAt(uri: string, text: string, start: number, end: number): Span {
  const at = (offset: number): { readonly line: number; readonly column: number } => {
    const before = text.slice(0, offset).split(/\r\n|\r|\n/);
    return { line: before.length - 1, column: before.at(-1)!.length };
  };
  const [from, to] = [at(start), at(end)];
  return { uri, start, end, line: from.line, column: from.column, endLine: to.line, endColumn: to.column };
}
