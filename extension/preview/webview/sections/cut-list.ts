import type { RodBatch, RodView } from "../../../../language/view/types.ts";
import { el, type Kept, keepChildren, setText } from "../dom.ts";
import type { Section, SectionHost } from "../section.ts";
import { splitSize } from "../size.ts";
import { createRow } from "./cut-list-row.ts";
import { createRowWalk, type RowWalk } from "./row-walk.ts";

const HEADINGS = ["Mark", "No.", "Part", "Of", "Length", "Width", "Thickness", "Grain", "Notes"];
const SIZES = ["length", "width", "thickness"] as const;

/** The cut list as one table with a body for each stock; its rows can be walked, beginning at the row given. */
export function createCutList(host: SectionHost, startRow: string): Section {
  const title = el("h2", { id: "cut-list-title", class: "unseen" }, "Cut list");
  const head = el("thead", {}, el("tr", {}, ...HEADINGS.map(heading)));
  const grid = { role: "grid", "aria-readonly": "true", "aria-labelledby": "cut-list-title" };
  const table = el("table", { id: "cut-list", ...grid }, head);
  const element = el("section", { class: "cut-list", "aria-labelledby": "cut-list-title" }, title, table);
  const walk = createRowWalk(table, host, startRow);
  const keepBatches = keepChildren<RodBatch>(
    table,
    (batch) => batch.stock,
    () => createBatch(walk),
    head,
  );
  element.hidden = true;
  return {
    element,
    update: (view) => {
      element.hidden = view.batches.length === 0;
      walk.change(() => keepBatches(view.batches));
      alignSizes(table, view);
    },
    hide: () => {
      element.hidden = true;
    },
  };
}

function heading(text: string): HTMLElement {
  return el("th", { scope: "col", class: `col-${text.toLowerCase().replace(/[^a-z]/g, "")}` }, text);
}

function createBatch(walk: RowWalk): Kept<RodBatch> {
  const stock = el("span", { class: "stock" });
  const note = el("span", { class: "stock-note" });
  const sum = el("span", { class: "stock-sum" });
  const label = el("div", { class: "batch-label" }, stock, " ", note, " ", sum);
  const first = el("tr", { class: "batch" }, el("th", { scope: "rowgroup", colspan: String(HEADINGS.length) }, label));
  const element = el("tbody", {}, first);
  const keepRows = keepChildren(
    element,
    (row) => row.id,
    () => createRow(walk),
    first,
  );
  return {
    element,
    update: (batch) => {
      const pieces = batch.rows.reduce((total, row) => total + row.quantity, 0);
      setText(stock, batch.stock);
      setText(note, batch.note);
      setText(sum, pieces === 1 ? "1 piece" : `${pieces} pieces`);
      keepRows(batch.rows);
    },
  };
}

/** Tells the style sheet how wide, in figures, the two halves of the sizes in each column are. */
function alignSizes(table: HTMLElement, view: RodView): void {
  const rows = view.batches.flatMap((batch) => batch.rows);
  for (const size of SIZES) {
    const halves = rows.map((row) => splitSize(row[size]));
    for (const half of ["whole", "rest"] as const) {
      const width = Math.max(0, ...halves.map((split) => split[half].length));
      table.style.setProperty(`--${size}-${half}`, `${width}ch`);
    }
  }
}
