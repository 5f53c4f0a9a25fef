import type { Point } from "./display-list.ts";

/** What lies where on the paper, to the millimetre. */
export interface Paper {
  /** Whether nothing lies within so much to each side of a place. */
  readonly isFree: (at: Point, half: Point) => boolean;
  /** Keeps room for a label and for the line that leads to it. */
  readonly take: (at: Point, half: Point, line: Stretch | undefined) => void;
  /** How much that is not the thing's own lies under a line, in millimetres; another's label or line counts for more. */
  readonly crossed: (from: Point, to: Point, thing: number) => number;
}

interface Stretch {
  readonly from: Point;
  readonly to: Point;
}

interface Room {
  readonly at: Point;
  readonly half: Point;
}

/** What crossing a line, and a label, weighs in millimetres of paper crossed. */
const crossing = { line: 12, label: 60 };

/** The paper under things, each made up of convex outlines. */
export function paperOf(things: readonly (readonly (readonly Point[])[])[]): Paper {
  const grid = gridOf(things);
  const rooms: Room[] = [];
  const lines: Stretch[] = [];
  return {
    isFree: (at, half) =>
      grid.covered(at, half) === 0 &&
      rooms.every((room) => isApart(room, at, half)) &&
      lines.every((line) => !enters(line, at, half)),
    take: (at, half, line) => {
      rooms.push({ at, half });
      if (line !== undefined) lines.push(line);
    },
    crossed: (from, to, thing) => {
      const line = { from, to };
      let met = 0;
      for (const { at, half } of rooms) if (enters(line, at, half)) met += crossing.label;
      for (const other of lines) if (crosses(line, other)) met += crossing.line;
      return met + grid.foreign(from, to, thing);
    },
  };
}

interface Grid {
  /** How many cells within so much to each side of a place are covered. */
  readonly covered: (at: Point, half: Point) => number;
  /** How many millimetres of a line lie on other things. */
  readonly foreign: (from: Point, to: Point, thing: number) => number;
}

const free = -1;

function gridOf(things: readonly (readonly (readonly Point[])[])[]): Grid {
  const all = things.flat(2);
  const most = (pick: (point: Point) => number): number => all.reduce((best, point) => Math.max(best, pick(point)), 0);
  const [left, top] = [Math.floor(-most(({ x }) => -x)), Math.floor(-most(({ y }) => -y))];
  const wide = Math.ceil(most(({ x }) => x) - left) + 1;
  const high = Math.ceil(most(({ y }) => y) - top) + 1;
  const cells = new Int16Array(wide * high).fill(free);
  for (const [thing, outlines] of things.entries())
    for (const points of outlines) fill(points, left, top, (x, y) => (cells[y * wide + x] = thing));
  const sums = sumsOf(cells, wide, high);
  const inside = (value: number, size: number): number => Math.max(0, Math.min(size, value));
  return {
    covered: (at, half) => {
      const x0 = inside(Math.floor(at.x - half.x - left), wide);
      const x1 = inside(Math.ceil(at.x + half.x - left), wide);
      const y0 = inside(Math.floor(at.y - half.y - top), high) * (wide + 1);
      const y1 = inside(Math.ceil(at.y + half.y - top), high) * (wide + 1);
      return sums[y1 + x1]! - sums[y0 + x1]! - sums[y1 + x0]! + sums[y0 + x0]!;
    },
    foreign: (from, to, thing) => {
      const steps = Math.ceil(Math.hypot(to.x - from.x, to.y - from.y));
      let count = 0;
      for (let step = 0; step < steps; step++) {
        const x = Math.floor(from.x + ((to.x - from.x) * step) / steps - left);
        const y = Math.floor(from.y + ((to.y - from.y) * step) / steps - top);
        if (x < 0 || wide <= x || y < 0 || high <= y) continue;
        const whose = cells[y * wide + x]!;
        if (whose !== free && whose !== thing) count++;
      }
      return count;
    },
  };
}

/** How many cells are covered left of and above each corner of the grid. */
function sumsOf(cells: Int16Array, wide: number, high: number): Int32Array {
  const sums = new Int32Array((wide + 1) * (high + 1));
  for (let y = 0; y < high; y++) {
    for (let x = 0; x < wide; x++) {
      const at = (y + 1) * (wide + 1) + x + 1;
      const here = cells[y * wide + x] === free ? 0 : 1;
      sums[at] = here + sums[at - 1]! + sums[at - wide - 1]! - sums[at - wide - 2]!;
    }
  }
  return sums;
}

/** The cells that a convex outline touches, row by row. */
function fill(points: readonly Point[], left: number, top: number, visit: (x: number, y: number) => void): void {
  const first = points.reduce((least, { y }) => Math.min(least, y), Infinity);
  const last = points.reduce((most, { y }) => Math.max(most, y), -Infinity);
  for (let row = Math.floor(first - top); row <= Math.floor(last - top); row++) {
    // Within the row, an outline is widest at the row's borders or at a corner.
    let [start, end] = [Infinity, -Infinity];
    const widen = (x: number): void => {
      start = Math.min(start, x);
      end = Math.max(end, x);
    };
    for (let index = 0; index < points.length; index++) {
      const [a, b] = [points[index]!, points[(index + 1) % points.length]!];
      if (row <= a.y - top && a.y - top < row + 1) widen(a.x);
      for (const y of [row + top, row + 1 + top])
        if (a.y <= y !== b.y <= y) widen(a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y));
    }
    for (let x = Math.floor(start - left); x <= Math.floor(end - left); x++) visit(x, row);
  }
}

function isApart(room: Room, at: Point, half: Point): boolean {
  return room.half.x + half.x <= Math.abs(room.at.x - at.x) || room.half.y + half.y <= Math.abs(room.at.y - at.y);
}

/** Whether a line comes within so much of a place: where neither of its ends nor its whole way passes beside it. */
function enters({ from, to }: Stretch, at: Point, half: Point): boolean {
  const [x0, y0] = [from.x - at.x, from.y - at.y];
  const [x1, y1] = [to.x - at.x, to.y - at.y];
  if ((half.x <= x0 && half.x <= x1) || (x0 <= -half.x && x1 <= -half.x)) return false;
  if ((half.y <= y0 && half.y <= y1) || (y0 <= -half.y && y1 <= -half.y)) return false;
  // How far the line passes from the middle, against how far the box reaches that way.
  return Math.abs(x0 * y1 - y0 * x1) < half.x * Math.abs(y1 - y0) + half.y * Math.abs(x1 - x0);
}

function crosses(one: Stretch, other: Stretch): boolean {
  return parts(one, other) && parts(other, one);
}

/** Whether the ends of one line lie on both sides of another. */
function parts({ from, to }: Stretch, other: Stretch): boolean {
  const side = (at: Point): number => (to.x - from.x) * (at.y - from.y) - (to.y - from.y) * (at.x - from.x);
  return side(other.from) * side(other.to) < 0;
}
