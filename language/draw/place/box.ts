import type { Length } from "../../core/length.ts";
import type { Part } from "../../core/part.ts";
import { add, over, subtract, times, zero } from "../../core/rational.ts";
import type { BoxModel } from "../../derive/model.ts";
import type { Tables } from "./scene.ts";
import type { Range, Solid } from "./solid.ts";
import { from, longOf, middled, placed, upTo } from "./solid.ts";

/** Where a box stands in its opening, all of it. */
export interface BoxPlace {
  readonly x: Range;
  readonly y: Range;
  readonly z: Range;
}

/** In the middle of the opening's width, above its floor by what the slides want, its front flush unless set back. */
export function boxPlace(box: BoxModel, setBack: Length): BoxPlace {
  const left = box.opening.rect?.x ?? zero;
  const floor = box.opening.rect?.y ?? zero;
  return {
    x: middled(left, add(left, box.opening.wide.value), box.wide.value),
    y: from(add(floor, box.slides.below.value), box.high.value),
    z: from(setBack, box.deep.value),
  };
}

/** The sides, ends, bottom and dividers of a box in their places. */
export function boxSolids({ stocks }: Tables, box: BoxModel, setBack: Length): readonly Solid[] {
  const place = boxPlace(box, setBack);
  const part = (name: string): Part | undefined => box.parts.find((one) => one.name === name);
  const side = part("side");
  const [front, back, bottom] = [part("front"), part("back"), part("bottom")];
  if (side === undefined || front === undefined || back === undefined) return [];
  const walls = wallsOf(box, place, side);
  const thick = side.thickness.value;
  const sideRun = sideRange(box, place, side, front);
  const sides = [from(place.x[0], thick), upTo(place.x[1], thick)].map((x) =>
    placed(side, "box", { x, y: walls, z: sideRun }, "z", "x", stocks),
  );
  const end = (one: Part, z: Range): Solid =>
    placed(
      one,
      "box",
      { x: middled(...place.x, one.length.value), y: upTo(walls[1], one.width.value), z },
      "x",
      "z",
      stocks,
    );
  return [
    ...sides,
    end(front, from(place.z[0], front.thickness.value)),
    end(back, upTo(place.z[1], back.thickness.value)),
    ...(bottom === undefined ? [] : [bottomSolid(stocks, box, place, bottom, front, back)]),
    ...dividers(stocks, box, place, walls, front, back),
  ];
}

/** The height of the walls: above a bottom that lies under them. */
function wallsOf(box: BoxModel, place: BoxPlace, side: Part): Range {
  return box.whole.corners === undefined && box.bottom === undefined ? place.y : upTo(place.y[1], side.width.value);
}

/** Sides run the whole depth, stand between the ends, or start behind the lap of the front. */
function sideRange(box: BoxModel, place: BoxPlace, side: Part, front: Part): Range {
  if (box.whole.corners?.endsOverSides === true) return from(add(place.z[0], front.thickness.value), side.length.value);
  return upTo(place.z[1], side.length.value);
}

function bottomSolid(
  stocks: Tables["stocks"],
  box: BoxModel,
  place: BoxPlace,
  bottom: Part,
  front: Part,
  back: Part,
): Solid {
  const groove = box.parts.flatMap((part) => part.machining).find((one) => one.note === "bottom");
  const up = groove?.from?.value ?? zero;
  const y = from(add(place.y[0], up), bottom.thickness.value);
  const x = middled(...place.x, bottom.width.value);
  const inside: Range = [add(place.z[0], front.thickness.value), subtract(place.z[1], back.thickness.value)];
  const fromBehind = box.whole.bottom?.fittings.some((one) => one.word === "from behind") ?? false;
  const z =
    groove === undefined
      ? place.z
      : fromBehind
        ? upTo(place.z[1], bottom.length.value)
        : middled(...inside, bottom.length.value);
  return placed(bottom, "box", { x, y, z }, "z", "y", stocks);
}

/** Evenly between the sides, or between the ends. */
function dividers(
  stocks: Tables["stocks"],
  box: BoxModel,
  place: BoxPlace,
  walls: Range,
  front: Part,
  back: Part,
): readonly Solid[] {
  const part = box.parts.find((one) => one.name === "divider");
  if (part === undefined) return [];
  const along = box.whole.dividers?.direction !== "across";
  const x: Range = middled(...place.x, box.inside?.wide.value ?? longOf(place.x));
  const z: Range = [add(place.z[0], front.thickness.value), subtract(place.z[1], back.thickness.value)];
  const y = upTo(walls[1], part.width.value);
  return evenly(along ? x : z, part.thickness.value, part.quantity).map((range) =>
    along
      ? placed(part, "box", { x: range, y, z }, "z", "x", stocks)
      : placed(part, "box", { x, y, z: range }, "x", "z", stocks),
  );
}

/** `count` pieces so thick with equal spaces before, between and behind them. */
export function evenly([start, end]: Range, thick: Length, count: number): readonly Range[] {
  const free = subtract(subtract(end, start), times(thick, count));
  return Array.from({ length: count }, (_, index) => {
    const spaces = over(times(free, index + 1), count + 1);
    return from(add(add(start, spaces), times(thick, index)), thick);
  });
}
