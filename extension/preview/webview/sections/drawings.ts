import type { DrawingsAnswer, Drawn } from "../../messages.ts";
import { el } from "../dom.ts";
import type { Section, SectionHost } from "../section.ts";
import { createViewer } from "../viewer.ts";

/** The drawings: closed until they are wanted, then one at a time, with the same in words below. */
export interface Drawings extends Section {
  show(answer: DrawingsAnswer): void;
  /** Opens a drawing, and goes to an item of it when it has come. */
  open(drawn: Drawn): void;
  /** No drawings are wanted in this window. */
  forbid(): void;
}

/** Asks for the drawing that was open last, if one was. */
export function createDrawings(host: SectionHost, startDrawing: string | undefined): Drawings {
  const viewer = createViewer(host, {
    label: "Drawing",
    on: "drawings",
    start: startDrawing ?? "",
    choose: (id) => host.draw(id),
  });
  const empty = el("p", { class: "stock-note" }, "There is nothing to draw yet.");
  const title = el("span", { class: "fold-title", role: "heading", "aria-level": "2" }, "Drawings");
  const fold = el("details", { class: "drawings" }, el("summary", {}, title), empty, viewer.element);
  const element = el("section", { class: "further", "aria-label": "Drawings" }, fold);
  let forbidden = false;

  element.hidden = true;
  fold.open = startDrawing !== undefined;
  fold.addEventListener("toggle", () => host.draw(fold.open ? viewer.chosen() : undefined));

  return {
    element,
    update: (view) => {
      element.hidden = forbidden || view.pieces === 0;
    },
    show: ({ titles, drawing }) => {
      empty.hidden = drawing !== null;
      viewer.show(titles, drawing);
    },
    open: (drawn) => {
      fold.open = true;
      element.scrollIntoView({ block: "start" });
      viewer.goTo(drawn);
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
