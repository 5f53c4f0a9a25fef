import type { RodView } from "../../../language/view/types.ts";
import { el, keepChildren, setText } from "./dom.ts";

/** The top of the page: what is set out, how much of it, what is wrong with it. */
export interface Head {
  readonly element: HTMLElement;
  update(view: RodView, stale: boolean): void;
  /** Notes that the server is not answering and returns the note. */
  offline(): string;
  clear(): void;
  /** All of it in one line, for those who hear it. */
  summary(): string;
}

const LAST_WHOLE = "The text cannot be read to its end: these are the parts as they were before.";
const PARTLY_READ = "Part of the text cannot be read: these are the parts that are whole.";
const OFFLINE = "The language server is not answering. This is the last rod it gave.";

export function createHead(): Head {
  const title = el("h1");
  const facts = el("p", { class: "facts" });
  const counts = el("ul", { class: "counts", "aria-label": "Findings" });
  const note = el("p", { class: "note" });
  const notes = el("ul", { class: "notes", "aria-label": "Notes" });
  const edge = el("div", { class: "edge", "aria-hidden": "true" });
  const element = el("header", {}, el("div", { class: "title-line" }, title, counts), facts, note, edge, notes);
  const keepCounts = keepChildren<Count>(counts, (count) => count.kind, createCount);
  const keepNotes = keepChildren<string>(
    notes,
    (text) => text,
    () => {
      const item = el("li");
      return { element: item, update: (text) => setText(item, text) };
    },
  );
  const setNote = (text: string) => {
    setText(note, text);
    note.hidden = text === "";
  };
  return {
    element,
    update: (view, stale) => {
      element.hidden = false;
      setText(title, view.title);
      setText(facts, [piecesText(view), view.units, `read to ${view.reading}`].join(" · "));
      // The server says in the first note of a stale rod what is wrong and where.
      const [first = LAST_WHOLE, ...others] = stale ? view.notes : [view.whole ? "" : PARTLY_READ, ...view.notes];
      setNote(first);
      keepCounts(countsOf(view));
      keepNotes(others);
      notes.hidden = others.length === 0;
    },
    offline: () => {
      element.hidden = false;
      setNote(OFFLINE);
      return OFFLINE;
    },
    clear: () => {
      element.hidden = true;
      setText(title, "");
    },
    summary: () => {
      const found = [...counts.children].map((each) => each.textContent).join(", ");
      return [title.textContent, facts.textContent, found, note.textContent].filter((text) => text !== "").join(". ");
    },
  };
}

interface Count {
  readonly kind: "error" | "warning" | "hint" | "none";
  readonly text: string;
}

function countsOf({ counts }: RodView): readonly Count[] {
  const found: readonly (readonly [Exclude<Count["kind"], "none">, number])[] = [
    ["error", counts.errors],
    ["warning", counts.warnings],
    ["hint", counts.hints],
  ];
  const some = found.filter(([, count]) => 0 < count).map(([kind, count]) => ({ kind, text: counted(count, kind) }));
  return 0 < some.length ? some : [{ kind: "none", text: "no findings" }];
}

function createCount(first: Count) {
  const element = el("li", { class: `count count-${first.kind}` });
  return { element, update: (count: Count) => setText(element, count.text) };
}

/** How many pieces there are, and once something is cut, how many of them are. */
function piecesText({ pieces, batches }: RodView): string {
  const rows = batches.flatMap((batch) => batch.rows);
  if (rows.every(({ done }) => done === undefined)) return counted(pieces, "piece");
  const cut = rows.reduce((sum, { done = 0 }) => sum + done, 0);
  return `${cut} of ${counted(pieces, "piece")} cut`;
}

function counted(count: number, thing: string): string {
  return count === 1 ? `1 ${thing}` : `${count} ${thing}s`;
}
