import { moved } from "../draw/bounds.ts";
import type { Drawing, Item } from "../draw/display-list.ts";
import { corners, letterHeights, line, outline, text } from "../draw/display-list.ts";
import { wrapText } from "../draw/letters.ts";
import type { Block, Piece, Role } from "./page.ts";
import { block, piece } from "./page.ts";

/** Height of a line of text for capitals so high. */
export function lineHigh(size: number): number {
  return size * 1.95;
}

export function heading(words: string, wide: number, role: "H1" | "H2" | "H3" = "H2"): Piece {
  const size = role === "H1" ? letterHeights.title : role === "H2" ? letterHeights.name : letterHeights.size;
  const lines = wrapText(words, wide, size, "bold");
  const before = role === "H1" ? 2 : 4;
  const step = lineHigh(size) * 0.85;
  return piece(
    before + step * lines.length + 1.5,
    ({ x, y }) =>
      block(
        role,
        lines.map((one, index) => text({ x, y: y + before + size + index * step }, one, { size, face: "bold" })),
      ),
    { leads: "next" },
  );
}

export interface Wording {
  readonly size: number;
  readonly face: "regular" | "bold";
  /** From the left. */
  readonly indent: number;
  readonly role: Role;
  readonly within: string | undefined;
}

const plain: Wording = { size: 2.2, face: "regular", indent: 0, role: "P", within: undefined };

export function paragraph(words: string, wide: number, wording: Partial<Wording> = {}): Piece {
  const { size, face, indent, role, within } = { ...plain, ...wording };
  const lines = wrapText(words, wide - indent, size, face);
  const step = lineHigh(size);
  return piece(step * lines.length + 1.4, ({ x, y }) =>
    block(
      role,
      lines.map((one, index) => text({ x: x + indent, y: y + size + 0.6 + index * step }, one, { size, face })),
      { within },
    ),
  );
}

/** A step with a box to tick, its number, and what follows from it. */
export function tickLine(number: string, words: string, wide: number, within: string): Piece {
  const size = 2.3;
  const indent = 14;
  const lines = wrapText(words, wide - indent, size);
  const step = lineHigh(size);
  return piece(step * lines.length + 2, ({ x, y }) =>
    block(
      "LI",
      [
        tickBox(x, y + 0.2),
        text({ x: x + 12, y: y + size + 0.6 }, number, { size, face: "bold", anchor: "end" }),
        ...lines.map((one, index) => text({ x: x + indent, y: y + size + 0.6 + index * step }, one, { size })),
      ],
      { within },
    ),
  );
}

export function tickBox(x: number, y: number, wide = 3): Item {
  return outline(corners({ x, y }, { x: x + wide, y: y + wide }), "fine");
}

export function gap(high: number): Piece {
  return piece(high, () => block("P", []));
}

/** A drawing with its title and scale under it; several go side by side while they fit. */
export function figures(drawings: readonly Drawing[], wide: number): readonly Piece[] {
  const rows: Drawing[][] = [];
  for (const drawing of drawings) {
    const row = rows.at(-1);
    const used = (row ?? []).reduce((sum, one) => sum + shownWide(one, wide) + 6, 0);
    if (row !== undefined && used + shownWide(drawing, wide) <= wide) row.push(drawing);
    else rows.push([drawing]);
  }
  return rows.flatMap((row) => figureRow(row, wide));
}

function shownWide(drawing: Drawing, wide: number): number {
  return Math.min(wide, Math.max(drawing.wide, 44));
}

const captionHigh = 7;

function figureRow(row: readonly Drawing[], wide: number): readonly Piece[] {
  const high = Math.max(...row.map((drawing) => drawing.high)) + captionHigh + 3;
  let offset = 0;
  return row.map((drawing, index) => {
    const left = offset;
    offset += shownWide(drawing, wide) + 6;
    const last = index + 1 === row.length;
    // Those side by side hang on one piece of the flow: the last takes the height.
    return piece(last ? high : 0, ({ x, y }) => figure(drawing, x + left, y, high, shownWide(drawing, wide)), {
      leads: last ? "nothing" : "next",
    });
  });
}

function figure(drawing: Drawing, x: number, y: number, high: number, wide: number): Block {
  const down = high - captionHigh - 3 - drawing.high;
  const by = { x, y: y + down };
  const title = drawing.scale === "" ? drawing.title : `${drawing.title}  (${drawing.scale})`;
  const lines = wrapText(title, wide - 2, 2).slice(0, 2);
  return block(
    "Figure",
    [
      ...drawing.items.map((item) => moved(item, by)),
      ...lines.map((one, index) =>
        text({ x: x + 2, y: y + high - captionHigh + 1 + index * 4 }, one, { size: 2, face: "bold" }),
      ),
    ],
    { alt: `${title}. ${equivalentText(drawing)}` },
  );
}

/** The table of a drawing in sentences. */
export function equivalentText({ equivalent }: Drawing): string {
  return equivalent.rows
    .map((row) =>
      row
        .map((cell, index) => (cell === "" ? "" : `${equivalent.columns[index]} ${cell}`))
        .filter((cell) => cell !== "")
        .join(", "),
    )
    .join("; ");
}

export function rule(x: number, y: number, wide: number): Item {
  return line({ x, y }, { x: x + wide, y }, "hair");
}
