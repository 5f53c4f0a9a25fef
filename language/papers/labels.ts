import { exactText, showText } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import type { Item, Point } from "../draw/display-list.ts";
import { corners, line, text } from "../draw/display-list.ts";
import { fitted } from "../draw/letters.ts";
import type { PaperDesk } from "./desk.ts";
import { projectOf } from "./desk.ts";
import type { Block, Page, PaperSize, Papers } from "./page.ts";
import { block } from "./page.ts";
import type { QrSymbol } from "./qr.ts";
import { qrItems, qrSymbol } from "./qr.ts";

/** How labels lie on a sheet: millimetres. */
export interface LabelSheet {
  readonly columns: number;
  readonly rows: number;
  readonly wide: number;
  readonly high: number;
  readonly left: number;
  readonly top: number;
  /** From the left edge of one label to that of the next. */
  readonly across: number;
}

/** Plain sheets: 3 by 8 of 70 by 37 mm on A4; 3 by 10 of 2 5/8 by 1 in on Letter. Common practice, no source. */
export const labelSheets: Readonly<Record<PaperSize["name"], LabelSheet>> = {
  A4: { columns: 3, rows: 8, wide: 70, high: 37, left: 0, top: 0.5, across: 70 },
  Letter: { columns: 3, rows: 10, wide: 66.675, high: 25.4, left: 4.7625, top: 12.7, across: 69.85 },
};

/** More than this many labels are not for a printer in a shop. */
const mostLabels = 3000;

interface Label {
  readonly mark: string;
  readonly part: Part;
  /** Of one mark, from 1. */
  readonly number: number;
  readonly count: number;
}

/** A label for every piece: letter, name, size, face and grain, and the mark as a QR symbol. */
export function labelPapers(desk: PaperDesk, size: PaperSize): Papers {
  const sheet = labelSheets[size.name];
  const labels = labelsOf(desk).slice(0, mostLabels);
  const perPage = sheet.columns * sheet.rows;
  // Pieces of one mark have one symbol.
  const symbols = new Map<string, QrSymbol | undefined>();
  const symbolOf = ({ mark }: Label): QrSymbol | undefined => {
    if (!symbols.has(mark)) symbols.set(mark, qrSymbol(`${projectOf(desk)} / ${mark}`));
    return symbols.get(mark);
  };
  const pages = Array.from({ length: Math.ceil(labels.length / perPage) }, (_, index) => (): Page => {
    const here = labels.slice(index * perPage, (index + 1) * perPage);
    const blocks = here.map((label, place) => labelBlock(desk, label, symbolOf(label), cornerOf(sheet, place), sheet));
    return { wide: size.wide, high: size.high, blocks, furniture: [] };
  });
  return { title: `${projectOf(desk)}: labels`, subject: "Labels for parts", pages, outline: [] };
}

function labelsOf(desk: PaperDesk): readonly Label[] {
  return desk.batches.flatMap((batch) =>
    batch.rows.flatMap((row) => {
      let number = 0;
      return row.parts.flatMap((part) =>
        Array.from({ length: part.quantity }, (): Label => {
          number += 1;
          return { mark: row.mark, part, number, count: row.quantity };
        }),
      );
    }),
  );
}

function cornerOf(sheet: LabelSheet, place: number): Point {
  const column = place % sheet.columns;
  const row = Math.floor(place / sheet.columns);
  return { x: sheet.left + column * sheet.across, y: sheet.top + row * sheet.high };
}

/** Room that most printers leave blank. */
const inner = 4;

function labelBlock(
  desk: PaperDesk,
  label: Label,
  symbol: QrSymbol | undefined,
  corner: Point,
  sheet: LabelSheet,
): Block {
  const { reading, units } = desk.context;
  const { part, mark, number, count } = label;
  const { x, y } = { x: corner.x + inner, y: corner.y + inner };
  const code = Math.min(18, sheet.high - 2 * inner);
  const wide = sheet.wide - 2 * inner - code - 2;
  const size = `${showText(part.length.value, reading)} × ${showText(part.width.value, reading)}`;
  const thick = `${exactText(part.thickness.value, units)} ${part.stock}`;
  const face = part.face === undefined ? "" : `face: ${part.face}`;
  const words = (at: Point, what: string, high: number, bold: "regular" | "bold" = "regular"): Item =>
    text(at, fitted(what, wide, high, bold), { size: high, face: bold });
  return block(
    "P",
    [
      text({ x, y: y + 5 }, mark, { size: 5, face: "bold" }),
      ...grainArrow(part, { x: x + wide - 14, y: y + 0.6 }),
      words({ x, y: y + 8.8 }, `${part.name} · ${part.of}`, 2, "bold"),
      words({ x, y: y + 12.8 }, size, 2.4, "bold"),
      words({ x, y: y + 16.6 }, `${thick}${face === "" ? "" : ` · ${face}`}`, 1.7),
      ...(sheet.high < 30 ? [] : [words({ x, y: y + 20.4 }, `${number} of ${count}`, 1.7)]),
      ...(symbol === undefined ? [] : qrItems(symbol, { x: corner.x + sheet.wide - inner - code, y }, code)),
    ],
    { alt: undefined },
  );
}

/** Length from left to right, the grain's lines, and an arrow along it; plain where it does not matter. */
function grainArrow(part: Part, { x, y }: Point): readonly Item[] {
  const [wide, high] = [12, 4];
  const along = part.grain === "long" ? { x: 1, y: 0 } : { x: 0, y: 1 };
  const area: Item = {
    kind: "area",
    points: corners({ x, y }, { x: x + wide, y: y + high }),
    hatch: undefined,
    along,
    weight: "fine",
  };
  if (part.grain === "none") return [area];
  const middle = { x: x + wide / 2, y: y + high / 2 };
  const reach = part.grain === "long" ? 4.6 : 1.4;
  const tip = { x: middle.x + along.x * reach, y: middle.y - along.y * reach };
  const tail = { x: middle.x - along.x * reach, y: middle.y + along.y * reach };
  const barb = (side: number): Item =>
    line(tip, { x: tip.x - along.x * 1 + along.y * side, y: tip.y + along.y * 1 + along.x * side }, "medium");
  return [area, line(tail, tip, "medium"), barb(0.7), barb(-0.7)];
}
