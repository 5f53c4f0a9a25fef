import type { Length } from "../core/length.ts";
import { add, equal, isPositive, less, multiply, negate, subtract, toNumber, zero } from "../core/rational.ts";

/** A direction of a frame: x left to right, y up, z from the front face backwards. */
export type Axis = "x" | "y" | "z";

export const axes: readonly Axis[] = ["x", "y", "z"];

/** A stretch along one axis, in inches, exact; `to` is never before `from` in a box that was made by `boxOf`. */
export interface Range {
  readonly from: Length;
  readonly to: Length;
}

/** A box with its faces along the axes. `rough` holds x, y and z from and to as plain numbers, only to pass over what is far apart. */
export interface Box {
  readonly x: Range;
  readonly y: Range;
  readonly z: Range;
  readonly rough: readonly [number, number, number, number, number, number];
}

// What is asked of boxes is asked some ten thousand times for a job, and mostly once for each job that is opened: nothing
// here takes tuples apart, which until a program is warm makes four objects for two names.

/** Plain numbers this far apart in inches are apart in truth too: far above what a double loses, far below what a shop can cut. */
const hair = 1e-7;

/** Whether one length is less than another. Their plain numbers say it, unless they lie so close that only the exact lengths can. */
function isLess(a: Length, roughA: number, b: Length, roughB: number): boolean {
  if (hair < Math.abs(roughB - roughA)) return roughA < roughB;
  return !equal(a, b) && less(a, b);
}

/** The box over three stretches; `undefined` unless each has some length. */
export function boxOf(x: Range, y: Range, z: Range): Box | undefined {
  const rough: Box["rough"] = [
    toNumber(x.from),
    toNumber(x.to),
    toNumber(y.from),
    toNumber(y.to),
    toNumber(z.from),
    toNumber(z.to),
  ];
  return isLess(x.from, rough[0], x.to, rough[1]) &&
    isLess(y.from, rough[2], y.to, rough[3]) &&
    isLess(z.from, rough[4], z.to, rough[5])
    ? { x, y, z, rough }
    : undefined;
}

/** A stretch with its ends as plain numbers. */
interface RoughRange {
  readonly range: Range;
  readonly from: number;
  readonly to: number;
}

const at = { x: 0, y: 2, z: 4 } as const;

function along(box: Box, axis: Axis): RoughRange {
  return { range: box[axis], from: box.rough[at[axis]], to: box.rough[at[axis] + 1]! };
}

/** The box over three stretches that each have some length. */
function made(x: RoughRange, y: RoughRange, z: RoughRange): Box {
  return { x: x.range, y: y.range, z: z.range, rough: [x.from, x.to, y.from, y.to, z.from, z.to] };
}

function replaced(box: Box, axis: Axis, by: RoughRange): Box {
  const rough = box.rough.slice() as [number, number, number, number, number, number];
  rough[at[axis]] = by.from;
  rough[at[axis] + 1] = by.to;
  return {
    x: axis === "x" ? by.range : box.x,
    y: axis === "y" ? by.range : box.y,
    z: axis === "z" ? by.range : box.z,
    rough,
  };
}

/** The stretch that begins at `from` and is `long`. */
export function span(from: Length, long: Length): Range {
  return { from, to: add(from, long) };
}

/** The stretch that ends at `to` and is `long`. */
export function spanTo(to: Length, long: Length): Range {
  return { from: subtract(to, long), to };
}

export function extent(range: Range): Length {
  return subtract(range.to, range.from);
}

/** Whether two boxes certainly share nothing, not even a face. */
export function apart({ rough: p }: Box, { rough: q }: Box): boolean {
  return (
    p[1] + hair < q[0] ||
    q[1] + hair < p[0] ||
    p[3] + hair < q[2] ||
    q[3] + hair < p[2] ||
    p[5] + hair < q[4] ||
    q[5] + hair < p[4]
  );
}

/** What two stretches share; `undefined` where that has no length. */
export function shared(a: Range, b: Range): Range | undefined {
  const from = less(a.from, b.from) ? b.from : a.from;
  const to = less(a.to, b.to) ? a.to : b.to;
  return less(from, to) ? { from, to } : undefined;
}

