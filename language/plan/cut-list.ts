import type { Part } from "../core/part.ts";
import { compare } from "../core/rational.ts";
import type { Model } from "../derive/model.ts";
import { sameShape } from "../derive/parts.ts";
import type { MarkedPart } from "./problems.ts";

/** One row of the cut list: parts that are cut alike, whoever they belong to. */
export interface CutRow {
  readonly mark: string;
  readonly quantity: number;
  readonly parts: readonly Part[];
}

export interface CutBatch {
  readonly stock: string;
  readonly rows: readonly CutRow[];
}

/** Equal parts merged, batched by stock as the stocks are described, longest first and lumber by rip width first, each with its mark. */
export function cutList(model: Model): readonly CutBatch[] {
  const rows = merged(model.parts);
  const order = [...model.stocks.keys()];
  const stocks = [...new Set(model.parts.map((part) => part.stock))].sort(
    (a, b) => order.indexOf(a) - order.indexOf(b),
  );
  let mark = 0;
  return stocks.map((stock) => ({
    stock,
    rows: rows
      .filter((row) => row[0]!.stock === stock)
      .sort((a, b) => (a[0]!.stockKind === "board" ? byRip(a[0]!, b[0]!) : bySize(a[0]!, b[0]!)))
      .map((parts) => ({
        mark: markOf(mark++),
        quantity: parts.reduce((count, part) => count + part.quantity, 0),
        parts,
      })),
  }));
}

/** The rows as a packing wants them: one piece of each shape with its count, but matched parts one by one in their order. */
export function markedParts(batches: readonly CutBatch[]): readonly MarkedPart[] {
  const rows = batches.flatMap((batch) => batch.rows);
  const free = rows.filter((row) => row.parts[0]!.matched === undefined);
  const matched = rows.flatMap((row) =>
    row.parts.flatMap((part) =>
      part.matched === undefined ? [] : [{ mark: row.mark, part, quantity: part.quantity }],
    ),
  );
  const inOrder = [...matched].sort((a, b) => {
    const [one, other] = [a.part.matched!, b.part.matched!];
    return one.group === other.group ? one.place - other.place : one.group < other.group ? -1 : 1;
  });
  return [...free.map((row) => ({ mark: row.mark, part: row.parts[0]!, quantity: row.quantity })), ...inOrder];
}

/** Shapes are compared within one key first, so that long lists do not compare every part with every other. */
function merged(parts: readonly Part[]): Part[][] {
  const byKey = new Map<string, Part[][]>();
  const rows: Part[][] = [];
  for (const part of parts) {
    const key = `${part.stock}|${part.length.value.n}/${part.length.value.d}|${part.width.value.n}/${part.width.value.d}`;
    const near = byKey.get(key) ?? [];
    const alike = near.find((row) => sameShape(row[0]!, part));
    if (alike !== undefined) {
      alike.push(part);
      continue;
    }
    const row = [part];
    byKey.set(key, [...near, row]);
    rows.push(row);
  }
  return rows;
}

/** Lumber of one width is ripped together and then crosscut. */
function byRip(a: Part, b: Part): number {
  return compare(b.width.value, a.width.value) || bySize(a, b);
}

function bySize(a: Part, b: Part): number {
  return compare(b.length.value, a.length.value) || compare(b.width.value, a.width.value) || (a.id < b.id ? -1 : 1);
}

/** A, B … Z, AA, AB … without I and O, which read as figures on rough wood. */
export function markOf(index: number): string {
  const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  const last = letters[index % letters.length]!;
  return index < letters.length ? last : `${markOf(Math.floor(index / letters.length) - 1)}${last}`;
}
