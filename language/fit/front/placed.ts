import type { FrontBlock } from "../../core/design.ts";
import type { Length } from "../../core/length.ts";
import { add, largest, less, smallest, subtract, toNumber, zero } from "../../core/rational.ts";
import type { Span } from "../../core/span.ts";
import type { FrontModel, Model, Opening, Side } from "../../derive/model.ts";

/** A front in its place on a face of a case: its edges in inches from the left bottom corner of the case. */
export interface PlacedFront {
  readonly front: FrontModel;
  readonly left: Length;
  readonly right: Length;
  readonly bottom: Length;
  readonly top: Length;
  /** Bottom and top as doubles: enough to pass over what is far away. */
  readonly rough: { readonly bottom: number; readonly top: number };
}

/** The overlay fronts of each face of each case, from left to right. Openings that stand alone have no place. */
export function placedFronts(model: Model): readonly (readonly PlacedFront[])[] {
  const faces = new Map<string, PlacedFront[]>();
  for (const front of model.fronts) {
    const placed = front.whole.inset === undefined ? place(front) : undefined;
    const opening = front.openings[0];
    if (placed === undefined || opening?.case === undefined) continue;
    const face = `${opening.face} ${opening.case}`;
    const before = faces.get(face);
    if (before === undefined) faces.set(face, [placed]);
    else before.push(placed);
  }
  return [...faces.values()].map((fronts) =>
    fronts.sort((a, b) => (less(a.left, b.left) ? -1 : less(b.left, a.left) ? 1 : 0)),
  );
}

function place(front: FrontModel): PlacedFront | undefined {
  const rects = front.openings.flatMap((opening: Opening) => opening.rect ?? []);
  const [first, ...rest] = rects;
  if (first === undefined || rects.length < front.openings.length) return undefined;
  const { left, right, top, bottom } = front.overlays;
  const over = (side: FrontModel["overlays"][Side]): Length => side?.value ?? zero;
  const bottomEdge = subtract(smallest(first.y, ...rest.map((rect) => rect.y)), over(bottom));
  const topEdge = add(largest(add(first.y, first.high), ...rest.map((rect) => add(rect.y, rect.high))), over(top));
  return {
    front,
    left: subtract(smallest(first.x, ...rest.map((rect) => rect.x)), over(left)),
    right: add(largest(add(first.x, first.wide), ...rest.map((rect) => add(rect.x, rect.wide))), over(right)),
    bottom: bottomEdge,
    top: topEdge,
    rough: { bottom: toNumber(bottomEdge), top: toNumber(topEdge) },
  };
}

/** Where the overlay of one edge is written; `undefined` where it is a default or follows from a full overlay. */
export function overlayPlace({ overlay }: FrontBlock, side: Side): Span | undefined {
  const values = overlay?.values ?? [];
  const own = values.find((one) => one.edge?.text === side) ?? values.find((one) => one.edge === undefined);
  return own?.measure.span;
}
