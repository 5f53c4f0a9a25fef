import type { Length } from "../../core/length.ts";
import { add, isPositive, over, subtract, zero } from "../../core/rational.ts";
import { givenSize } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { BoxModel } from "../../derive/model.ts";
import type { Tables } from "./scene.ts";
import type { Range, Solid } from "./solid.ts";
import { from, middled } from "./solid.ts";

/** Where a box stands in its opening, all of it. */
interface BoxPlace {
  readonly x: Range;
  readonly y: Range;
}

/** In the middle of the opening's width, above its floor by what the slides want. */
function boxPlace(box: BoxModel): BoxPlace {
  const left = box.opening.rect?.x ?? zero;
  const floor = box.opening.rect?.y ?? zero;
  return {
    x: middled(left, add(left, box.opening.wide.value), box.wide.value),
    y: from(add(floor, box.slides.below.value), box.high.value),
  };
}

/** The room that a box's slides take: beside it, or under it. */
export function slideSolids(tables: Tables, box: BoxModel): readonly Solid[] {
  const long = box.slides.length;
  if (long === undefined || box.parts.length === 0) return [];
  const place = boxPlace(box);
  const left = box.opening.rect?.x ?? zero;
  const right = add(left, box.opening.wide.value);
  const z = from(zero, long.value);
  const y = heightOf(tables, box);
  const across: readonly Range[] =
    box.slides.block.mount?.value === "under"
      ? underRanges(tables, box, left, right)
      : box.slides.block.mount?.value === "centre"
        ? [middled(left, right, fallback("slides.clearance").value)]
        : [
            [left, place.x[0]],
            [place.x[1], right],
          ];
  return across
    .filter(([start, end]) => isPositive(subtract(end, start)))
    .map((x) => ({
      id: `${box.of}/slide`,
      role: "slide" as const,
      part: undefined,
      name: `slide ${box.slides.name}`,
      of: box.of,
      place: { x, y, z },
      made: "metal" as const,
      grain: undefined,
      target: box.whole.slides?.key.span ?? box.block.head,
    }));
}

/** The middle of a side-mounted slide above the floor of the opening. */
export function slideMiddle(tables: Tables, box: BoxModel): Length {
  const written = givenSize(tables.context, box.whole.at);
  return written?.value ?? add(box.slides.below.value, over(box.high.value, 2));
}

function heightOf(tables: Tables, box: BoxModel): Range {
  const floor = box.opening.rect?.y ?? zero;
  if (box.slides.block.mount?.value === "side" || box.slides.block.mount === undefined) {
    const high = (givenSize(tables.context, box.slides.block.high) ?? fallback("slides.high")).value;
    const middle = add(floor, slideMiddle(tables, box));
    return middled(middle, middle, high);
  }
  const up = box.parts.flatMap((part) => part.machining).find((one) => one.note === "bottom")?.from?.value;
  const under = add(box.slides.below.value, up ?? zero);
  return [floor, add(floor, under)];
}

/** Under a box: from the opening's edge to the inside of the box's side. */
function underRanges(tables: Tables, box: BoxModel, left: Length, right: Length): readonly Range[] {
  const inside = (givenSize(tables.context, box.slides.block.inside) ?? fallback("under.inside")).value;
  return [from(left, over(inside, 2)), [subtract(right, over(inside, 2)), right]];
}