/** Whether two boxes reach over one stretch of an axis, of some length. */
export function alongside(a: Box, b: Box, axis: Axis): boolean {
  const low = at[axis];
  const p = a.rough;
  const q = b.rough;
  if (p[low] + hair < q[low + 1]! && q[low] + hair < p[low + 1]!) return true;
  const one = a[axis];
  const other = b[axis];
  return isLess(one.from, p[low], other.to, q[low + 1]!) && isLess(other.from, q[low], one.to, p[low + 1]!);
}

/** What two boxes that are alongside share of an axis. */
function sharedAlong(a: Box, b: Box, axis: Axis): RoughRange {
  const one = along(a, axis);
  const other = along(b, axis);
  const low = isLess(one.range.from, one.from, other.range.from, other.from) ? other : one;
  const high = isLess(one.range.to, one.to, other.range.to, other.to) ? one : other;
  return { range: { from: low.range.from, to: high.range.to }, from: low.from, to: high.to };
}

/** What two boxes share; `undefined` where that is no solid, so two that touch share nothing. */
export function common(a: Box, b: Box): Box | undefined {
  if (apart(a, b)) return undefined;
  if (!alongside(a, b, "x") || !alongside(a, b, "y") || !alongside(a, b, "z")) return undefined;
  return made(sharedAlong(a, b, "x"), sharedAlong(a, b, "y"), sharedAlong(a, b, "z"));
}

/** What is left of a box when another is cut out of it: up to six boxes that share nothing. */
export function without(whole: Box, cut: Box): readonly Box[] {
  const hole = common(whole, cut);
  if (hole === undefined) return [whole];
  const left: Box[] = [];
  let rest: Box = whole;
  for (const axis of axes) {
    const all = along(rest, axis);
    const out = along(hole, axis);
    if (isLess(all.range.from, all.from, out.range.from, out.from))
      left.push(
        replaced(rest, axis, { range: { from: all.range.from, to: out.range.from }, from: all.from, to: out.from }),
      );
    if (isLess(out.range.to, out.to, all.range.to, all.to))
      left.push(replaced(rest, axis, { range: { from: out.range.to, to: all.range.to }, from: out.to, to: all.to }));
    rest = replaced(rest, axis, out);
  }
  return left;
}

/** The same box over another stretch of one axis; `undefined` where that has no length. */
export function boxWith(box: Box, axis: Axis, range: Range): Box | undefined {
  const from = toNumber(range.from);
  const to = toNumber(range.to);
  return isLess(range.from, from, range.to, to) ? replaced(box, axis, { range, from, to }) : undefined;
}

/** A box made longer along an axis: backwards by a negative amount, forwards by a positive one. */
export function swept(box: Box, axis: Axis, by: Length): Box {
  const { from, to } = box[axis];
  const range = less(by, zero) ? { from: add(from, by), to } : { from, to: add(to, by) };
  return boxWith(box, axis, range) ?? box;
}

/** The smallest box round others; `undefined` for none. */
export function around(boxes: readonly Box[]): Box | undefined {
  const [first, ...rest] = boxes;
  if (first === undefined) return undefined;
  if (rest.length === 0) return first;
  const over = (axis: Axis): RoughRange =>
    rest.reduce<RoughRange>(
      (round, box) => {
        const one = along(box, axis);
        const isBefore = isLess(one.range.from, one.from, round.range.from, round.from);
        const isBehind = isLess(round.range.to, round.to, one.range.to, one.to);
        return {
          range: { from: (isBefore ? one : round).range.from, to: (isBehind ? one : round).range.to },
          from: (isBefore ? one : round).from,
          to: (isBehind ? one : round).to,
        };
      },
      along(first, axis),
    );
  return made(over("x"), over("y"), over("z"));
}

/** Volume in cubic inches, exact. */
export function volumeOf(box: Box): Length {
  return multiply(multiply(extent(box.x), extent(box.y)), extent(box.z));
}

/** Volume of boxes that share nothing, in cubic inches, as a plain number for weights. */
export function roughVolume(boxes: readonly Box[]): number {
  return boxes.reduce(
    (sum, { rough }) => sum + (rough[1] - rough[0]) * (rough[3] - rough[2]) * (rough[5] - rough[4]),
    0,
  );
}

/** A stretch seen from the other end of a width: what lies left seen from the front lies right seen from behind. */
export function mirrored(range: Range, whole: Length): Range {
  return { from: subtract(whole, range.to), to: subtract(whole, range.from) };
}

/** Whether a length is nought or more. */
export function atLeastNought(length: Length): boolean {
  return !isPositive(negate(length));
}
