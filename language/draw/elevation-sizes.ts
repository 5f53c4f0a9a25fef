import type { Length } from "../core/length.ts";
import { compare } from "../core/rational.ts";
import type { Opening } from "../derive/model.ts";
import type { Desk } from "./desk.ts";
import { extentOf, openingPlace } from "./desk.ts";
import { rowsBeside } from "./dimension-rows.ts";
import type { Item } from "./display-list.ts";
import type { Scene } from "./place/scene.ts";
import type { Range, Solid } from "./place/solid.ts";
import type { Projection } from "./view.ts";
import { acrossPaper, downPaper } from "./view.ts";

/** Below: the members and openings of the lowest row, then the whole width. */
export function sizesAcross(
  desk: Desk,
  scene: Scene,
  projection: Projection,
  openings: readonly Opening[],
  shell: readonly Solid[],
): readonly Item[] {
  const places = openings.map((opening) => openingPlace(scene, opening));
  const lowest = places.filter(
    (one) => !places.some((other) => overlaps(one.x, other.x) && compare(other.y[0], one.y[0]) < 0),
  );
  const whole = wholeOf(scene, shell, "x");
  const paper = (at: Length): number => acrossPaper(projection, at);
  const edge = downPaper(projection, extentOf(shell, "y")[0]);
  return rowsBeside(desk, { run: "across", edge, away: 1, paper }, [
    [...whole, ...lowest.flatMap((one) => one.x)],
    whole,
  ]);
}

/** On the left and on the right: the members and openings of the outer columns; the whole height on the left. */
export function sizesUp(
  desk: Desk,
  scene: Scene,
  projection: Projection,
  openings: readonly Opening[],
  shell: readonly Solid[],
): readonly Item[] {
  const places = openings.map((opening) => openingPlace(scene, opening));
  const whole = wholeOf(scene, shell, "y");
  const ends = extentOf(shell, "x").map((at) => acrossPaper(projection, at));
  const paper = (at: Length): number => downPaper(projection, at);
  const reversed = projection.view.rightward === "reversed";
  const kick = scene.case?.kick === undefined ? [] : [scene.case.kick.value];
  const outer = (which: "left" | "right"): readonly Length[] => {
    const column = places.filter((one) => isOutermost(one, places, (which === "left") !== reversed ? "low" : "high"));
    return column.length === 0 ? [] : [...whole, ...kick, ...column.flatMap((one) => one.y)];
  };
  const [left, right] = [Math.min(...ends), Math.max(...ends)];
  const [lefts, rights] = [outer("left"), outer("right")];
  const same = lefts.length === rights.length && lefts.every((at, index) => compare(at, rights[index]!) === 0);
  return [
    ...rowsBeside(desk, { run: "up", edge: left, away: -1, paper }, [lefts, whole]),
    ...(same ? [] : rowsBeside(desk, { run: "up", edge: right, away: 1, paper }, [rights])),
  ];
}

interface Placed {
  readonly x: Range;
  readonly y: Range;
}

function isOutermost(one: Placed, all: readonly Placed[], which: "low" | "high"): boolean {
  return !all.some(
    (other) =>
      overlaps(one.y, other.y) &&
      (which === "low" ? compare(other.x[0], one.x[0]) < 0 : compare(one.x[1], other.x[1]) < 0),
  );
}

function overlaps(a: Range, b: Range): boolean {
  return compare(a[0], b[1]) < 0 && compare(b[0], a[1]) < 0;
}

/** A case as a whole; of an opening only itself, since what it stands in was not measured. */
function wholeOf(scene: Scene, shell: readonly Solid[], axis: "x" | "y"): Range {
  const [opening] = scene.openings;
  return scene.case === undefined && opening !== undefined ? openingPlace(scene, opening)[axis] : extentOf(shell, axis);
}
