import type { Edge, Face, Shape, Spot, Way } from "./exploded-shape.ts";
import { within } from "./exploded-shape.ts";

/**
 * Isometric projection (ISO 5456-3) from the right, above and before. A place on the sheet is `across`, which is x + z,
 * and `down`, which is x − z − 2y: whole steps, so that places that fall together in truth fall together here.
 * `onSheet` gives them their angles.
 */
export interface Seen {
  readonly across: number;
  readonly down: number;
}

/** A straight line in space. */
export interface Segment {
  readonly from: Spot;
  readonly to: Spot;
}

/** What of a straight line is not hidden. */
export interface SeenLine {
  readonly from: Seen;
  readonly to: Seen;
}

export interface SeenBody {
  /** What of each face is not hidden, as convex outlines. */
  readonly regions: readonly { readonly face: Face; readonly points: readonly Seen[] }[];
  readonly edges: readonly (SeenLine & { readonly kind: Edge["kind"] })[];
  readonly marks: readonly SeenLine[];
  /** The bodies that hide some of this one, by their places in the list. */
  readonly under: ReadonlySet<number>;
}

export interface Body extends Shape {
  /** Lines on its faces. */
  readonly marks: readonly Segment[];
}

export interface SeenScene {
  readonly bodies: readonly SeenBody[];
  /** What of each loose line is not hidden, in their order. */
  readonly lines: readonly (readonly SeenLine[])[];
}

/** In inches on the sheet, y downwards: each axis at its true length, x and z at 30° to the level. */
export function onSheet({ across, down }: Seen): { readonly x: number; readonly y: number } {
  return { x: across * Math.cos(Math.PI / 6), y: down / 2 };
}

export function seenFrom([x, y, z]: Spot): Seen {
  return { across: x + z, down: x - z - 2 * y };
}

/**
 * What of bodies and of loose lines is seen where nearer faces do not hide it. Exact but for slivers: faces are cut by
 * the faces before them, even where bodies stand in one another.
 */
export function seenScene(bodies: readonly Body[], lines: readonly Segment[]): SeenScene {
  const planes = bodies.map(({ faces }, body) => faces.map((face) => planeOf(face, body)));
  // What hides much goes first: the rest has less left to be cut. What is hidden wholly hides nothing more.
  const all = planes.flat().sort((a, b) => sizeOf(b) - sizeOf(a));
  const gone = new Set<Plane>();
  const covered = planes.map((own) => {
    const screens = screensOf(own, all).filter((screen) => !gone.has(screen));
    const under = new Set<number>();
    const regions = own.flatMap((plane) => {
      const left = uncovered(plane, screens, under);
      if (left.length === 0) gone.add(plane);
      return left.map((points) => ({ face: plane.face, points }));
    });
    return { regions, under };
  });
  const before = all.filter((plane) => !gone.has(plane));
  return {
    bodies: bodies.map(({ edges, marks }, index) => {
      const { regions, under } = covered[index]!;
      // Of a body of which no face is seen, there is no edge to be seen either.
      const screens = regions.length === 0 ? [] : screensOf(planes[index]!, before);
      const seen = <T extends Segment>(lines: readonly T[]): readonly (readonly [T, SeenLine])[] =>
        regions.length === 0 ? [] : lines.flatMap((one) => seenParts(one, screens).map((part) => [one, part] as const));
      return {
        regions,
        under,
        edges: seen(edges).map(([{ kind }, part]) => ({ ...part, kind })),
        marks: seen(marks).map(([, part]) => part),
      };
    }),
    lines: lines.map((one) => seenParts(one, before)),
  };
}

/** Those that may lie before some of the planes of a body. */
function screensOf(own: readonly Plane[], all: readonly Plane[]): readonly Plane[] {
  const reach = widened(reachOf(own.flatMap(({ corners }) => corners)), border);
  const farthest = own.reduce((least, plane) => Math.min(least, plane.farthest), Infinity);
  return all.filter((plane) => farthest < plane.nearest && !besides(reach, plane.reach));
}

/** A number that grows evenly over the sheet: `[of across, of down, everywhere]`. */
type Slope = readonly [number, number, number];

/** A face with what its cutting needs. */
interface Plane {
  readonly face: Face;
  readonly body: number;
  /** How near it is: x + y − z. */
  readonly near: Slope;
  /** Each is nought or more within it. */
  readonly sides: readonly Slope[];
  readonly corners: readonly Seen[];
  readonly reach: Reach;
  readonly nearest: number;
  readonly farthest: number;
}

