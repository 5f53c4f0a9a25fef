import type { FrontBlock } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import { add, largest, less, smallest, subtract } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { derived } from "../core/sourced.ts";
import type { Context } from "./context.ts";
import { found } from "./context.ts";
import type { Bound, Opening, Rect, Side } from "./model.ts";

/** One area over several openings of one face: from the first edge to the last, members between them counted in. */
export function spanned(
  context: Context,
  block: FrontBlock,
  openings: readonly Opening[],
): readonly { readonly opening: Opening; readonly openings: readonly Opening[] }[] {
  const [first, ...rest] = openings;
  if (first === undefined) return [];
  const rects = openings.flatMap((opening) => opening.rect ?? []);
  const together = rest.every((opening) => opening.case === first.case && opening.face === first.face);
  if (rects.length < openings.length || !together) {
    found(context, {
      code: "front/spans-apart",
      severity: "error",
      span: block.openings.at(-1)!.span,
      message: "these openings are not in one face of one case",
      reason: "A front that spans several openings covers what stands between them, which must be known.",
      remedy: "Name openings of one case, or give each its own front.",
    });
    return [];
  }
  const box = around(rects as [Rect, ...Rect[]]);
  const wide = between(openings, "wide", box.wide);
  const high = between(openings, "high", box.high);
  const at = (side: Side): Bound =>
    openings.find((opening) => touches(opening.rect!, box, side))?.bounds[side] ?? first.bounds[side];
  const bounds = { left: at("left"), right: at("right"), top: at("top"), bottom: at("bottom") };
  return [{ opening: { ...first, wide, high, widest: wide, highest: high, bounds, rect: box }, openings }];
}

function around(rects: readonly [Rect, ...Rect[]]): Rect {
  const [first, ...rest] = rects;
  const x = smallest(first.x, ...rest.map((rect) => rect.x));
  const y = smallest(first.y, ...rest.map((rect) => rect.y));
  const right = largest(add(first.x, first.wide), ...rest.map((rect) => add(rect.x, rect.wide)));
  const top = largest(add(first.y, first.high), ...rest.map((rect) => add(rect.y, rect.high)));
  return { x, y, wide: subtract(right, x), high: subtract(top, y) };
}

function between(openings: readonly Opening[], which: "wide" | "high", value: Length): Sourced<Length> {
  const inputs = Object.fromEntries(openings.map((opening) => [opening.name.text, opening[which]]));
  const names = Object.keys(inputs);
  return derived(
    {
      gives: "openings together",
      formula: `from {${names[0]}} to {${names.at(-1)}}, members counted in`,
      tag: "geometry",
    },
    inputs,
    () => value,
  );
}

function touches(rect: Rect, box: Rect, side: Side): boolean {
  switch (side) {
    case "left":
      return !less(box.x, rect.x);
    case "bottom":
      return !less(box.y, rect.y);
    case "right":
      return !less(add(rect.x, rect.wide), add(box.x, box.wide));
    case "top":
      return !less(add(rect.y, rect.high), add(box.y, box.high));
  }
}
