import { el, setText } from "../dom.ts";
import type { SectionHost } from "../section.ts";

/** A field that leaves in the cut list only what it names: pieces by mark, name, owner or note, or a stock. */
export interface Filter {
  readonly element: HTMLElement;
  /** To be called when the list has changed. */
  apply(): void;
}

/** Filters the table of the cut list; a batch with nothing left in it goes too. */
export function createFilter(table: HTMLElement, host: SectionHost): Filter {
  const field = el("input", { type: "search", "aria-label": "Filter by piece or stock", autocomplete: "off" });
  field.placeholder = "Filter by piece or stock";
  field.spellcheck = false;
  const count = el("span", { class: "stock-note" });
  const element = el("p", { class: "filter" }, field, " ", count);

  function apply(): void {
    const words = field.value.toLowerCase().split(/\s+/).filter(Boolean);
    const rows = [...table.querySelectorAll<HTMLElement>("tr[data-part]")];
    for (const row of rows) {
      const text = `${row.textContent} ${row.closest("tbody")?.querySelector(".stock")?.textContent}`.toLowerCase();
      row.hidden = !words.every((word) => text.includes(word));
    }
    for (const body of table.querySelectorAll<HTMLElement>("tbody")) {
      body.hidden = words.length !== 0 && body.querySelector("tr[data-part]:not([hidden])") === null;
    }
    keepTabStop(rows);
    const left = rows.filter((row) => !row.hidden).length;
    setText(count, words.length === 0 ? "" : `${left} of ${rows.length} lines`);
  }

  field.addEventListener("input", () => {
    apply();
    host.announce(count.textContent === "" ? "All lines are shown." : `${count.textContent} are shown.`);
  });
  field.addEventListener("keydown", (event) => {
    if (event.key !== "Escape" || field.value === "") return;
    field.value = "";
    event.preventDefault();
    apply();
  });
  return { element, apply };
}

/** The tab key must find the list though the row that was its stop is hidden. */
function keepTabStop(rows: readonly HTMLElement[]): void {
  const stop = rows.find((row) => row.tabIndex === 0);
  const first = rows.find((row) => !row.hidden);
  if (stop?.hidden !== true || first === undefined) return;
  stop.tabIndex = -1;
  first.tabIndex = 0;
}
