import type { Length } from "../core/length.ts";
import { toMillimetres } from "../core/length.ts";
import { compare, less, negate, toNumber } from "../core/rational.ts";
import type { Area, Group, Item, Point } from "./display-list.ts";
import { corners, outline } from "./display-list.ts";
import type { Axis, Range, Solid } from "./place/solid.ts";

/** One way of looking at a scene: which axis runs to the right, which up, and which towards the eye. */
export interface View {
  readonly right: Axis;
  readonly up: Axis;
  readonly toward: Axis;
  /** Whether the axis runs to the right as it counts, or the other way. */
  readonly rightward: "as counted" | "reversed";
  /** Whether a greater count along `toward` is nearer to the eye. */
  readonly nearer: "greater" | "smaller";
}

export const fromFront: View = {
  right: "x",
  up: "y",
  toward: "z",
  rightward: "as counted",
  nearer: "smaller",
};
export const fromRear: View = { right: "x", up: "y", toward: "z", rightward: "reversed", nearer: "greater" };
/** From the right hand side, so that the front is on the left. */
export const fromSide: View = { right: "z", up: "y", toward: "x", rightward: "as counted", nearer: "greater" };
/** From above, the front below. */
export const fromAbove: View = { right: "x", up: "z", toward: "y", rightward: "as counted", nearer: "greater" };

/** Millimetres on the paper for a length, at a scale of one to `reduction`. */
export function onPaper(length: Length, reduction: number): number {
  return toNumber(toMillimetres(length)) / reduction;
}

/** A view at a scale: where places come to lie on the paper. */
export interface Projection {
  readonly view: View;
  /** The scale is one to this. */
  readonly reduction: number;
}

export function acrossPaper({ view, reduction }: Projection, at: Length): number {
  return onPaper(view.rightward === "as counted" ? at : negate(at), reduction);
}

export function downPaper({ reduction }: Projection, at: Length): number {
  return -onPaper(at, reduction);
}

export function point(projection: Projection, right: Length, up: Length): Point {
  return { x: acrossPaper(projection, right), y: downPaper(projection, up) };
}

/** The corners of a solid's outline in a view; a notch shows from the side. */
export function outlineOf(projection: Projection, solid: Solid): readonly Point[] {
  const { view } = projection;
  const [u, v] = [solid.place[view.right], solid.place[view.up]];
  const whole = corners(point(projection, u[0], v[0]), point(projection, u[1], v[1]));
  if (solid.notch === undefined || view.right !== "z") return whole;
  const { z, y } = solid.notch;
  return [
    point(projection, z, v[0]),
    point(projection, u[1], v[0]),
    point(projection, u[1], v[1]),
    point(projection, u[0], v[1]),
    point(projection, u[0], y),
    point(projection, z, y),
  ];
}

/** What lies on the far side of a cut, and what the cut goes through. Without a cut, everything is seen. */
export interface Parted {
  readonly seen: readonly Solid[];
  readonly cut: readonly Solid[];
}

export function parted(view: View, solids: readonly Solid[], at: Length | undefined): Parted {
  if (at === undefined) return { seen: solids, cut: [] };
  const range = (solid: Solid): Range => solid.place[view.toward];
  const cut = solids.filter((solid) => less(range(solid)[0], at) && less(at, range(solid)[1]));
  const beyond = (solid: Solid): boolean =>
    view.nearer === "greater" ? compare(range(solid)[1], at) <= 0 : compare(at, range(solid)[0]) <= 0;
  return { seen: solids.filter(beyond), cut };
}

/** Farthest first, so that each covers what is behind it; of equals, in the order given. */
export function farthestFirst(view: View, solids: readonly Solid[]): readonly Solid[] {
  const near = (solid: Solid): Length => solid.place[view.toward][view.nearer === "greater" ? 1 : 0];
  const sign = view.nearer === "greater" ? 1 : -1;
  return [...solids].sort((a, b) => sign * compare(near(a), near(b)));
}

/** A solid in view: clear paper, its edges, and the grain of the face that is turned to the eye. */
export function seenItem(projection: Projection, solid: Solid): Area {
  const { view } = projection;
  const along = alongPaper(view, solid.grain);
  const faced = along !== undefined && solid.grain !== view.toward;
  return {
    kind: "area",
    points: outlineOf(projection, solid),
    hatch: solid.made === "existing" ? "existing" : faced ? "grain" : undefined,
    along: along ?? { x: 1, y: 0 },
    weight: solid.role === "slide" ? "fine" : "medium",
  };
}

function alongPaper(view: View, grain: Axis | undefined): Point | undefined {
  if (grain === view.right) return { x: 1, y: 0 };
  return grain === view.up ? { x: 0, y: 1 } : undefined;
}

/** A solid that is cut: heavy edges and the lines of its material. */
export function cutItem(projection: Projection, solid: Solid): Area {
  const points = outlineOf(projection, solid);
  const xs = points.map((one) => one.x);
  const ys = points.map((one) => one.y);
  const [wide, high] = [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)];
  const alongGrain = solid.made === "solid" ? alongPaper(projection.view, solid.grain) : undefined;
  return {
    kind: "area",
    points,
    hatch: alongGrain === undefined ? solid.made : "grain",
    along: alongGrain ?? (high < wide ? { x: 1, y: 0 } : { x: 0, y: 1 }),
    weight: "heavy",
  };
}

export function hiddenItem(projection: Projection, solid: Solid): Item {
  return outline(outlineOf(projection, solid), "fine", "dashed");
}

/** The item with what it is, for those who point at it or have it read to them. */
export function named(solid: Solid, name: string, items: readonly Item[]): Group {
  return { kind: "group", id: solid.id, name, target: solid.target, items };
}

export function rangeOn(projection: Projection, axis: "right" | "up", range: Range): readonly [number, number] {
  const place = axis === "right" ? acrossPaper : downPaper;
  return [place(projection, range[0]), place(projection, range[1])];
}