/**
 * How far something goes to each side across the three ways of edges, as pairs of least and most. Two faces of which
 * these overlap in all three do overlap, for no face has an edge of another way.
 */
type Reach = readonly [number, number, number, number, number, number];

/** Where a line of sight meets a plane across a way: its places on the two other ways, and how near that is. */
const meets: Readonly<Record<Way, (at: number) => readonly [Slope, Slope, Slope]>> = {
  0: (at) => [
    [-0.5, -0.5, at],
    [1, 0, -at],
    [-1.5, -0.5, 3 * at],
  ],
  1: (at) => [
    [0.5, 0.5, at],
    [0.5, -0.5, -at],
    [0, 1, 3 * at],
  ],
  2: (at) => [
    [1, 0, -at],
    [0.5, -0.5, -at],
    [1.5, -0.5, -3 * at],
  ],
};

function planeOf(face: Face, body: number): Plane {
  const { way, at, from, to } = face;
  const [a, b, near] = meets[way](at);
  const corners = [from, [to[0], from[1]] as const, to, [from[0], to[1]] as const].map((place) =>
    seenFrom(spotOn(way, at, place)),
  );
  const nearness = corners.map((corner) => valueAt(near, corner));
  return {
    face,
    body,
    near,
    sides: [lessBy(a, from[0]), lessFrom(a, to[0]), lessBy(b, from[1]), lessFrom(b, to[1])],
    corners,
    reach: reachOf(corners),
    nearest: Math.max(...nearness),
    farthest: Math.min(...nearness),
  };
}

/** The place in space of a place on a plane across a way. */
export function spotOn(way: Way, at: number, [a, b]: readonly [number, number]): Spot {
  const spot: [number, number, number] = [at, at, at];
  spot[within[way]![0]] = a;
  spot[within[way]![1]] = b;
  return spot;
}

function lessBy([across, down, all]: Slope, value: number): Slope {
  return [across, down, all - value];
}

function lessFrom([across, down, all]: Slope, value: number): Slope {
  return [-across, -down, value - all];
}

function valueAt([across, down, all]: Slope, place: Seen): number {
  return across * place.across + down * place.down + all;
}

function sizeOf({ face: { from, to } }: Plane): number {
  return (to[0] - from[0]) * (to[1] - from[1]);
}

/** Nearer by less than this, in inches, is as near: flush faces do not hide one another. */
const flush = 1e-3;
/** Lines on the very border of what is before them are hidden: the border draws them. */
const border = 1e-4;
/** Nothing that a pen could draw is shorter or narrower. */
const sliver = 2e-3;

function reachOf(points: readonly Seen[]): Reach {
  let [p0, p1, q0, q1, r0, r1] = [Infinity, -Infinity, Infinity, -Infinity, Infinity, -Infinity];
  for (const { across, down } of points) {
    const [q, r] = [across + down, across - down];
    if (across < p0) p0 = across;
    if (p1 < across) p1 = across;
    if (q < q0) q0 = q;
    if (q1 < q) q1 = q;
    if (r < r0) r0 = r;
    if (r1 < r) r1 = r;
  }
  return [p0, p1, q0, q1, r0, r1];
}

function besides(a: Reach, b: Reach): boolean {
  return a[1] <= b[0] || b[1] <= a[0] || a[3] <= b[2] || b[3] <= a[2] || a[5] <= b[4] || b[5] <= a[4];
}

/** A convex piece of what is left of a face. */
interface Fragment {
  readonly points: readonly Seen[];
  readonly reach: Reach;
}

function uncovered(plane: Plane, screens: readonly Plane[], under: Set<number>): readonly (readonly Seen[])[] {
  let left: readonly Fragment[] = [{ points: plane.corners, reach: plane.reach }];
  for (const screen of screens) {
    if (screen.nearest <= plane.farthest + flush || besides(plane.reach, screen.reach)) continue;
    const nearer = nearerBy(screen, plane);
    if (!isAnywhere(nearer, plane.corners) || !isAnywhere(nearer, screen.corners)) continue;
    const cutters = [...screen.sides, nearer];
    const next = left.flatMap((fragment) => {
      const rest = besides(fragment.reach, screen.reach) ? undefined : cutOff(fragment, cutters);
      if (rest === undefined) return [fragment];
      if (screen.body !== plane.body) under.add(screen.body);
      return rest;
    });
    left = next;
    if (left.length === 0) break;
  }
  return left.map(({ points }) => points);
}

/** More than nought where a screen lies before a plane. */
function nearerBy(screen: Plane, plane: Plane): Slope {
  const [a, b] = [screen.near, plane.near];
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2] - flush];
}

