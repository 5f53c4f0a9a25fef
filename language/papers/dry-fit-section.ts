import type { BenchTable } from "../view/bench.ts";
import { fitPart } from "./bench/fit.ts";
import type { PaperDesk } from "./desk.ts";
import type { Section } from "./flow.ts";
import type { Piece } from "./page.ts";
import { heading, paragraph } from "./pieces.ts";
import type { Column } from "./table.ts";
import { column, tablePieces } from "./table.ts";

/** What putting the piece together in software showed, for who puts it together in wood: the same as on the rod. */
export function dryFitSection(desk: PaperDesk, wide: number): Section {
  if (desk.batches.length === 0) return { title: "Dry fit", begins: "behind", pieces: [] };
  const { notes, tables, cautions } = fitPart(desk);
  return {
    title: "Dry fit",
    begins: "behind",
    pieces: [
      heading("Dry fit", wide),
      ...notes.map((note) => paragraph(note, wide)),
      ...tables.flatMap((table) => tablePart(table, wide)),
      ...cautions.map((caution) => paragraph(caution, wide, { indent: 4, role: "LI", within: "cautions dry fit" })),
    ],
  };
}

function tablePart(table: BenchTable, wide: number): readonly Piece[] {
  const rows = table.rows.map(({ cells }) => ({ cells, notes: [] }));
  return [
    heading(table.title, wide, "H3"),
    ...tablePieces(table.id, columnsFor(table, wide), rows),
    ...(table.note === "" ? [] : [paragraph(table.note, wide)]),
  ];
}

/** Figures have a column as wide as they need; words share the rest by how long they are. */
function columnsFor({ columns, rows }: BenchTable, wide: number): readonly Column[] {
  const [between, figure] = [3, 26];
  const longest = columns.map(({ title }, index) =>
    Math.min(60, Math.max(title.length, 11, ...rows.map(({ cells }) => cells[index]?.length ?? 0))),
  );
  const words = columns.map(({ align }, index) => (align === "right" ? 0 : longest[index]!));
  const figures = words.filter((share) => share === 0).length;
  const rest = wide - between * (columns.length - 1) - figure * figures;
  const shares = words.reduce((sum, share) => sum + share, 0);
  return columns.map(({ title }, index) => {
    const share = words[index]!;
    return share === 0 ? column(title, figure, { anchor: "end" }) : column(title, (rest * share) / shares);
  });
}
