import type { DrawingView } from "../../../../language/draw/drawing-view.ts";
import type { DrawingsAnswer, DrawingTitle } from "../../messages.ts";
import { el, keepChildren, setText } from "../dom.ts";
import { drawingElement } from "../drawing.ts";
import { createPane, type Pane } from "../pane.ts";
import type { Section, SectionHost } from "../section.ts";

/** The drawings: closed until they are wanted, then one at a time, with the same in words below. */
export interface Drawings extends Section {
  show(answer: DrawingsAnswer): void;
  /** No drawings are wanted in this window. */
  forbid(): void;
}

const KEYS = "Arrows move it, plus and minus zoom, nought shows the whole.";

/** Asks for the drawing that was open last, if one was. */
export function createDrawings(host: SectionHost, startDrawing: string | undefined): Drawings {
  const choice = el("select", { "aria-label": "Drawing" });
  const frame = el("div", { class: "pane", tabindex: "0", role: "group" });
  const words = el("table", { class: "plain" });
  const spoken = el("details", { class: "words" }, el("summary", {}, "The same in words"), words);
  const buttons = el("span", { class: "zoom" });
  const empty = el("p", { class: "stock-note" }, "There is nothing to draw yet.");
  const body = el("div", {}, el("div", { class: "drawing-bar" }, choice, buttons), frame, spoken);
  const title = el("span", { class: "fold-title", role: "heading", "aria-level": "2" }, "Drawings");
  const fold = el("details", { class: "drawings" }, el("summary", {}, title), empty, body);
  const element = el("section", { class: "further", "aria-label": "Drawings" }, fold);
  const pane = createPane(frame, (target) => {
    const part = target.closest("[data-uri]")?.getAttribute("data-id") ?? undefined;
    if (part !== undefined) host.revealDrawn(part);
  });
  const keepTitles = keepChildren<DrawingTitle>(choice, ({ id }) => id, createOption);
  let chosen = startDrawing ?? "";
  let forbidden = false;

  buttons.append(...zoomButtons(pane));
  element.hidden = true;
  body.hidden = true;
  fold.open = startDrawing !== undefined;
  fold.addEventListener("toggle", () => host.draw(fold.open ? chosen : undefined));
  choice.addEventListener("change", () => {
    chosen = choice.value;
    host.draw(chosen);
  });
  const explainAt = (target: EventTarget | null) =>
    host.explain(
      (target instanceof Element ? target.closest("[data-id]") : null)?.getAttribute("aria-label") ?? undefined,
    );
  frame.addEventListener("mouseover", ({ target }) => explainAt(target));
  frame.addEventListener("mouseleave", () => explainAt(null));

  return {
    element,
    update: (view) => {
      element.hidden = forbidden || view.pieces === 0;
    },
    show: ({ titles, drawing }) => {
      keepTitles(titles);
      body.hidden = drawing === null;
      empty.hidden = drawing !== null;
      if (drawing === null) return;
      choice.value = drawing.id;
      frame.setAttribute("aria-label", `${labelOf(drawing)}. ${KEYS}`);
      const made = drawingElement(drawing.svg);
      if (made !== undefined) pane.show(made);
      tell(words, drawing);
    },
    hide: () => {
      element.hidden = true;
    },
    forbid: () => {
      forbidden = true;
      element.hidden = true;
    },
  };
}

function createOption() {
  const element = el("option");
  return {
    element,
    update: (title: DrawingTitle) => {
      element.value = title.id;
      setText(element, labelOf(title));
    },
  };
}

function labelOf({ title, scale }: DrawingTitle): string {
  return scale === "" ? title : `${title}, ${scale}`;
}

function zoomButtons(pane: Pane): readonly HTMLElement[] {
  const button = (text: string, label: string, act: () => void) => {
    const made = el("button", { type: "button", "aria-label": label, title: label }, text);
    made.addEventListener("click", act);
    return made;
  };
  return [
    button("−", "Zoom out", () => pane.zoom(0.8)),
    button("+", "Zoom in", () => pane.zoom(1.25)),
    button("Whole", "Show the whole drawing", () => pane.fit()),
  ];
}

function tell(table: HTMLElement, { title, textEquivalent: { columns, rows } }: DrawingView): void {
  const cells = (row: readonly string[]) => row.map((text) => el("td", {}, text));
  table.replaceChildren(
    el("caption", { class: "unseen" }, title),
    el("thead", {}, el("tr", {}, ...columns.map((column) => el("th", { scope: "col" }, column)))),
    el("tbody", {}, ...rows.map((row) => el("tr", {}, ...cells(row)))),
  );
}
