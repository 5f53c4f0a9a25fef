import { decimalText, showText, toMillimetres } from "../core/length.ts";
import type { Context } from "../derive/context.ts";
import type { CutBatch } from "../plan/cut-list.ts";
import { notesOf } from "./machining.ts";
import { ownersText } from "./owners.ts";
import { grainText } from "./rod.ts";

const heads = [
  "mark",
  "quantity",
  "part",
  "of",
  "stock",
  "length",
  "width",
  "thickness",
  "length in",
  "width in",
  "thickness in",
  "length mm",
  "width mm",
  "thickness mm",
  "grain",
  "face",
  "notes",
];

/** The cut list as RFC 4180 text: shop sizes for the bench, decimals for programs. */
export function csvOf(context: Context, batches: readonly CutBatch[]): string {
  const rows = batches.flatMap((batch) =>
    batch.rows.map((row): readonly string[] => {
      const part = row.parts[0]!;
      const sizes = [part.length.value, part.width.value, part.thickness.value];
      return [
        row.mark,
        String(row.quantity),
        textCell([...new Set(row.parts.map((one) => one.name))].join(", ")),
        textCell(ownersText(row.parts.map((one) => one.of))),
        textCell(part.stock),
        ...sizes.map((size) => textCell(showText(size, context.reading))),
        ...sizes.map((size) => decimalText(size, 4)),
        ...sizes.map((size) => decimalText(toMillimetres(size), 2)),
        grainText(part),
        textCell(part.face ?? ""),
        textCell(notesOf(part, context.reading).join("; ")),
      ];
    }),
  );
  return [heads, ...rows].map((row) => `${row.map(quoted).join(",")}\r\n`).join("");
}

/** Text that a spreadsheet would take for a formula is kept from being one. */
function textCell(text: string): string {
  return /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
}

function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
