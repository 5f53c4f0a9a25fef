import type { RodTable, RodView } from "../../../../language/view/types.ts";
import { tableRowId } from "../../messages.ts";
import { el, type Kept, keepChildren, setText, unbroken } from "../dom.ts";
import type { Section, SectionHost } from "../section.ts";
import { createRowWalk } from "./row-walk.ts";

/** The further lists, such as the boxes and the hardware, each as a table under its own heading. */
export function createTables(host: SectionHost, startRow: string): Section {
  const element = el("div");
  const keepTables = keepChildren<RodTable>(
    element,
    (table) => table.id,
    (table) => createTable(table.id, host, startRow, "h2"),
  );
  return {
    element,
    update: (view: RodView) => {
      element.hidden = false;
      keepTables(view.tables.filter((table) => 0 < table.rows.length));
    },
    hide: () => {
      element.hidden = true;
    },
  };
}

type Line = RodTable["rows"][number] & { readonly id: string; readonly columns: RodTable["columns"] };

/** A table under a heading of its own, whose rows can be walked. */
export function createTable(
  id: string,
  host: SectionHost,
  startRow: string,
  heading: "h2" | "h3",
): Kept<Omit<RodTable, "id">> {
  const titleId = `table-title-${id}`;
  const title = el(heading, { id: titleId, class: "stock" });
  const note = el("p", { class: "stock-note" });
  const heads = el("tr");
  const body = el("tbody");
  const table = el(
    "table",
    { id: `table-${id}`, class: "plain", role: "grid", "aria-readonly": "true", "aria-labelledby": titleId },
    el("thead", {}, heads),
    body,
  );
  const element = el("section", { class: "further", "aria-labelledby": titleId }, title, table, note);
  const walk = createRowWalk(table, host, startRow);
  const keepLines = keepChildren<Line>(
    body,
    (line) => line.id,
    () => {
      const row = el("tr", { tabindex: "-1" });
      return {
        element: row,
        update: (line) => {
          walk.know(row, { id: line.id, explanation: undefined });
          row.classList.toggle("leads", line.target !== undefined);
          row.replaceChildren(
            ...line.cells.map((cell, index) => el("td", alignment(line.columns[index]), ...unbroken(cell))),
          );
        },
      };
    },
  );
  return {
    element,
    update: ({ title: text, columns, rows, note: below }) => {
      setText(title, text);
      setText(note, below);
      note.hidden = below === "";
      heads.replaceChildren(...columns.map((column) => el("th", { ...alignment(column), scope: "col" }, column.title)));
      walk.change(() => keepLines(rows.map((row, index) => ({ ...row, id: tableRowId(id, index), columns }))));
    },
  };
}

function alignment(column: RodTable["columns"][number] | undefined): Readonly<Record<string, string>> {
  return column?.align === "right" ? { class: "figures" } : {};
}
