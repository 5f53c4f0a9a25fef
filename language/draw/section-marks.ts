import type { Length } from "../core/length.ts";
import type { Item } from "./display-list.ts";
import { letterHeights, line, text } from "./display-list.ts";
import type { Range } from "./place/solid.ts";
import type { Projection } from "./view.ts";
import { acrossPaper, downPaper } from "./view.ts";

/** Letters of section planes, in order: A, B, C. */
export function sectionLetter(index: number): string {
  return String.fromCharCode("A".charCodeAt(0) + (index % 26));
}

/** The ends of upright section planes above a view: a heavy stroke, a letter, and an arrow the way one looks. */
export function sectionMarks(projection: Projection, cuts: readonly Length[], height: Range): readonly Item[] {
  const top = downPaper(projection, height[1]);
  const way = projection.view.rightward === "as counted" ? -1 : 1;
  return cuts.flatMap((cut, index): readonly Item[] => {
    const x = acrossPaper(projection, cut);
    const head = { x: x + way * 4, y: top - 5 };
    return [
      line({ x, y: top - 5 }, { x, y: top - 1 }, "heavy"),
      line({ x, y: top - 5 }, head, "fine"),
      {
        kind: "shape",
        points: [head, { x: head.x - way * 1.8, y: head.y - 0.6 }, { x: head.x - way * 1.8, y: head.y + 0.6 }],
        closed: true,
        weight: undefined,
        stroke: "solid",
        fill: "ink",
      },
      text({ x: x - way * 1.2, y: top - 5 }, sectionLetter(index), {
        size: letterHeights.name,
        face: "bold",
        anchor: way < 0 ? "start" : "end",
      }),
    ];
  });
}
