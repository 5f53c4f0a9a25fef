import { createPartWalk, makeWalkable } from "./part-walk.ts";
import { patchDrawing } from "./patch.ts";
import { type Box, fitting, moved, zoomed } from "./view-box.ts";

/**
 * A drawing that can be looked at closer, with the wheel and Ctrl, by dragging, with `+`, `-`, `0` and Shift and the arrows;
 * and walked from part to part with the arrows alone.
 */
export interface Pane {
  /** Puts a drawing into the pane; one of the same subject and size keeps what is the same, and the place looked at. */
  show(drawing: SVGElement): void;
  /** Gives the part with this id the focus, and brings it into view; nothing where there is none. */
  goTo(id: string): void;
  zoom(factor: number): void;
  fit(): void;
}

const STEP = 1.25;
const PAN = 0.1;
/** A press that moves less than so many pixels is a click. */
const CLICK = 4;

/** Makes an element the pane; `followed` is told of the element of the drawing that was clicked, or entered. */
export function createPane(element: HTMLElement, followed: (target: Element) => void): Pane {
  let shown: SVGElement | undefined;
  let whole: Box = { x: 0, y: 0, width: 1, height: 1 };
  let view = whole;
  const walk = createPartWalk(() => shown, bringIntoView);
  let press: { readonly x: number; readonly y: number; readonly view: Box; dragged: boolean } | undefined;

  function look(at: Box): void {
    view = at;
    shown?.setAttribute("viewBox", `${at.x} ${at.y} ${at.width} ${at.height}`);
  }

  /** Moves the drawing as far as it takes to see a part of it whole, or at least its left upper corner. */
  function bringIntoView(part: Element): void {
    const [pane, at] = [element.getBoundingClientRect(), part.getBoundingClientRect()];
    const off = (low: number, high: number, from: number, to: number): number =>
      low < from ? low - from : to < high ? Math.min(high - to, low - from) : 0;
    const dx = off(at.left, at.right, pane.left, pane.right);
    const dy = off(at.top, at.bottom, pane.top, pane.bottom);
    if (dx !== 0 || dy !== 0) look(moved(view, whole, dx * scale(), dy * scale()));
  }

  /** Drawing units for a pixel. */
  function scale(): number {
    const { width, height } = element.getBoundingClientRect();
    return Math.max(view.width / Math.max(width, 1), view.height / Math.max(height, 1));
  }

  function zoom(factor: number, across = 0.5, down = 0.5): void {
    look(zoomed(view, whole, factor, across, down));
  }

  element.addEventListener(
    "wheel",
    (event) => {
      // The wheel alone scrolls the page: a drawing in the way must not hold it up.
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      const { left, top, width, height } = element.getBoundingClientRect();
      const factor = event.deltaY < 0 ? STEP : 1 / STEP;
      zoom(factor, (event.clientX - left) / Math.max(width, 1), (event.clientY - top) / Math.max(height, 1));
    },
    { passive: false },
  );
  element.addEventListener("pointerdown", (event) => {
    if (event.button === 0) press = { x: event.clientX, y: event.clientY, view, dragged: false };
  });
  element.addEventListener("pointermove", (event) => {
    if (press === undefined) return;
    const [dx, dy] = [event.clientX - press.x, event.clientY - press.y];
    if (!press.dragged && Math.abs(dx) + Math.abs(dy) < CLICK) return;
    if (!press.dragged) element.setPointerCapture?.(event.pointerId);
    press.dragged = true;
    look(moved(press.view, whole, -dx * scale(), -dy * scale()));
  });
  element.addEventListener("pointerup", (event) => {
    const wasClick = press !== undefined && !press.dragged;
    press = undefined;
    if (wasClick && event.target instanceof Element) followed(event.target);
  });
  element.addEventListener("pointercancel", () => {
    press = undefined;
  });
  element.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const pan = (dx: number, dy: number) => () =>
      look(moved(view, whole, dx * PAN * view.width, dy * PAN * view.height));
    const steps = event.shiftKey
      ? new Map<string, () => void>([
          ["ArrowLeft", pan(-1, 0)],
          ["ArrowRight", pan(1, 0)],
          ["ArrowUp", pan(0, -1)],
          ["ArrowDown", pan(0, 1)],
          ["+", () => zoom(STEP)],
        ])
      : new Map<string, () => void>([
          ["ArrowLeft", () => walk.go("left")],
          ["ArrowRight", () => walk.go("right")],
          ["ArrowUp", () => walk.go("up")],
          ["ArrowDown", () => walk.go("down")],
          ["Home", () => walk.goToEnd("first")],
          ["End", () => walk.goToEnd("last")],
          ["+", () => zoom(STEP)],
          ["=", () => zoom(STEP)],
          ["-", () => zoom(1 / STEP)],
          ["0", () => look(whole)],
        ]);
    const at = walk.current();
    const step = steps.get(event.key);
    if (step !== undefined) step();
    else if (event.key === "Enter" && at !== undefined) followed(at);
    else if (event.key === "Escape" && at !== undefined) element.focus();
    else return;
    event.preventDefault();
  });

  return {
    show: (drawing) => {
      const size = fitting(drawing.getAttribute("viewBox") ?? "");
      const same = size.width === whole.width && size.height === whole.height;
      makeWalkable(drawing);
      if (same && shown?.getAttribute("data-drawing") === drawing.getAttribute("data-drawing")) {
        patchDrawing(shown, drawing);
        return;
      }
      shown = drawing;
      whole = size;
      element.replaceChildren(drawing);
      element.style.aspectRatio = `${size.width} / ${size.height}`;
      look(whole);
    },
    goTo: walk.goTo,
    zoom: (factor) => zoom(factor),
    fit: () => look(whole),
  };
}
