import type { Item, Point } from "../draw/display-list.ts";

/** Sizes in millimetres, upright. */
export interface PaperSize {
  readonly name: "A4" | "Letter";
  readonly wide: number;
  readonly high: number;
}

/** ISO 216, and the American letter of 8 1/2 by 11 in. */
export const paperSizes: Readonly<Record<PaperSize["name"], PaperSize>> = {
  A4: { name: "A4", wide: 210, high: 297 },
  Letter: { name: "Letter", wide: 215.9, high: 279.4 },
};

export function lyingDown(size: PaperSize): PaperSize {
  return { name: size.name, wide: size.high, high: size.wide };
}

/** What a stretch of a page is to those who have it read to them; names as in PDF's standard structure types. */
export type Role = "H1" | "H2" | "H3" | "P" | "Figure" | "TH" | "TD" | "TR" | "LI";

/** Something on a page that is read as one, in the order of the page's list. */
export interface Block {
  readonly role: Role;
  /** The words for a figure. */
  readonly alt: string | undefined;
  /** Blocks that follow one another with the same `within` are one table or one list. */
  readonly within: string | undefined;
  readonly items: readonly Item[];
  /** The cells of a row. */
  readonly blocks: readonly Block[];
}

/** One page: its blocks in reading order, and what is printed on it that is not read. */
export interface Page {
  readonly wide: number;
  readonly high: number;
  readonly blocks: readonly Block[];
  readonly furniture: readonly Item[];
}

/** Pages with their title. The same papers always give the same file. */
export interface Papers {
  readonly title: string;
  readonly subject: string;
  /** Each made when it is asked for, and the same each time: all at once, thousands would be more than is good to hold. */
  readonly pages: readonly (() => Page)[];
  /** The first page of each part, for the reader's list of contents. */
  readonly outline: readonly { readonly title: string; readonly page: number }[];
}

/** A piece of the flow: how high it is, and what it comes to at its place. */
export interface Piece {
  readonly high: number;
  readonly at: (place: Point, page: number) => Block;
  /** Not to be the last on a page. */
  readonly leads: "next" | "nothing";
  /** What stands again at the top where the flow goes on to a new page. */
  readonly again: Piece | undefined;
}

export function block(role: Role, items: readonly Item[], more: Partial<Omit<Block, "role" | "items">> = {}): Block {
  return { role, alt: undefined, within: undefined, blocks: [], items, ...more };
}

export function piece(
  high: number,
  at: (place: Point, page: number) => Block,
  more: Partial<Omit<Piece, "high" | "at">> = {},
): Piece {
  return { high, at, leads: "nothing", again: undefined, ...more };
}
