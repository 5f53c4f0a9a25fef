import type { Length } from "../../core/length.ts";
import { add, largest, over, smallest, subtract, zero } from "../../core/rational.ts";
import type { FrontModel, Opening, Rect } from "../../derive/model.ts";
import type { Range } from "./solid.ts";
import { middled } from "./solid.ts";

/** The outline of each leaf as seen from before it. */
export function leafRects(front: FrontModel): readonly Rect[] {
  const [x, y] = coverOf(front);
  const wide = front.wide.value;
  const rect = (at: Length): Rect => ({ x: at, y: y[0], wide, high: front.high.value });
  return front.leaves === 1 ? [rect(middled(...x, wide)[0])] : [rect(x[0]), rect(subtract(x[1], wide))];
}

/** What the front covers: its openings and the overlays, or the openings alone. */
function coverOf(front: FrontModel): readonly [Range, Range] {
  const rects = front.openings.map((opening): Rect => opening.rect ?? standingRect(opening));
  const [first, ...rest] = rects;
  if (first === undefined)
    return [
      [zero, zero],
      [zero, zero],
    ];
  const lap = (side: "left" | "right" | "top" | "bottom"): Length => front.overlays[side]?.value ?? zero;
  const left = smallest(first.x, ...rest.map((rect) => rect.x));
  const low = smallest(first.y, ...rest.map((rect) => rect.y));
  const right = largest(add(first.x, first.wide), ...rest.map((rect) => add(rect.x, rect.wide)));
  const high = largest(add(first.y, first.high), ...rest.map((rect) => add(rect.y, rect.high)));
  const x: Range = [subtract(left, lap("left")), add(right, lap("right"))];
  const y: Range = [subtract(low, lap("bottom")), add(high, lap("top"))];
  if (front.whole.inset === undefined) return [x, y];
  return [x, middled(...y, front.high.value)];
}

/** An opening that is out of parallel is drawn at its smallest reading; a front is made to the largest, and stands evenly over it. */
function standingRect({ wide, widest, high, highest }: Opening): Rect {
  return {
    x: over(subtract(wide.value, widest.value), 2),
    y: over(subtract(high.value, highest.value), 2),
    wide: widest.value,
    high: highest.value,
  };
}
