import type { CutRecord } from "../core/design.ts";
import type { Finding } from "../core/finding.ts";
import { absolute, add, compare, subtract, zero } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import { pieces as piecesIn, size } from "../derive/context.ts";
import { nameless } from "./findings/nameless.ts";
import { whichPart } from "./findings/which-part.ts";
import { isOf, type Piece } from "./pieces.ts";
import type { Wanted } from "./wanted.ts";

/** What the records of a design say exists, each matched to what it was made as, and findings where that cannot be told. */
export interface Resolved {
  readonly pieces: readonly Piece[];
  readonly findings: readonly Finding[];
}

/** More pieces of one part than any job has; guards against a slip of the pen. */
export const mostPieces = 1000;

export function resolveRecords(context: Context, wanted: readonly Wanted[]): Resolved {
  const findings: Finding[] = [];
  const taken = new Map<Wanted, number>();
  const pieces = context.design.cuts.flatMap((record): readonly Piece[] => {
    const count = piecesIn(context, record.count, mostPieces) ?? 0;
    const piece = {
      record,
      length: size(context, record.at),
      width: size(context, record.wide),
      spoiled: record.spoiled !== undefined,
    };
    const found = candidatesOf(record, wanted);
    if (found.length === 0) {
      findings.push(...nameless(record, wanted));
      return [{ ...piece, wanted: undefined, count }];
    }
    if (count === 0) return [];
    const [nearest, isCertain] = nearestOf(piece, found, taken);
    if (!isCertain) findings.push(whichPart(context, record, found));
    if (!piece.spoiled) taken.set(nearest, (taken.get(nearest) ?? 0) + count);
    return [{ ...piece, wanted: nearest, count }];
  });
  return { pieces, findings };
}

/** All that the words of a record may mean: an owner with parts of one name only needs no name for them. */
export function candidatesOf(record: CutRecord, wanted: readonly Wanted[]): readonly Wanted[] {
  const own = wanted.filter(({ of }) => isOf(record, of));
  const name = record.part?.text ?? (record.owner.text === "part" ? record.of.text : onlyName(own));
  const named = name === undefined ? own : own.filter((one) => one.name === name);
  return record.stock === undefined ? named : named.filter(({ part }) => part.stock === record.stock?.text);
}

function onlyName(own: readonly Wanted[]): string | undefined {
  const names = new Set(own.map(({ name }) => name));
  return names.size === 1 ? own[0]!.name : undefined;
}

/** The one whose size comes nearest; among equals one that still wants pieces. Not certain where the record says too little. */
function nearestOf(
  piece: Pick<Piece, "length" | "width">,
  found: readonly Wanted[],
  taken: ReadonlyMap<Wanted, number>,
): readonly [Wanted, boolean] {
  const off = ({ part }: Wanted) =>
    add(
      piece.length === undefined ? zero : absolute(subtract(piece.length.value, part.length.value)),
      piece.width === undefined ? zero : absolute(subtract(piece.width.value, part.width.value)),
    );
  const least = found.reduce((best, one) => (compare(off(one), off(best)) < 0 ? one : best));
  const alike = found.filter((one) => compare(off(one), off(least)) === 0);
  const open = alike.find((one) => (taken.get(one) ?? 0) < one.quantity);
  return [open ?? least, alike.every((one) => isAlike(one, least))];
}

function isAlike(a: Wanted, b: Wanted): boolean {
  return (
    a.name === b.name &&
    a.part.stock === b.part.stock &&
    compare(a.part.length.value, b.part.length.value) === 0 &&
    compare(a.part.width.value, b.part.width.value) === 0
  );
}
