import type { DrawingView } from "../../../language/draw/drawing-view.ts";
import type { DrawingTitle, Drawn, DrawnOn } from "../messages.ts";
import { el, keepChildren, setText } from "./dom.ts";
import { drawingElement } from "./drawing.ts";
import { createPane, type Pane } from "./pane.ts";
import type { SectionHost } from "./section.ts";

/** A choice of drawings, the one chosen in a pane, and below it the same in words. */
export interface Viewer {
  readonly element: HTMLElement;
  /** The drawings there are, and the one to look at; hidden where there is none. */
  show(titles: readonly DrawingTitle[], drawing: DrawingView | null): void;
  /** Asks for a drawing and goes to an item of it when it has come. */
  goTo(drawn: Drawn): void;
  /** The id of the drawing that was chosen last; empty before one was. */
  chosen(): string;
}

const KEYS =
  "Arrows go from part to part, Enter leads to where one is written. Shift with arrows moves the drawing, plus and minus zoom, nought shows the whole.";

/** `label` says what is chosen from; `choose` is told of what the user chose. */
export function createViewer(host: SectionHost, { label, on, start, choose }: ViewerOptions): Viewer {
  const choice = el("select", { "aria-label": label });
  const frame = el("div", { class: "pane", tabindex: "0", role: "group" });
  const words = el("table", { class: "plain" });
  const spoken = el("details", { class: "words" }, el("summary", {}, "The same in words"), words);
  const buttons = el("span", { class: "zoom" });
  const element = el("div", {}, el("div", { class: "drawing-bar" }, choice, buttons), frame, spoken);
  const pane = createPane(frame, (target) => {
    const part = target.closest("[data-uri]")?.getAttribute("data-id") ?? undefined;
    if (part !== undefined) host.revealDrawn(part, on);
  });
  const keepTitles = keepChildren<DrawingTitle>(choice, ({ id }) => id, createOption);
  let chosen = start;
  let shown = "";
  let wanted: Drawn | undefined;

  buttons.append(...zoomButtons(pane));
  element.hidden = true;
  choice.addEventListener("change", () => {
    chosen = choice.value;
    choose(chosen);
  });
  const explainAt = (target: EventTarget | null) => host.explain(explained(host, target));
  frame.addEventListener("mouseover", ({ target }) => explainAt(target));
  frame.addEventListener("mouseleave", () => explainAt(document.activeElement));
  frame.addEventListener("focusin", ({ target }) => explainAt(target));
  frame.addEventListener("focusout", () => explainAt(null));

  function put(drawing: DrawingView): void {
    // Most changes of the text leave most drawings as they were.
    if (shown === drawing.svg) return;
    const made = drawingElement(drawing.svg);
    if (made === undefined) return;
    shown = drawing.svg;
    pane.show(made);
    tell(words, drawing);
  }

  return {
    element,
    chosen: () => chosen,
    goTo: (drawn) => {
      wanted = drawn;
      chosen = drawn.drawing;
      choose(chosen);
    },
    show: (titles, drawing) => {
      keepTitles(titles);
      element.hidden = drawing === null;
      if (drawing === null) return;
      choice.value = drawing.id;
      const said = `${labelOf(drawing)}. ${KEYS}`;
      if (frame.getAttribute("aria-label") !== said) frame.setAttribute("aria-label", said);
      put(drawing);
      if (wanted === undefined || drawing.id !== wanted.drawing) return;
      pane.goTo(wanted.item);
      wanted = undefined;
    },
  };
}

export interface ViewerOptions {
  readonly label: string;
  readonly on: DrawnOn;
  /** The drawing to begin with, by its id. */
  readonly start: string;
  readonly choose: (id: string) => void;
}

/** What a part is, and where its size comes from if the cut list says so. */
function explained(host: SectionHost, target: EventTarget | null): string | undefined {
  const part = target instanceof Element ? target.closest("[data-id]") : null;
  const label = part?.getAttribute("aria-label") ?? undefined;
  const why = host.whyOf((part?.getAttribute("data-id") ?? "").replace(/#.*$/, ""));
  return label === undefined || why === undefined ? label : `${label}. ${why}`;
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
