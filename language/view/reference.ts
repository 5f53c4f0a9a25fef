import { decimalText, exactText, toMillimetres } from "../core/length.ts";
import { vocabulary } from "../core/vocabulary.ts";
import { defaults } from "../derive/defaults.ts";

/** The sections of the language reference that are made from the tables, by the name of their marker. */
export function referenceSections(): Readonly<Record<"blocks" | "defaults", string>> {
  return { blocks: blocks(), defaults: defaultsTable() };
}

/** The text with everything between each `<!-- name -->` and `<!-- /name -->` replaced by its section. */
export function withSections(text: string): string {
  return Object.entries(referenceSections()).reduce((whole, [name, section]) => {
    const [from, to] = [`<!-- ${name} -->`, `<!-- /${name} -->`];
    const [start, end] = [whole.indexOf(from), whole.indexOf(to)];
    if (start < 0 || end < start) return whole;
    return `${whole.slice(0, start + from.length)}\n\n${section}\n${whole.slice(end)}`;
  }, text);
}

function blocks(): string {
  return Object.entries(vocabulary)
    .map(([block, entry]) => {
      const rows = Object.values(entry.properties).map(
        (property) => `| \`${cell(property.form)}\` | ${cell(property.means)} |`,
      );
      const table = rows.length === 0 ? [] : ["", "| written | means |", "|---|---|", ...rows];
      return [`### ${block}`, "", `\`${entry.form}\` gives ${entry.gives}.`, ...table, ""].join("\n");
    })
    .join("\n");
}

function defaultsTable(): string {
  const rows = Object.entries(defaults).map(([key, entry]) => {
    const source = "source" in entry ? ` (${entry.source})` : "";
    const inches = exactText(entry.value, "inches");
    const millimetres = decimalText(toMillimetres(entry.value), 2);
    return `| \`${key}\` | ${inches} in | ${millimetres} mm | ${entry.tag} | ${cell(`${entry.because}${source}`)} |`;
  });
  return ["| what | inches | millimetres | standing | reason |", "|---|--:|--:|---|---|", ...rows, ""].join("\n");
}

function cell(text: string): string {
  return text.replaceAll("|", "\\|");
}
