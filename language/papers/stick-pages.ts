import { showText } from "../core/length.ts";
import { boundsOf, moved } from "../draw/bounds.ts";
import { millimetres } from "../draw/desk.ts";
import type { Item } from "../draw/display-list.ts";
import { letterHeights, line, text } from "../draw/display-list.ts";
import { stickWindow } from "../draw/stick-drawing.ts";
import type { Stick } from "../draw/sticks.ts";
import type { PaperDesk } from "./desk.ts";
import { layoutOf } from "./desk.ts";
import type { Section } from "./flow.ts";
import { margins, pagesOf } from "./flow.ts";
import type { PaperSize, Papers, Piece } from "./page.ts";
import { block, lyingDown, piece } from "./page.ts";
import { heading, paragraph } from "./pieces.ts";
import { checkBar } from "./ruler.ts";
import type { Row } from "./table.ts";
import { column, tablePieces } from "./table.ts";

/** The marks of every stick as running sizes, for those who carry them over with a tape. */
export function stickSection(desk: PaperDesk, sticks: readonly Stick[], wide: number): Section {
  const { reading } = desk.context;
  const columns = [column("from the end", 30, { anchor: "end", face: "bold" }), column("mark", wide - 33)];
  return {
    title: "Story sticks",
    begins: "new page",
    pieces: sticks.flatMap((stick) => [
      heading(`Story stick, ${stick.title}`, wide, "H3"),
      paragraph(
        `From ${stick.from}. Mark it once on a straight strip, and carry it to every piece, front and back.`,
        wide,
      ),
      ...tablePieces(
        stick.id,
        columns,
        stick.marks.map((mark): Row => ({ cells: [showText(mark.at, reading), mark.what.join(", ")], notes: [] })),
      ),
    ]),
  };
}

/** How much of a stick two pages share, so that they can be laid over one another. */
const overlap = 10;

/** Every stick at full size on sheets lying down, to be joined at their marks. Each page carries a bar to check the scale by. */
export function stickPapers(desk: PaperDesk, sticks: readonly Stick[], size: PaperSize): Papers {
  const lying = lyingDown(size);
  const wide = lying.wide - margins.left - margins.right;
  const sections = sticks.map((stick): Section => {
    const tiles = tilesOf(millimetres(stick.marks.at(-1)!.at), wide);
    return {
      title: `Story stick, ${stick.title}, full size`,
      begins: "new page",
      pieces: [barPiece(desk), ...tiles.flatMap((tile, index) => tilePieces(desk, stick, tile, index, tiles.length))],
    };
  });
  return pagesOf(layoutOf(desk, lying, "Story sticks at full size"), sections);
}

interface Tile {
  readonly from: number;
  readonly to: number;
}

/** Stretches that overlap, the last one as long as is left. */
export function tilesOf(long: number, wide: number): readonly Tile[] {
  const tiles: Tile[] = [];
  for (let from = 0; tiles.length === 0 || from + overlap < long; from += wide - overlap) {
    tiles.push({ from, to: Math.min(long, from + wide) });
  }
  return tiles;
}

function barPiece(desk: PaperDesk): Piece {
  const bar = piece(11, (place) => block("P", checkBar(desk.context.units, { x: place.x, y: place.y + 1 })));
  return { ...bar, leads: "next" };
}

function tilePieces(desk: PaperDesk, stick: Stick, tile: Tile, index: number, count: number): readonly Piece[] {
  const items = stickWindow(desk, stick, tile);
  const bounds = boundsOf(items)!;
  const above = Math.max(24, -bounds.top);
  const high = above + 26;
  const words = `Sheet ${index + 1} of ${count}, from ${stick.from}`;
  const alt = `Story stick at full size, ${stick.title}, ${words}`;
  return [
    {
      ...piece(high, ({ x, y }) =>
        block(
          "Figure",
          [
            ...items.map((item) => moved(item, { x: x - tile.from, y: y + above })),
            ...joins(tile, index, count).map((item) => moved(item, { x, y: y + above })),
            text({ x: x + 24, y: y + above + 20.5 }, words, { size: letterHeights.note }),
          ],
          { alt },
        ),
      ),
      again: barPiece(desk),
    },
  ];
}

/** Where the next sheet is laid on: a chain line through the middle of what both show, with the number of the join. */
function joins(tile: Tile, index: number, count: number): readonly Item[] {
  const at = (x: number, number: number): readonly Item[] => [
    line({ x, y: -3 }, { x, y: 17 }, "fine", "chain"),
    text({ x, y: 20.5 }, `join ${number}`, { size: letterHeights.note, anchor: "middle" }),
  ];
  return [
    ...(index === 0 ? [] : at(overlap / 2, index)),
    ...(index + 1 === count ? [] : at(tile.to - tile.from - overlap / 2, index + 1)),
  ];
}
