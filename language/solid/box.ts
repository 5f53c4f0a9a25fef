import type { Length } from "../core/length.ts";
import { add, isPositive, less, multiply, negate, subtract, toNumber, zero } from "../core/rational.ts";

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

/** Plain numbers this far apart in inches are apart in truth too: far above what a double loses, far below what a shop can cut. */
const hair = 1e-7;

/** The box over three stretches; `undefined` unless each has some length. */
export function boxOf(x: Range, y: Range, z: Range): Box | undefined {
  if (!less(x.from, x.to) || !less(y.from, y.to) || !less(z.from, z.to)) return undefined;
  return made(x, y, z);
}

function made(x: Range, y: Range, z: Range): Box {
  const rough = [x.from, x.to, y.from, y.to, z.from, z.to].map(toNumber) as unknown as Box["rough"];
  return { x, y, z, rough };
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
export function apart(a: Box, b: Box): boolean {
  const [p, q] = [a.rough, b.rough];
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

/** What two boxes share; `undefined` where that is no solid, so two that touch share nothing. */
export function common(a: Box, b: Box): Box | undefined {
  if (apart(a, b)) return undefined;
  const x = shared(a.x, b.x);
  const y = x === undefined ? undefined : shared(a.y, b.y);
  const z = y === undefined ? undefined : shared(a.z, b.z);
  return x === undefined || y === undefined || z === undefined ? undefined : made(x, y, z);
}

/** What is left of a box when another is cut out of it: up to six boxes that share nothing. */
export function without(whole: Box, cut: Box): readonly Box[] {
  const hole = common(whole, cut);
  if (hole === undefined) return [whole];
  const left: Box[] = [];
  let rest: Box = whole;
  for (const axis of axes) {
    const before = boxWith(rest, axis, { from: rest[axis].from, to: hole[axis].from });
    const after = boxWith(rest, axis, { from: hole[axis].to, to: rest[axis].to });
    if (before !== undefined) left.push(before);
    if (after !== undefined) left.push(after);
    rest = made(axis === "x" ? hole.x : rest.x, axis === "y" ? hole.y : rest.y, axis === "z" ? hole.z : rest.z);
  }
  return left;
}

/** The same box over another stretch of one axis; `undefined` where that has no length. */
export function boxWith(box: Box, axis: Axis, range: Range): Box | undefined {
  return boxOf(axis === "x" ? range : box.x, axis === "y" ? range : box.y, axis === "z" ? range : box.z);
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
  const over = (axis: Axis): Range =>
    rest.reduce<Range>(
      (range, box) => ({
        from: less(box[axis].from, range.from) ? box[axis].from : range.from,
        to: less(range.to, box[axis].to) ? box[axis].to : range.to,
      }),
      first[axis],
    );
  return rest.length === 0 ? first : made(over("x"), over("y"), over("z"));
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
