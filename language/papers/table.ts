import type { Item, Point } from "../draw/display-list.ts";
import { text } from "../draw/display-list.ts";
import { wrapText } from "../draw/letters.ts";
import type { Block, Piece } from "./page.ts";
import { block, piece } from "./page.ts";
import { lineHigh, rule } from "./pieces.ts";

export interface Column {
  readonly title: string;
  /** Millimetres. */
  readonly wide: number;
  readonly anchor: "start" | "end";
  readonly face: "regular" | "bold";
}

/** Words, or something drawn from the cell's left upper corner and how high it is. */
export type Cell =
  | string
  | { readonly high: number; readonly words: string; readonly items: (at: Point) => readonly Item[] };

export interface Row {
  readonly cells: readonly Cell[];
  /** Lines under the row, over all but the first columns. */
  readonly notes: readonly string[];
}

const size = 2.2;
const noteSize = 1.9;
const between = 3;

export function column(title: string, wide: number, more: Partial<Omit<Column, "title" | "wide">> = {}): Column {
  return { title, wide, anchor: "start", face: "regular", ...more };
}

/** A table as pieces: the head, which comes again on each new page, and one for each row. */
export function tablePieces(name: string, columns: readonly Column[], rows: readonly Row[]): readonly Piece[] {
  const head = headPiece(name, columns);
  return [head, ...rows.map((row) => rowPiece(name, columns, row, head))];
}

function lefts(columns: readonly Column[]): readonly number[] {
  let at = 0;
  return columns.map(({ wide }) => {
    const left = at;
    at += wide + between;
    return left;
  });
}

function wideOf(columns: readonly Column[]): number {
  return columns.reduce((sum, one) => sum + one.wide + between, -between);
}

function headPiece(name: string, columns: readonly Column[]): Piece {
  const places = lefts(columns);
  return piece(
    6,
    ({ x, y }) =>
      block("TR", [rule(x, y + 5, wideOf(columns))], {
        within: name,
        blocks: columns.map((one, index) =>
          block("TH", [
            text({ x: x + places[index]! + (one.anchor === "end" ? one.wide : 0), y: y + 3.6 }, one.title, {
              size: noteSize,
              anchor: one.anchor,
            }),
          ]),
        ),
      }),
    { leads: "next" },
  );
}

function rowPiece(name: string, columns: readonly Column[], row: Row, head: Piece): Piece {
  const places = lefts(columns);
  const step = lineHigh(size);
  const lines = columns.map((one, index) => {
    const cell = row.cells[index] ?? "";
    return typeof cell === "string" ? wrapText(cell, one.wide, size, one.face) : [];
  });
  const cellHigh = Math.max(
    ...lines.map((one) => one.length * step),
    ...row.cells.map((cell) => (typeof cell === "string" ? 0 : cell.high)),
  );
  const indent = places[2] ?? 0;
  const notes = row.notes.flatMap((note) => wrapText(note, wideOf(columns) - indent, noteSize));
  const noteStep = lineHigh(noteSize);
  const high = cellHigh + notes.length * noteStep + 1.8;
  return piece(
    high,
    ({ x, y }) =>
      block("TR", [rule(x, y + high - 0.4, wideOf(columns))], {
        within: name,
        blocks: columns.map((one, index) =>
          cellBlock(one, row.cells[index] ?? "", lines[index]!, { x: x + places[index]!, y: y + 0.8 }, [
            ...(index === columns.length - 1
              ? notes.map((note, line) =>
                  text({ x: x + indent, y: y + cellHigh + noteSize + 1.3 + line * noteStep }, note, { size: noteSize }),
                )
              : []),
          ]),
        ),
      }),
    { again: head },
  );
}

function cellBlock(one: Column, cell: Cell, lines: readonly string[], at: Point, notes: readonly Item[]): Block {
  if (typeof cell !== "string") return block("TD", [...cell.items(at), ...notes], { alt: cell.words });
  const x = one.anchor === "end" ? at.x + one.wide : at.x;
  const items = lines.map((words, index) =>
    text({ x, y: at.y + size + 0.4 + index * lineHigh(size) }, words, { size, anchor: one.anchor, face: one.face }),
  );
  return block("TD", [...items, ...notes]);
}