function isAnywhere(slope: Slope, points: readonly Seen[]): boolean {
  return points.some((point) => 0 < valueAt(slope, point));
}

/** What is left of a fragment without all that lies within every cutter; `undefined` where that is nothing or next to nothing. */
function cutOff(fragment: Fragment, cutters: readonly Slope[]): readonly Fragment[] | undefined {
  const outside: Fragment[] = [];
  let inside = fragment.points;
  for (const cutter of cutters) {
    const values = inside.map((point) => valueAt(cutter, point));
    if (values.every((value) => 0 <= value)) continue;
    if (values.every((value) => value <= 0)) return undefined;
    const off = keptBy(inside, values, -1);
    const reach = reachOf(off);
    if (!isSliver(off, reach)) outside.push({ points: off, reach });
    inside = keptBy(inside, values, 1);
  }
  return isSliver(inside, reachOf(inside)) ? undefined : outside;
}

function isSliver(points: readonly Seen[], [p0, p1, q0, q1, r0, r1]: Reach): boolean {
  return points.length < 3 || areaOf(points) < sliver * Math.max(p1 - p0, q1 - q0, r1 - r0);
}

/** What of a convex outline lies where its values are nought or more (1), or nought or less (-1). */
function keptBy(points: readonly Seen[], values: readonly number[], side: 1 | -1): readonly Seen[] {
  const kept: Seen[] = [];
  for (let index = 0; index < points.length; index++) {
    const after = index + 1 === points.length ? 0 : index + 1;
    const [v, w] = [side * values[index]!, side * values[after]!];
    if (0 <= v) kept.push(points[index]!);
    if ((v < 0 && 0 < w) || (0 < v && w < 0)) kept.push(between(points[index]!, points[after]!, v / (v - w)));
  }
  return kept;
}

function between(a: Seen, b: Seen, share: number): Seen {
  return { across: a.across + (b.across - a.across) * share, down: a.down + (b.down - a.down) * share };
}

export function areaOf(points: readonly Seen[]): number {
  let twice = 0;
  for (let index = 0; index < points.length; index++) {
    const [a, b] = [points[index]!, points[(index + 1) % points.length]!];
    twice += a.across * b.down - b.across * a.down;
  }
  return Math.abs(twice) / 2;
}

function nearnessOf([x, y, z]: Spot): number {
  return x + y - z;
}

/** What is left of a line under all faces before it. */
function seenParts({ from, to }: Segment, screens: readonly Plane[]): readonly SeenLine[] {
  const [a, b] = [seenFrom(from), seenFrom(to)];
  const [nearA, nearB] = [nearnessOf(from), nearnessOf(to)];
  const reach = widened(reachOf([a, b]), border);
  const farthest = Math.min(nearA, nearB) + flush;
  const hidden: (readonly [number, number])[] = [];
  for (const plane of screens) {
    if (plane.nearest <= farthest || besides(reach, plane.reach)) continue;
    const stretch = hiddenBy(plane, a, b, nearA, nearB);
    if (stretch !== undefined) hidden.push(stretch);
  }
  if (hidden.length === 0) return [{ from: a, to: b }];
  hidden.sort((one, other) => one[0] - other[0]);
  const long = Math.max(Math.abs(b.across - a.across), Math.abs(b.down - a.down));
  const parts: SeenLine[] = [];
  let at = 0;
  for (const [start, end] of [...hidden, [1, 1] as const]) {
    if (sliver < (start - at) * long) parts.push({ from: between(a, b, at), to: between(a, b, start) });
    at = Math.max(at, end);
  }
  return parts;
}

function widened([p0, p1, q0, q1, r0, r1]: Reach, by: number): Reach {
  return [p0 - by, p1 + by, q0 - by, q1 + by, r0 - by, r1 + by];
}

/** From which share of a line to which a face lies before it. */
function hiddenBy(plane: Plane, a: Seen, b: Seen, nearA: number, nearB: number): readonly [number, number] | undefined {
  let [start, end] = [0, 1];
  const keep = (v: number, w: number): void => {
    if (v < 0 && w < 0) end = -1;
    else if (v < 0) start = Math.max(start, v / (v - w));
    else if (w < 0) end = Math.min(end, v / (v - w));
  };
  keep(valueAt(plane.near, a) - nearA - flush, valueAt(plane.near, b) - nearB - flush);
  for (const side of plane.sides) {
    if (end <= start) return undefined;
    keep(valueAt(side, a) + border, valueAt(side, b) + border);
  }
  return start < end ? [start, end] : undefined;
}
