import type { RodRow, RodTable, RodView } from "./types.ts";

const wide = 80;

/** The cut list for a terminal: never wider than 80 columns. */
export function textOf(view: RodView): string {
  const head = [...wrapped(view.title, wide), `${view.pieces} pieces; sizes in ${view.units}, read to ${view.reading}`];
  const batches = view.batches.flatMap((batch) => [
    "",
    ...wrapped(`${batch.stock} · ${batch.note}`, wide),
    ...batchLines(batch.rows),
  ]);
  const tables = view.tables.flatMap((table) => ["", table.title, ...tableLines(table), ...wrapped(table.note, wide)]);
  const notes = view.notes.flatMap((note) => ["", ...wrapped(note, wide)]);
  return `${[...head, ...batches, ...tables, ...notes].join("\n")}\n`;
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

/** One record after another where the columns side by side would be too wide. */
function tableLines(table: RodTable): readonly string[] {
  const widths = table.columns.map((column, index) =>
    Math.max(column.title.length, ...table.rows.map((row) => row.cells[index]!.length)),
  );
  const across = widths.reduce((sum, width) => sum + width + 2, -2);
  if (across <= wide) {
    const line = (cells: readonly string[]): string =>
      cells
        .map((cell, index) =>
          table.columns[index]!.align === "right" ? cell.padStart(widths[index]!) : cell.padEnd(widths[index]!),
        )
        .join("  ")
        .trimEnd();
    return [line(table.columns.map((column) => column.title)), ...table.rows.map((row) => line(row.cells))];
  }
  return table.rows.flatMap((row) => {
    const [name = "", ...rest] = row.cells;
    const detail = rest
      .map((cell, index) => (cell === "" ? "" : `${leadFor(table.columns[index + 1]!.title)}${cell}`))
      .filter((text) => text !== "");
    return wrapped(`${name}: ${detail.join("; ")}`, wide - 4).map((text, index) =>
      index === 0 ? text : `    ${text}`,
    );
  });
}

/** Some columns speak for themselves. */
function leadFor(title: string): string {
  return title === "what" || title === "size" ? "" : `${title} `;
}

/** A whole number with the fraction behind it, and that with the sign that it is a little less. */
const inOneFigure = /(?<=\d)\s(?=\d+\/\d)|(?<=\d)\s(?=−)/g;
const unbroken = "\u2060";

/** Breaks at spaces, but not within a figure as the tape reads it; a word longer than the line is cut. */
export function wrapped(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.replace(inOneFigure, unbroken).split(/\s+/)) {
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
  return lines.map((one) => one.replaceAll(unbroken, " "));
}
