import type { Box } from "../solid/box.ts";

/** A point in space, or a way through it: inches to the right, up, and from the front backwards. */
export type Spot = readonly [x: number, y: number, z: number];

/** A direction by its place in a `Spot`. */
export type Way = 0 | 1 | 2;

/** A box of plain numbers in inches. */
export interface Block {
  readonly from: Spot;
  readonly to: Spot;
}

/** A rectangle that is turned to the eye: a right end (way 0), a top (1) or a front (2), and what it spans on the other two ways. */
export interface Face {
  readonly way: Way;
  readonly at: number;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/** An edge of faces that are turned to the eye: of one alone, or between two. */
export interface Edge {
  readonly from: Spot;
  readonly to: Spot;
  readonly kind: "outline" | "inner";
}

export interface Shape {
  readonly faces: readonly Face[];
  readonly edges: readonly Edge[];
}

/** The two ways that a face across a way lies in. */
export const within: readonly (readonly [Way, Way])[] = [
  [1, 2],
  [0, 2],
  [0, 1],
];

/** Sums and halves of numbers rounded so are exact, so that faces that meet in truth meet here. About 1/65000 in. */
export function snapped(value: number): number {
  return Math.round(value * 65536) / 65536;
}

export function blockOf({ rough }: Box, moved: Spot = [0, 0, 0]): Block {
  const at = (index: number, way: Way): number => snapped(rough[index]!) + moved[way];
  return { from: [at(0, 0), at(2, 1), at(4, 2)], to: [at(1, 0), at(3, 1), at(5, 2)] };
}

/** The way across which a box is thinnest. */
export function thinWay({ rough }: Box): Way {
  const [x, y, z] = [rough[1] - rough[0], rough[3] - rough[2], rough[5] - rough[4]];
  return x <= y && x <= z ? 0 : y <= z ? 1 : 2;
}

/** What of boxes that share nothing is turned to someone who looks from the right, above and before them; where boxes of one piece meet there is neither face nor edge. */
export function shapeOf(blocks: readonly Block[]): Shape {
  const faces: Face[] = [];
  const lines = new Map<string, Line>();
  for (const way of [0, 1, 2] as const) {
    for (const [at, { facing, against }] of planesAcross(blocks, way)) {
      const region = regionOf(facing, against);
      for (const [from, to] of region.rects) faces.push({ way, at, from, to });
      for (const border of region.borders) addBorder(lines, way, at, border);
    }
  }
  return { faces, edges: [...lines.values()].flatMap(edgesOn) };
}

type Rect = readonly [from: readonly [number, number], to: readonly [number, number]];

interface Plane {
  readonly facing: Rect[];
  /** What lies on the plane from its other side. */
  readonly against: Rect[];
}

function planesAcross(blocks: readonly Block[], way: Way): ReadonlyMap<number, Plane> {
  const [a, b] = within[way]!;
  const planes = new Map<number, Plane>();
  const rect = ({ from, to }: Block): Rect => [
    [from[a], from[b]],
    [to[a], to[b]],
  ];
  const near = ({ from, to }: Block): number => (way === 2 ? from[2] : to[way]);
  const far = ({ from, to }: Block): number => (way === 2 ? to[2] : from[way]);
  for (const block of blocks) {
    const plane = planes.get(near(block)) ?? { facing: [], against: [] };
    planes.set(near(block), plane);
    plane.facing.push(rect(block));
  }
  for (const block of blocks) planes.get(far(block))?.against.push(rect(block));
  return planes;
}

/** A border of a region along its first or its second way. */
interface Border {
  readonly along: 0 | 1;
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

interface Region {
  readonly rects: readonly Rect[];
  readonly borders: readonly Border[];
}

/** What the rectangles cover together and nothing lies against, in as few rectangles as rows of a grid give. */
function regionOf(facing: readonly Rect[], against: readonly Rect[]): Region {
  if (facing.length === 1 && against.length === 0) return wholeRect(facing[0]!);
  const all = [...facing, ...against];
  const columns = places(all.flatMap(([from, to]) => [from[0], to[0]]));
  const rows = places(all.flatMap(([from, to]) => [from[1], to[1]]));
  const covers = ([from, to]: Rect, column: number, row: number): boolean =>
    from[0] <= columns[column]! && columns[column]! < to[0] && from[1] <= rows[row]! && rows[row]! < to[1];
  const filled = columns.map((_, column) =>
    rows.map(
      (__, row) =>
        facing.some((rect) => covers(rect, column, row)) && !against.some((rect) => covers(rect, column, row)),
    ),
  );
  const isIn = (column: number, row: number): boolean => filled[column]?.[row] ?? false;
  return { rects: rectsOf(columns, rows, isIn), borders: bordersOf(columns, rows, isIn) };
}

function wholeRect(rect: Rect): Region {
  const [from, to] = rect;
  const borders: readonly Border[] = [
    { along: 0, at: from[1], from: from[0], to: to[0] },
    { along: 0, at: to[1], from: from[0], to: to[0] },
    { along: 1, at: from[0], from: from[1], to: to[1] },
    { along: 1, at: to[0], from: from[1], to: to[1] },
  ];
  return { rects: [rect], borders };
}

function places(values: readonly number[]): readonly number[] {
  return [...new Set(values)].sort((one, other) => one - other);
}

type IsIn = (column: number, row: number) => boolean;

/** Runs of filled cells in a row, joined with the same run in the rows under it. */
function rectsOf(columns: readonly number[], rows: readonly number[], isIn: IsIn): readonly Rect[] {
  const rects: Rect[] = [];
  let open = new Map<string, { readonly from: number; readonly to: number; readonly row: number }>();
  for (let row = 0; row < rows.length; row++) {
    const next = new Map<string, { readonly from: number; readonly to: number; readonly row: number }>();
    for (let from = 0; from < columns.length; from++) {
      if (!isIn(from, row)) continue;
      let to = from;
      while (isIn(to, row)) to++;
      const key = `${from} ${to}`;
      next.set(key, open.get(key) ?? { from, to, row });
      open.delete(key);
      from = to;
    }
    for (const run of open.values())
      rects.push([
        [columns[run.from]!, rows[run.row]!],
        [columns[run.to]!, rows[row]!],
      ]);
    open = next;
  }
  return rects;
}

function bordersOf(columns: readonly number[], rows: readonly number[], isIn: IsIn): readonly Border[] {
  const borders: Border[] = [];
  for (let column = 0; column < columns.length; column++) {
    for (let row = 0; row < rows.length; row++) {
      const here = isIn(column, row);
      if (here !== isIn(column - 1, row))
        borders.push({ along: 1, at: columns[column]!, from: rows[row]!, to: rows[row + 1]! });
      if (here !== isIn(column, row - 1))
        borders.push({ along: 0, at: rows[row]!, from: columns[column]!, to: columns[column + 1]! });
    }
  }
  return borders;
}

/** All borders on one line in space. */
interface Line {
  readonly along: Way;
  readonly through: Spot;
  readonly stretches: (readonly [from: number, to: number])[];
}

function addBorder(lines: Map<string, Line>, way: Way, plane: number, { along, at, from, to }: Border): void {
  const runs = within[way]![along]!;
  const beside = within[way]![along === 0 ? 1 : 0]!;
  const through: [number, number, number] = [0, 0, 0];
  through[way] = plane;
  through[beside] = at;
  const key = `${runs} ${through.join(" ")}`;
  const line = lines.get(key) ?? { along: runs, through, stretches: [] };
  lines.set(key, line);
  line.stretches.push([from, to]);
}

/** Stretches that one face borders, and those that two do, each as long as it goes. */
function edgesOn({ along, through, stretches }: Line): readonly Edge[] {
  const stops = places(stretches.flat());
  const edges: { from: number; to: number; kind: Edge["kind"] }[] = [];
  for (let index = 0; index + 1 < stops.length; index++) {
    const [from, to] = [stops[index]!, stops[index + 1]!];
    const count = stretches.filter((one) => one[0] <= from && to <= one[1]).length;
    if (count === 0) continue;
    const kind = count === 1 ? "outline" : "inner";
    const last = edges.at(-1);
    if (last?.to === from && last.kind === kind) last.to = to;
    else edges.push({ from, to, kind });
  }
  const at = (place: number): Spot => {
    const spot: [number, number, number] = [...through];
    spot[along] = place;
    return spot;
  };
  return edges.map(({ from, to, kind }) => ({ from: at(from), to: at(to), kind }));
}
