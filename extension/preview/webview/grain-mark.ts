import { svg } from "./dom.ts";

/** A part lying with its length from left to right, with the lines of its grain; a word always goes with it. */
export function grainMark(grain: string): SVGElement {
  const outline = svg("rect", { x: "0.5", y: "0.5", width: "33", height: "13" });
  const drawing = svg("path", { d: GRAIN_LINES.get(grain) ?? "" });
  return svg("svg", { class: "grain-mark", viewBox: "0 0 34 14", "aria-hidden": "true" }, outline, drawing);
}

const GRAIN_LINES = new Map([
  ["along", "M1 4.2H24M27 4.2H33M1 7H14M17 7H33M1 9.8H29"],
  ["across", "M5.5 1V9.5M10 1V13M14.5 4V13M19 1V13M23.5 1V8M28 1V13"],
]);
