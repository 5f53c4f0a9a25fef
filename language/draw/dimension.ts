import type { Item, Point } from "./display-list.ts";
import { letterHeights, line, text } from "./display-list.ts";
import { textWidth } from "./letters.ts";

/** A stretch to be dimensioned: two places on the paper along the dimension line, and the size as text. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly label: string;
}

/** Where a row of dimensions stands: the paper coordinate of its line, and where its extension lines begin. */
export interface Row {
  /** `across`: a level line; `up`: an upright one, read from the right. */
  readonly run: "across" | "up";
  readonly at: number;
  readonly edge: number;
}

/** Gap between an edge and its extension line, how far that runs past the dimension line, half of an oblique stroke, letters from their line. */
const [gap, past, stroke, lift] = [1, 1.5, 1.1, 0.8];

/** How far apart rows of dimensions stand. */
export const rowPitch = 6.5;

/**
 * A row of sizes after the practice of ISO 129-1: extension lines, a dimension line with oblique strokes, the sizes over
 * it and read from below or from the right. A size with no room between its strokes stands turned on the far side, led
 * to its place.
 */
export function dimensionRow(row: Row, stretches: readonly Stretch[]): readonly Item[] {
  const used = stretches.filter(({ from, to }) => 0.01 < Math.abs(to - from)).map(ordered);
  if (used.length === 0) return [];
  const ends = distinct(used.flatMap(({ from, to }) => [from, to]));
  const away = Math.sign(row.at - row.edge) || 1;
  return [
    ...ends.map((end) => line(on(row, end, row.edge + gap * away), on(row, end, row.at + past * away))),
    ...used.map(({ from, to }) => line(on(row, from, row.at), on(row, to, row.at))),
    ...ends.map((end) => obliqueStroke(row, end)),
    ...labels(row, used, away),
  ];
}

/** One size over all. */
export function dimension(row: Row, from: number, to: number, label: string): readonly Item[] {
  return dimensionRow(row, [{ from, to, label }]);
}

function ordered({ from, to, label }: Stretch): Stretch {
  return from < to ? { from, to, label } : { from: to, to: from, label };
}

/** Places nearer to one another than a hair are one. */
export function distinct(places: readonly number[]): readonly number[] {
  const sorted = [...places].sort((a, b) => a - b);
  return sorted.filter((place, index) => index === 0 || 0.02 < place - sorted[index - 1]!);
}

/** A point given by its place along the row and its distance across it. */
function on(row: Row, along: number, across: number): Point {
  return row.run === "across" ? { x: along, y: across } : { x: across, y: along };
}

function obliqueStroke(row: Row, end: number): Item {
  const middle = on(row, end, row.at);
  return line({ x: middle.x - stroke, y: middle.y + stroke }, { x: middle.x + stroke, y: middle.y - stroke }, "medium");
}

function labels(row: Row, stretches: readonly Stretch[], away: number): readonly Item[] {
  const within = stretches
    .filter((one) => !isTight(one))
    .map((one): Item => {
      const at = on(row, (one.from + one.to) / 2, row.at - lift);
      return text(at, one.label, { anchor: "middle", turn: row.run === "across" ? "level" : "up", ground: "clear" });
    });
  const { before, turned, behind } = tightOnes(row.run, stretches);
  return [
    ...within,
    ...before.map(beyond(row, "before")),
    ...behind.map(beyond(row, "behind")),
    ...led(row, turned, away),
  ];
}

interface Tight {
  readonly before: readonly Stretch[];
  readonly turned: readonly Stretch[];
  readonly behind: readonly Stretch[];
}

/** Sizes without room: the first and the last of a level row may stand outside it, where their neighbour leaves them alone. */
function tightOnes(run: Row["run"], stretches: readonly Stretch[]): Tight {
  const sorted = [...stretches].sort((a, b) => a.from - b.from);
  const tight = sorted.filter(isTight);
  if (run === "up") return { before: [], turned: tight, behind: [] };
  const [first, last] = [sorted[0], sorted.at(-1)];
  const before = tight.filter((one) => one === first && sorted[1] !== undefined && !isTight(sorted[1]));
  const behind = tight.filter((one) => one === last && sorted.length !== 1 && !isTight(sorted.at(-2)!));
  return { before, behind, turned: tight.filter((one) => !before.includes(one) && !behind.includes(one)) };
}

function beyond(row: Row, side: "before" | "behind"): (one: Stretch) => Item {
  return (one) => {
    const place = side === "before" ? one.from - stroke - 0.9 : one.to + stroke + 0.9;
    const at = on(row, place, row.at - lift);
    return text(at, one.label, { anchor: side === "before" ? "end" : "start", ground: "clear" });
  };
}

/** Whether a size has no room between its strokes. */
export function isTight({ from, to, label }: Stretch): boolean {
  return Math.abs(to - from) < textWidth(label, letterHeights.size) + 1.6;
}

/** How far sizes that stand turned reach beyond their row; nothing where none do. */
export function turnedRoom(stretches: readonly Stretch[], run: Row["run"]): number {
  const { turned } = tightOnes(run, stretches);
  if (turned.length === 0) return 0;
  const long = Math.max(...turned.map(({ label }) => textWidth(label, letterHeights.size)));
  return past + 1.5 + long - (run === "across" ? 0 : 1);
}

/** Sizes that stand turned beyond the row, kept apart from one another. */
function led(row: Row, unsorted: readonly Stretch[], away: number): readonly Item[] {
  const size = letterHeights.size;
  const stretches = [...unsorted].sort((a, b) => a.from + a.to - b.from - b.to);
  const middles = stretches.map(({ from, to }) => (from + to) / 2);
  const places = spread(middles, size * 1.5);
  const foot = row.at + away * (past + 0.8);
  return stretches.flatMap((one, index): readonly Item[] => {
    const [middle, place] = [middles[index]!, places[index]!];
    const leader = line(on(row, middle, row.at), on(row, place, foot), "hair");
    const base = on(row, place + size / 2, foot + away * 0.5);
    return row.run === "across"
      ? [leader, text(base, one.label, { turn: "up", anchor: 0 < away ? "end" : "start", ground: "clear" })]
      : [leader, text(base, one.label, { anchor: 0 < away ? "start" : "end", ground: "clear" })];
  });
}

/** The places nearest to the wanted ones (ascending) of which no two are nearer than `apart`. */
export function spread(wanted: readonly number[], apart: number): readonly number[] {
  interface Cluster {
    readonly sum: number;
    readonly count: number;
  }
  const startOf = ({ sum, count }: Cluster): number => sum / count;
  const clusters: Cluster[] = [];
  wanted.forEach((place, index) => {
    // Measured with the pitch taken out, so that touching neighbours share one start.
    let next: Cluster = { sum: place - index * apart, count: 1 };
    let last = clusters.at(-1);
    while (last !== undefined && startOf(next) < startOf(last)) {
      next = { sum: next.sum + last.sum, count: next.count + last.count };
      clusters.pop();
      last = clusters.at(-1);
    }
    clusters.push(next);
  });
  return clusters
    .flatMap((cluster) => Array.from({ length: cluster.count }, () => startOf(cluster)))
    .map((start, index) => start + index * apart);
}
