import type { Item, Point } from "../draw/display-list.ts";
import { letterHeights, line, text } from "../draw/display-list.ts";

/** The edge of a rule along the head of a page, true to size when the page is printed at full size. */
export function rulerEdge(units: "inches" | "millimetres", at: Point, wide: number): readonly Item[] {
  const step = units === "inches" ? 25.4 / 8 : 5;
  const [middle, long] = units === "inches" ? [4, 8] : [2, 10];
  const items: Item[] = [line(at, { x: at.x + wide, y: at.y }, "fine")];
  for (let index = 0; index * step <= wide; index++) {
    const x = at.x + index * step;
    const high = index % long === 0 ? 3.6 : index % middle === 0 ? 2.4 : 1.4;
    items.push(line({ x, y: at.y }, { x, y: at.y + high }, "hair"));
  }
  return items;
}

/** A bar to lay a rule against, with the size that it must have; the first thing to look at on a sheet printed to size. */
export function checkBar(units: "inches" | "millimetres", at: Point): readonly Item[] {
  const [long, label, parts] = units === "inches" ? [101.6, "4 in", 4] : [100, "100 mm", 10];
  const step = long / parts;
  const boxes = Array.from({ length: parts }, (_, index): Item => {
    const x = at.x + index * step;
    return {
      kind: "shape",
      points: [
        { x, y: at.y },
        { x: x + step, y: at.y },
        { x: x + step, y: at.y + 2.5 },
        { x, y: at.y + 2.5 },
      ],
      closed: true,
      weight: "fine",
      stroke: "solid",
      fill: index % 2 === 0 ? "ink" : undefined,
    };
  });
  const words = `This bar is ${label} long. If it does not measure so, print again at full size, with no fitting to the page.`;
  return [...boxes, text({ x: at.x, y: at.y + 6.5 }, words, { size: letterHeights.note })];
}
