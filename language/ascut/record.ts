import type { CutRecord } from "../core/design.ts";
import type { Edit } from "../core/finding.ts";
import { writtenText } from "../core/length.ts";
import { equal } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import { cutList } from "../plan/cut-list.ts";
import type { AsCut, Count } from "./as-cut.ts";
import { nameOf } from "./findings/words.ts";
import { type Measured, sizeIn } from "./measured.ts";
import { type Piece, recordedAs } from "./pieces.ts";
import { added, type OwnFile, recounted, takenOut } from "./record-text.ts";

/** What is to be written down: so many pieces of a part, or fewer where the count is below nought. */
export interface RecordRequest {
  /** The key of a part (`box plan-1/side`), or the mark of its row (`C`): then shared among its owners. */
  readonly part: string;
  readonly count: number;
  /** As measured, in the words of the file: `13 11/16`. Missing: as it must be cut. */
  readonly size?: { readonly length?: string; readonly width?: string };
  readonly spoiled?: boolean;
}

/** The edits that write it down, or why it cannot be. */
export type Recording = { readonly edits: readonly Edit[] } | { readonly refused: string };

export interface Book extends OwnFile {
  readonly context: Context;
  readonly model: Model;
  readonly made: AsCut;
}

/**
 * The text edits for ticks, one or several: each adds to the record that says the same, or to the `cut` block, or makes
 * one at the end of the file; so do lines that stand as they are. Nothing is written where one of them makes no sense.
 */
export function recordEdits(
  book: Book,
  requests: readonly RecordRequest[],
  besides: readonly string[] = [],
): Recording {
  const lines: string[] = [];
  const counts = new Map<CutRecord, number>();
  for (const request of requests) {
    const refused = writeDown(book, request, lines, counts);
    if (refused !== undefined) return { refused };
  }
  const edits = [...counts].map(([record, count]) => (count === 0 ? takenOut(book, record) : recounted(record, count)));
  return { edits: [...edits, ...added(book, [...lines, ...besides])] };
}

function writeDown(
  book: Book,
  request: RecordRequest,
  lines: string[],
  counts: Map<CutRecord, number>,
): string | undefined {
  if (!Number.isInteger(request.count) || request.count === 0 || 1000 < Math.abs(request.count))
    return "how many were cut must be a whole number that is not nought";
  const shares = sharesOf(book, request);
  if (typeof shares === "string") return shares;
  for (const [found, count] of shares) {
    const sizes = sizesOf(book, request, found);
    if (typeof sizes === "string") return sizes;
    const spoiled = request.spoiled === true;
    const own = ownPieces(book, found, spoiled);
    const same = own.filter((piece) => isOfSize(piece, found, sizes) || (count < 0 && request.size === undefined));
    const before = same[0];
    if (count < 0) {
      if (!takeOff(same, -count, counts)) return `so many of ${nameOf(found.wanted)} are not written down in this file`;
    } else if (before === undefined) lines.push(lineFor(book, found, count, sizes, spoiled));
    else counts.set(before.record, (counts.get(before.record) ?? before.count) + count);
  }
  return undefined;
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

/** So many pieces of one part. */
type Share = readonly [Count, number];

/** The part with the key; or the parts of the row with the mark, to each as many as it still wants, or has. */
function sharesOf(book: Book, { part, count, spoiled }: RecordRequest): readonly Share[] | string {
  const { made, model } = book;
  const byKey = made.counts.find(({ wanted }) => wanted.key === part);
  if (byKey !== undefined) return [[byKey, count]];
  const row = cutList(model)
    .flatMap((batch) => batch.rows)
    .find(({ mark }) => mark === part);
  const own = made.counts.filter(({ wanted }) => wanted.parts.some((one) => row?.parts.includes(one)));
  const [first] = own;
  if (first === undefined) return `there is no part "${part}"`;
  if (0 < count) return shared(own, count, ({ left }) => left, own.find(({ left }) => 0 < left) ?? own.at(-1)!);
  const recorded = (one: Count): number =>
    ownPieces(book, one, spoiled === true).reduce((sum, piece) => sum + piece.count, 0);
  return shared([...own].reverse(), -count, recorded, first).map(([one, share]): Share => [one, -share]);
}

/** What is more than all have room for goes to one of them. */
function shared(
  own: readonly Count[],
  count: number,
  roomIn: (one: Count) => number,
  otherwise: Count,
): readonly Share[] {
  let rest = count;
  const shares = own.map((one): Share => {
    const share = Math.min(rest, roomIn(one));
    rest -= share;
    return [one, share];
  });
  return shares
    .map(([one, share]): Share => [one, one === otherwise ? share + rest : share])
    .filter(([, share]) => 0 < share);
}

interface Sizes {
  readonly length: Measured;
  readonly width: Measured;
}

/** As said, else as it must be cut; none for a spoiled piece of which nothing is said, since its size would be what is good of it. */
function sizesOf({ context, made }: Book, { size, spoiled }: RecordRequest, count: Count): Sizes | undefined | string {
  if (spoiled === true && size === undefined && namesakesOf(made, count).length === 1) return undefined;
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
function ownPieces({ made, own }: Book, { wanted }: Count, spoiled: boolean): readonly Piece[] {
  return made.pieces.filter(
    (piece) => piece.wanted === wanted && piece.spoiled === spoiled && piece.record.span.uri === own.uri,
  );
}

function isOfSize(piece: Piece, { wanted }: Count, sizes: Sizes | undefined): boolean {
  if (sizes === undefined) return piece.length === undefined && piece.width === undefined;
  return (
    equal((piece.length ?? wanted.part.length).value, sizes.length.value) &&
    equal((piece.width ?? wanted.part.width).value, sizes.width.value)
  );
}

/** Parts of the same owner, name and stock: what a size alone tells apart. */
function namesakesOf({ counts }: AsCut, { wanted }: Count): readonly Count[] {
  return counts.filter(
    (one) =>
      one.wanted.of === wanted.of && one.wanted.name === wanted.name && one.wanted.part.stock === wanted.part.stock,
  );
}

/** The size is written: when the design changes, the pieces do not. The stock only where the name would not do. */
function lineFor({ made }: Book, { wanted }: Count, count: number, sizes: Sizes | undefined, spoiled: boolean): string {
  const { of, name } = wanted;
  const alike = made.counts.filter((one) => one.wanted.of === of && one.wanted.name === name);
  const stocks = new Set(alike.map((one) => one.wanted.part.stock));
  const from = 1 < stocks.size ? ` from ${wanted.part.stock}` : "";
  const what = of === `part ${name}` ? of : `${recordedAs(of)} ${name}`;
  const at = sizes === undefined ? "" : ` at ${sizes.length.text} x ${sizes.width.text}`;
  return `${what} ${count}${at}${from}${spoiled ? " spoiled" : ""}`;
}
