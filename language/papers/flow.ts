import type { Item } from "../draw/display-list.ts";
import { letterHeights, line, text } from "../draw/display-list.ts";
import { fitted } from "../draw/letters.ts";
import type { Block, Page, PaperSize, Papers, Piece } from "./page.ts";
import { rulerEdge } from "./ruler.ts";

/** A part of the papers, beginning on a page of its own or behind the one before. */
export interface Section {
  readonly title: string;
  readonly begins: "new page" | "behind";
  readonly pieces: readonly Piece[];
}

export interface Layout {
  readonly size: PaperSize;
  readonly title: string;
  readonly subject: string;
  /** Printed at the foot of every page: `sizes in inches, read to 1/32 in`. */
  readonly foot: string;
  readonly units: "inches" | "millimetres";
}

/** Margins in millimetres; the left one leaves room for a punch. */
export const margins = { left: 18, right: 14, top: 22, bottom: 16 } as const;

export function textWide(size: PaperSize): number {
  return size.wide - margins.left - margins.right;
}

export function textHigh(size: PaperSize): number {
  return size.high - margins.top - margins.bottom;
}

/** Pieces laid on pages one under the other, in order; none is cut, and a heading is never the last on its page. */
export function pagesOf(layout: Layout, sections: readonly Section[]): Papers {
  const used = sections.filter((section) => 0 < section.pieces.length);
  const sheets: { readonly blocks: (() => Block)[]; readonly title: string }[] = [];
  const outline: { title: string; page: number }[] = [];
  const bottom = layout.size.high - margins.bottom;
  let y: number = margins.top;
  const open = (title: string): void => {
    sheets.push({ blocks: [], title });
    y = margins.top;
  };
  const put = (one: Piece): void => {
    const [place, page] = [{ x: margins.left, y }, sheets.length - 1];
    sheets[page]!.blocks.push(() => one.at(place, page));
    y += one.high;
  };
  for (const section of used) {
    if (sheets.length === 0 || section.begins === "new page") open(section.title);
    section.pieces.forEach((one, index) => {
      // What is higher than a page would not fit the next one either.
      if (bottom < y + needed(section.pieces, index) && margins.top < y) {
        open(section.title);
        if (one.again !== undefined) put(one.again);
      }
      if (index === 0) outline.push({ title: section.title, page: sheets.length - 1 });
      put(one);
    });
  }
  const pages = sheets.map(({ blocks, title }, index) => (): Page => {
    const made = blocks.map((one) => one());
    return pageOf(layout, made, title, index + 1, sheets.length);
  });
  return { title: layout.title, subject: layout.subject, pages, outline };
}

/** The height of a piece with all that it leads. */
function needed(pieces: readonly Piece[], index: number): number {
  const one = pieces[index]!;
  if (one.leads === "nothing" || index + 1 === pieces.length) return one.high;
  return one.high + needed(pieces, index + 1);
}

function pageOf(layout: Layout, blocks: readonly Block[], section: string, number: number, count: number): Page {
  const { wide, high } = layout.size;
  const right = wide - margins.right;
  const middle = (margins.left + right) / 2;
  const base = high - margins.bottom + 8;
  const small = letterHeights.note;
  const furniture: Item[] = [
    ...rulerEdge(layout.units, { x: margins.left, y: 11 }, right - margins.left),
    text({ x: margins.left, y: 8.5 }, fitted(layout.title, middle - margins.left, small, "bold"), {
      size: small,
      face: "bold",
    }),
    text({ x: right, y: 8.5 }, fitted(section, right - middle - 4, small), { size: small, anchor: "end" }),
    line({ x: margins.left, y: base - 4.5 }, { x: right, y: base - 4.5 }, "hair"),
    text({ x: margins.left, y: base }, layout.foot, { size: small }),
    text({ x: right, y: base }, `${number} of ${count}`, { size: small, anchor: "end" }),
  ];
  return { wide, high, blocks, furniture };
}

/** A length as exact millimetres are written in a foot line. */
export function footOf(units: "inches" | "millimetres", reading: string): string {
  return `Sizes in ${units}, read to ${reading}. A size with − behind it is a hair over what is shown.`;
}
