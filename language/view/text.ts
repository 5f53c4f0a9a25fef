import type { RodRow, RodView } from "./types.ts";

const wide = 80;

/** The cut list for a terminal: never wider than 80 columns. */
export function textOf(view: RodView): string {
  const head = [...wrapped(view.title, wide), `${view.pieces} pieces; sizes in ${view.units}, read to ${view.reading}`];
  const batches = view.batches.flatMap((batch) => [
    "",
    ...wrapped(`${batch.stock} · ${batch.note}`, wide),
    ...batchLines(batch.rows),
  ]);
  const notes = view.notes.flatMap((note) => ["", ...wrapped(note, wide)]);
  return `${[...head, ...batches, ...notes].join("\n")}\n`;
}

function batchLines(rows: readonly RodRow[]): readonly string[] {
  const size = (row: RodRow): string => `${row.length} × ${row.width}`;
  const lengths = Math.max(6, ...rows.map((row) => row.length.length));
  const widths = Math.max(5, ...rows.map((row) => row.width.length));
  const before = `${"mark".padEnd(4)}  ${"pcs".padStart(3)}  ${"length".padEnd(lengths)}  ${"width".padEnd(widths)}  `;
  const lines = [`${before}part`];
  for (const row of rows) {
    const start = `${row.mark.padEnd(4)}  ${String(row.quantity).padStart(3)}  ${row.length.padEnd(lengths)}  ${row.width.padEnd(widths)}  `;
    const room = Math.max(20, wide - start.length);
    const [first = "", ...rest] = [`${row.name} · ${row.of}`, ...row.notes].flatMap((text, index) =>
      wrapped(index === 0 ? text : `– ${text}`, room),
    );
    lines.push(`${start}${first}`.slice(0, Math.max(wide, size(row).length)));
    for (const line of rest) lines.push(`${" ".repeat(start.length)}${line}`);
  }
  return lines;
}

/** Breaks at spaces; a word longer than the line is cut. */
export function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/)) {
    for (let rest = word; rest !== ""; rest = rest.slice(width)) {
      const piece = rest.slice(0, width);
      if (line === "") line = piece;
      else if (line.length + 1 + piece.length <= width) line = `${line} ${piece}`;
      else {
        lines.push(line);
        line = piece;
      }
    }
  }
  if (line !== "" || lines.length === 0) lines.push(line);
  return lines;
}
