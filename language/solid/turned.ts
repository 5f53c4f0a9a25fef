import type { Box } from "./box.ts";

/** A place in plan from the pivot of a leaf: across, away from its hinges, and behind its front face. */
export type Point = readonly [number, number];

export interface Plan {
  readonly from: Point;
  readonly to: Point;
}

/** What a leaf turns about: where it is shut, across which axis, at which end of that, and on which face of its case. */
export interface Pivot {
  readonly bounds: Box;
  readonly axis: "x" | "y";
  readonly hinge: "low" | "high";
  readonly rear: boolean;
}

/** Less than this, in inches, is a touch. */
export const touching = 1e-4;

/** A box in plan from the pivot: how far from the hinges, and how far behind the front face. */
export function planOf({ bounds, axis, hinge, rear }: Pivot, { rough }: Box): Plan {
  const [low, high] = axis === "x" ? [rough[0], rough[1]] : [rough[2], rough[3]];
  const mine = bounds.rough;
  const [first, last] = axis === "x" ? [mine[0], mine[1]] : [mine[2], mine[3]];
  const [from, to] = hinge === "low" ? [low - first, high - first] : [last - high, last - low];
  const [front, back] = rear ? [mine[5] - rough[5], mine[5] - rough[4]] : [rough[4] - mine[4], rough[5] - mine[4]];
  return { from: [from, front], to: [to, back] };
}

export function cornersOf({ from, to }: Plan): readonly Point[] {
  return [from, [to[0], from[1]], to, [from[0], to[1]]];
}

/** The corners of a rectangle turned about the pivot, out of the face, by so many degrees. */
export function turned(plan: Plan, degrees: number): readonly Point[] {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return cornersOf(plan).map(([a, n]): Point => [a * cos + n * sin, -a * sin + n * cos]);
}

/** Whether a rectangle turned about the pivot by so many degrees overlaps one that stands still. */
export function overlaps(mine: Plan, degrees: number, other: Plan): boolean {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const moved = turned(mine, degrees);
  const still = cornersOf(other);
  const directions: readonly Point[] = [
    [1, 0],
    [0, 1],
    [cos, -sin],
    [sin, cos],
  ];
  return directions.every((direction) => {
    const [p, q] = [shadow(moved, direction), shadow(still, direction)];
    return touching < Math.min(p[1], q[1]) - Math.max(p[0], q[0]);
  });
}

function shadow(points: readonly Point[], [x, y]: Point): Point {
  const along = points.map((point) => point[0] * x + point[1] * y);
  return [Math.min(...along), Math.max(...along)];
}

/** Whether two boxes share some of the axis that a leaf turns about: its height, or its width. */
export function sharesHeight({ axis }: Pivot, a: Box, b: Box): boolean {
  const along = axis === "x" ? 2 : 0;
  return touching < Math.min(a.rough[along + 1]!, b.rough[along + 1]!) - Math.max(a.rough[along]!, b.rough[along]!);
}
