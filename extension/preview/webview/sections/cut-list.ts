import type { RodBatch, RodRow, RodView } from "../../../../language/view/types.ts";
import { el, type Kept, keepChildren, setText } from "../dom.ts";
import type { Section, SectionHost } from "../section.ts";
import { splitSize } from "../size.ts";
import { createRow } from "./cut-list-row.ts";
import { createRowWalk } from "./row-walk.ts";
import { tickByKeys } from "./ticks.ts";

const COLUMNS = [
  { name: "mark", heading: "Mark" },
  { name: "no", heading: "No." },
  { name: "part", heading: "Part" },
  { name: "of", heading: "Of" },
  { name: "length", heading: "Length" },
  { name: "width", heading: "Width" },
  { name: "thickness", heading: "Thick" },
  { name: "grain", heading: "Grain" },
  { name: "notes", heading: "Notes" },
] as const;
/** Said outright, because a table that the style sheet lays out as a grid would lose what its elements mean. */
const ROWGROUP = { role: "rowgroup" };
const ROW = { role: "row" };
const SIZES = ["length", "width", "thickness"] as const;

/** The cut list; it can mark the rows that are written where the cursor is. */
export interface CutList extends Section {
  /** Marks the rows with these ids and no others, and brings the first of them into view. */
  mark(rows: readonly string[]): void;
}

/** The cut list as one table with a body for each stock; its rows can be walked, beginning at the row given. */
export function createCutList(host: SectionHost, startRow: string): CutList {
  const title = el("h2", { id: "cut-list-title", class: "unseen" }, "Cut list");
  const head = el("thead", ROWGROUP, el("tr", ROW, ...COLUMNS.map(heading)));
  const grid = { role: "grid", "aria-readonly": "true", "aria-labelledby": "cut-list-title" };
  const table = el("table", { id: "cut-list", ...grid }, head);
  const element = el("section", { class: "cut-list", "aria-labelledby": "cut-list-title" }, title, table);
  const walk = createRowWalk(table, host, startRow);
  const rows = new WeakMap<Element, RodRow>();
  tickByKeys(table, host, (at) => rows.get(at.closest("tr[data-part]") ?? at));
  const keepBatches = keepChildren<RodBatch>(
    table,
    (batch) => batch.stock,
    () => createBatch(() => createRow(walk, host, (row, data) => rows.set(row, data))),
    head,
  );
  let broughtIntoView: string | undefined;
  element.hidden = true;
  return {
    element,
    mark: (rows) => {
      markRows(table, rows);
      // Who has scrolled elsewhere while typing on one line is not called back with every key; nor is the page laid out
      // for it once more.
      const [first] = rows;
      if (first !== undefined && first !== broughtIntoView) bringIntoView(table);
      broughtIntoView = first;
    },
    update: (view) => {
      markRows(table, []);
      element.hidden = view.batches.length === 0;
      walk.change(() => keepBatches(view.batches));
      alignSizes(table, view);
    },
    hide: () => {
      element.hidden = true;
    },
  };
}

function bringIntoView(table: HTMLElement): void {
  table.querySelector("tr[aria-current]")?.scrollIntoView({ block: "nearest" });
}

function markRows(table: HTMLElement, ids: readonly string[]): void {
  const rows = [...table.querySelectorAll<HTMLElement>("tr[data-part]")];
  const marked = rows.filter((row) => ids.includes(row.getAttribute("data-part") ?? ""));
  for (const row of rows) {
    if (marked.includes(row)) row.setAttribute("aria-current", "true");
    else row.removeAttribute("aria-current");
  }
}

function heading(column: (typeof COLUMNS)[number]): HTMLElement {
  return el("th", { role: "columnheader", scope: "col", class: `col-${column.name}` }, column.heading);
}

function createBatch(makeRow: () => Kept<RodRow>): Kept<RodBatch> {
  const stock = el("span", { class: "stock" });
  const note = el("span", { class: "stock-note" });
  const sum = el("span", { class: "stock-sum" });
  const label = el("div", { class: "batch-label" }, stock, " ", note, " ", sum);
  const across = { role: "rowheader", scope: "rowgroup", colspan: String(COLUMNS.length) };
  const first = el("tr", { ...ROW, class: "batch" }, el("th", across, label));
  const element = el("tbody", ROWGROUP, first);
  const keepRows = keepChildren(element, (row) => row.id, makeRow, first);
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

/** Tells the style sheet how wide, in figures, what follows the whole numbers is in each column of sizes. */
function alignSizes(table: HTMLElement, view: RodView): void {
  const rows = view.batches.flatMap((batch) => batch.rows);
  for (const size of SIZES) {
    const width = Math.max(0, ...rows.map((row) => splitSize(row[size]).rest.length));
    table.style.setProperty(`--${size}-rest`, `${width}ch`);
  }
}
