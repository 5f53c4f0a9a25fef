import type { RodView } from "./types.ts";

/** The cut list as Markdown, one table for each stock. */
export function markdownOf(view: RodView): string {
  const lines = [
    `# ${plain(view.title)}`,
    "",
    `${view.pieces} pieces. Sizes in ${view.units}, read to ${view.reading}.`,
    "",
  ];
  if (0 < view.counts.errors)
    lines.push(`**${view.counts.errors} errors stand in the build file: this list is not complete or not right.**`, "");
  for (const batch of view.batches) {
    lines.push(`## ${plain(batch.stock)}`, "", `${plain(batch.note)}`, "");
    lines.push(
      "| mark | pieces | part | of | length | width | thick | grain | notes |",
      "|---|--:|---|---|--:|--:|--:|---|---|",
    );
    for (const row of batch.rows) {
      const cells = [
        row.mark,
        String(row.quantity),
        row.name,
        row.of,
        row.length,
        row.width,
        row.thickness,
        row.grain,
        row.notes.join("; "),
      ];
      lines.push(`| ${cells.map(plain).join(" | ")} |`);
    }
    lines.push("");
  }
  for (const table of view.tables) {
    lines.push(`## ${table.title}`, "", `| ${table.columns.map((column) => column.title).join(" | ")} |`);
    lines.push(`|${table.columns.map((column) => (column.align === "right" ? "--:" : "---")).join("|")}|`);
    for (const row of table.rows) lines.push(`| ${row.cells.map(plain).join(" | ")} |`);
    lines.push("", table.note, "");
  }
  for (const note of view.notes) lines.push(note, "");
  return `${lines.join("\n").trimEnd()}\n`;
}

/** Names are text: whatever could be read as markup is written so that it is not. */
function plain(text: string): string {
  return text.replace(/[\\`*_{}[\]<>#|~]/g, (sign) => `\\${sign}`).replace(/\s+/g, " ");
}
