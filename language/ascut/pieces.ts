import type { CutRecord } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Wanted } from "./wanted.ts";

export type Dimension = "length" | "width";

export const dimensions: readonly Dimension[] = ["length", "width"];

/** Pieces of one record that are alike and have one fate. */
export interface Piece {
  readonly record: CutRecord;
  /** What they were made as; missing where nothing in the file is called that. */
  readonly wanted: Wanted | undefined;
  readonly count: number;
  /** As measured; missing where the record says nothing, which means: as derived. */
  readonly length: Sourced<Length> | undefined;
  readonly width: Sourced<Length> | undefined;
  readonly spoiled: boolean;
}

/** The size of a piece along one side: as measured, or else as it is derived. */
export function sizeOf(piece: Piece, wanted: Wanted, dimension: Dimension): Length {
  return (piece[dimension] ?? wanted.part[dimension]).value;
}

/** The thing that a record's part belongs to: `box plan-1`. */
export function ownerOf({ owner, of }: Pick<CutRecord, "owner" | "of">): string {
  return `${owner.text} ${of.text}`;
}

/** Whether a record is of this owner: what spans several openings (`door jars+bins`) goes by the name of any of them. */
export function isOf(record: Pick<CutRecord, "owner" | "of">, of: string): boolean {
  if (of === ownerOf(record)) return true;
  const kind = `${record.owner.text} `;
  return of.includes("+") && of.startsWith(kind) && of.slice(kind.length).split("+").includes(record.of.text);
}

/** An owner as a record can name it: what spans several openings by the first of them. */
export function recordedAs(of: string): string {
  return of.replace(/\+.*$/, "");
}
