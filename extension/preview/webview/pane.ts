import { type Box, fitting, moved, zoomed } from "./view-box.ts";

/** A drawing that can be looked at closer: wheel with Ctrl, drag, arrow keys, `+`, `-` and `0`. */
export interface Pane {
  /** Puts a drawing into the pane; one that is as large as the last keeps the place that was looked at. */
  show(drawing: SVGElement): void;
  zoom(factor: number): void;
  fit(): void;
}

const STEP = 1.25;
const PAN = 0.1;
/** A press that moves less than so many pixels is a click. */
const CLICK = 4;

/** Makes an element the pane; `clicked` is told of the element of the drawing that was clicked. */
export function createPane(element: HTMLElement, clicked: (target: Element) => void): Pane {
  let shown: SVGElement | undefined;
  let whole: Box = { x: 0, y: 0, width: 1, height: 1 };
  let view = whole;
  let press: { readonly x: number; readonly y: number; readonly view: Box; dragged: boolean } | undefined;

  function look(at: Box): void {
    view = at;
    shown?.setAttribute("viewBox", `${at.x} ${at.y} ${at.width} ${at.height}`);
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
    if (wasClick && event.target instanceof Element) clicked(event.target);
  });
  element.addEventListener("pointercancel", () => {
    press = undefined;
  });
  element.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const steps = new Map<string, () => void>([
      ["ArrowLeft", () => look(moved(view, whole, -PAN * view.width, 0))],
      ["ArrowRight", () => look(moved(view, whole, PAN * view.width, 0))],
      ["ArrowUp", () => look(moved(view, whole, 0, -PAN * view.height))],
      ["ArrowDown", () => look(moved(view, whole, 0, PAN * view.height))],
      ["+", () => zoom(STEP)],
      ["=", () => zoom(STEP)],
      ["-", () => zoom(1 / STEP)],
      ["0", () => look(whole)],
    ]);
    const step = event.target === element ? steps.get(event.key) : undefined;
    if (step === undefined) return;
    event.preventDefault();
    step();
  });

  return {
    show: (drawing) => {
      const size = fitting(drawing.getAttribute("viewBox") ?? "");
      const same = size.width === whole.width && size.height === whole.height;
      shown = drawing;
      whole = size;
      element.replaceChildren(drawing);
      element.style.aspectRatio = `${size.width} / ${size.height}`;
      look(same ? view : whole);
    },
    zoom: (factor) => zoom(factor),
    fit: () => look(whole),
  };
}
