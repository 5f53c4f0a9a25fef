import type { Item, Point } from "./display-list.ts";
import { letterHeights, line, text } from "./display-list.ts";
import type { Paper } from "./exploded-paper.ts";
import { paperOf } from "./exploded-paper.ts";
import type { Face } from "./exploded-shape.ts";
import { textWidth } from "./letters.ts";

/** A convex outline on the paper and the face that it is part of. */
export interface Region {
  readonly face: Face;
  readonly points: readonly Point[];
}

/** What a label is for, and all of it that is seen; without a label, it only takes its room. */
export interface Labelled {
  readonly label: string | undefined;
  readonly regions: readonly Region[];
}

const size = letterHeights.size;
const face = "bold";
/** A reader's own typeface may be wider than the one laid out. */
const otherFaces = 1.15;
/** Clear room round letters. */
const room = 0.7;

/**
 * A label on each thing that has room for it on one face; for others beside the drawing, led to them by a line that ends
 * in a dot (ISO 128-2). Where nothing of a thing is seen, it has none.
 */
export function labelItems(things: readonly Labelled[]): readonly Item[] {
  const paper = paperOf(things.map(({ regions }) => regions.map(({ points }) => points)));
  const placed = things.map(({ label, regions }) => {
    const at = label === undefined ? undefined : placeOn(label, regions);
    if (label !== undefined && at !== undefined) paper.take(at, halfOf(label), undefined);
    return at;
  });
  return things.flatMap(({ label, regions }, index): readonly Item[] => {
    const at = placed[index];
    if (label === undefined) return [];
    if (at !== undefined) return [lettersAt(label, at)];
    const anchor = anchorOf(regions);
    return anchor === undefined ? [] : ledLabel(paper, label, anchor, index);
  });
}

/** Half the room of a label to each side of its middle. */
function halfOf(label: string): Point {
  return { x: (otherFaces * textWidth(label, size, face)) / 2 + room, y: size / 2 + room };
}

function lettersAt(label: string, { x, y }: Point): Item {
  return text({ x, y: y + size / 2 }, label, { size, face, anchor: "middle", ground: "clear" });
}

/** The middle of a label where all of it lies on one face; the larger of what is seen first. */
function placeOn(label: string, regions: readonly Region[]): Point | undefined {
  const half = halfOf(label);
  const sized = regions.map((region) => ({ ...region, area: areaOn(region.points) }));
  for (const { face: on, points } of sized.sort((a, b) => b.area - a.area).slice(0, 8)) {
    const same = regions.filter((region) => region.face === on);
    for (const at of tries(points)) if (lies(at, half, same)) return at;
  }
  return undefined;
}

/** The middle of an outline, and places between it and its corners. */
function tries(points: readonly Point[]): readonly Point[] {
  const middle = middleOf(points);
  return [
    middle,
    ...points.flatMap((corner) =>
      [0.25, 0.5].map((part) => ({
        x: middle.x + (corner.x - middle.x) * part,
        y: middle.y + (corner.y - middle.y) * part,
      })),
    ),
  ];
}

function lies(at: Point, half: Point, regions: readonly Region[]): boolean {
  return [0, -1, 1].every((x) =>
    [0, -1, 1].every((y) => {
      const corner = { x: at.x + x * half.x, y: at.y + y * half.y };
      return regions.some(({ points }) => holds(points, corner));
    }),
  );
}

function holds(points: readonly Point[], at: Point): boolean {
  let [before, behind] = [false, false];
  for (let index = 0; index < points.length; index++) {
    const [a, b] = [points[index]!, points[(index + 1) % points.length]!];
    const turn = (b.x - a.x) * (at.y - a.y) - (b.y - a.y) * (at.x - a.x);
    if (1e-9 < turn) before = true;
    if (turn < -1e-9) behind = true;
  }
  return !(before && behind);
}

function areaOn(points: readonly Point[]): number {
  const twice = points.reduce((sum, a, index) => {
    const b = points[(index + 1) % points.length]!;
    return sum + a.x * b.y - b.x * a.y;
  }, 0);
  return Math.abs(twice) / 2;
}

function middleOf(points: readonly Point[]): Point {
  const sum = points.reduce((all, { x, y }) => ({ x: all.x + x, y: all.y + y }), { x: 0, y: 0 });
  return { x: sum.x / points.length, y: sum.y / points.length };
}

function anchorOf(regions: readonly Region[]): Point | undefined {
  const [first, ...rest] = regions;
  if (first === undefined) return undefined;
  return middleOf(rest.reduce((best, one) => (areaOn(best.points) < areaOn(one.points) ? one : best), first).points);
}

/** The label in the nearest free room, with as little in the way of its line as can be. */
function ledLabel(paper: Paper, label: string, anchor: Point, index: number): readonly Item[] {
  const half = halfOf(label);
  let best: { readonly at: Point; readonly cost: number } | undefined;
  for (let far = 5; far < 90; far += 2) {
    if (best !== undefined && best.cost < far) break;
    for (const turn of turns) {
      const at = { x: anchor.x + far * turn.x, y: anchor.y + far * turn.y };
      if (!paper.isFree(at, half)) continue;
      const cost = far + 2.5 * paper.crossed(anchor, at, index);
      if (best === undefined || cost < best.cost) best = { at, cost };
    }
  }
  if (best === undefined) return [];
  const end = edgeToward(half, best.at, anchor);
  paper.take(best.at, half, { from: anchor, to: end });
  return [
    line(end, anchor, "hair"),
    { kind: "circle", at: anchor, radius: 0.45, weight: "hair", stroke: "solid", fill: "ink" },
    lettersAt(label, best.at),
  ];
}

const turns: readonly Point[] = Array.from({ length: 32 }, (_, index) => ({
  x: Math.cos((index * Math.PI) / 16),
  y: Math.sin((index * Math.PI) / 16),
}));

/** Where a line from the middle of a label leaves its room. */
function edgeToward(half: Point, from: Point, to: Point): Point {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const share = Math.min(x === 0 ? 1 : half.x / Math.abs(x), y === 0 ? 1 : half.y / Math.abs(y), 1);
  return { x: from.x + x * share, y: from.y + y * share };
}
