import { exactText, showText } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import type { Item, Point } from "../draw/display-list.ts";
import { corners } from "../draw/display-list.ts";
import type { CutRow } from "../plan/cut-list.ts";
import { notesOf } from "../view/machining.ts";
import { ownersText } from "../view/owners.ts";
import type { PaperDesk } from "./desk.ts";
import type { Section } from "./flow.ts";
import { heading, paragraph, tickBox } from "./pieces.ts";
import type { Cell, Row } from "./table.ts";
import { column, tablePieces } from "./table.ts";

/** The cut list with a box to tick for every piece. */
export function cutListSection(desk: PaperDesk, wide: number): Section {
  const { reading, units } = desk.context;
  const columns = [
    column("mark", 11, { face: "bold" }),
    column("cut", 18),
    column("pieces", 10, { anchor: "end" }),
    column("length", 24, { anchor: "end", face: "bold" }),
    column("width", 24, { anchor: "end", face: "bold" }),
    column("grain", 13),
    column("part", Math.max(30, wide - 118)),
  ];
  if (desk.batches.length === 0) return { title: "Cut list", begins: "behind", pieces: [] };
  return {
    title: "Cut list",
    begins: "new page",
    pieces: [
      heading("Cut list", wide),
      ...desk.batches.flatMap((batch) => {
        const thick = batch.rows[0]?.parts[0]?.thickness.value;
        const size = thick === undefined ? "" : ` · ${exactText(thick, units)} thick`;
        const rows = batch.rows.map((row): Row => {
          const part = row.parts[0]!;
          return {
            cells: [
              row.mark,
              ticks(row.quantity),
              String(row.quantity),
              showText(part.length.value, reading),
              showText(part.width.value, reading),
              grainCell(part),
              partWords(row),
            ],
            notes: notesOf(part, reading),
          };
        });
        return [heading(`${batch.stock}${size}`, wide, "H3"), ...tablePieces(`cut ${batch.stock}`, columns, rows)];
      }),
    ],
  };
}

function partWords(row: CutRow): string {
  const names = [...new Set(row.parts.map((part) => part.name))].join(", ");
  return `${names} · ${ownersText(row.parts.map((part) => part.of))}`;
}

/** One box for each piece, four to a line; many are counted by hand. */
function ticks(count: number): Cell {
  const shown = Math.min(count, 16);
  const lines = Math.ceil(shown / 4);
  return {
    high: lines * 4.4,
    words: `${count} to cut`,
    items: ({ x, y }: Point): readonly Item[] =>
      Array.from({ length: shown }, (_, index) =>
        tickBox(x + (index % 4) * 4.4, y + 0.2 + Math.floor(index / 4) * 4.4),
      ),
  };
}

/** A piece lying with its length from left to right, and its grain. */
function grainCell(part: Part): Cell {
  const along: Point | undefined =
    part.grain === "long" ? { x: 1, y: 0 } : part.grain === "across" ? { x: 0, y: 1 } : undefined;
  return {
    high: 4.4,
    words: part.grain === "long" ? "along" : part.grain === "across" ? "across" : "any",
    items: ({ x, y }: Point): readonly Item[] => [
      {
        kind: "area",
        points: corners({ x, y: y + 0.2 }, { x: x + 11, y: y + 3.6 }),
        hatch: along === undefined ? undefined : "grain",
        along: along ?? { x: 1, y: 0 },
        weight: "fine",
      },
    ],
  };
}

/** What to have at hand that is not cut. */
export function hardwareSection(desk: PaperDesk, wide: number): Section {
  const columns = [
    column("have", 9),
    column("how many", 22, { anchor: "end", face: "bold" }),
    column("what", 34, { face: "bold" }),
    column("size", 38),
    column("for", Math.max(30, wide - 115)),
  ];
  const rows = desk.model.hardware.map(
    (item): Row => ({
      cells: [
        { high: 4.4, words: "to tick", items: ({ x, y }) => [tickBox(x, y + 0.2)] },
        `${item.quantity} ${item.quantity === 1 ? item.unit : plural(item.unit)}`,
        item.name,
        item.size,
        ownersText(item.owners),
      ],
      notes: [item.because],
    }),
  );
  if (rows.length === 0) return { title: "Hardware", begins: "behind", pieces: [] };
  return {
    title: "Hardware",
    begins: "behind",
    pieces: [
      heading("Hardware", wide),
      paragraph("Counts are what is usual; buy a few screws over.", wide),
      ...tablePieces("hardware", columns, rows),
    ],
  };
}

function plural(unit: string): string {
  return unit === "foot" ? "feet" : `${unit}s`;
}
