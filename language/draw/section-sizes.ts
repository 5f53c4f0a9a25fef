import type { Length } from "../core/length.ts";
import { equal, zero } from "../core/rational.ts";
import type { BoxModel, Opening } from "../derive/model.ts";
import type { Desk } from "./desk.ts";
import { extentOf, openingPlace } from "./desk.ts";
import { rowsBeside } from "./dimension-rows.ts";
import type { Item } from "./display-list.ts";
import type { Scene } from "./place/scene.ts";
import type { Range, Solid } from "./place/solid.ts";
import type { Column } from "./section.ts";
import type { Projection } from "./view.ts";
import { acrossPaper, downPaper } from "./view.ts";

/** Below: slide room, box and what is behind it, then the whole depth. Left: openings. Right: boxes in their openings. */
export function sideSizes(
  desk: Desk,
  scene: Scene,
  projection: Projection,
  column: Column,
  boxes: readonly BoxModel[],
): readonly Item[] {
  const solids = scene.solids;
  const right = (at: Length): number => acrossPaper(projection, at);
  const up = (at: Length): number => downPaper(projection, at);
  const shell = solids.filter((solid) => solid.role === "case" || solid.role === "frame" || solid.role === "existing");
  const floor = up(extentOf(shell, "y")[0]);
  const clear = column.openings.flatMap((opening) => (opening.face === "rear" ? [] : (opening.deep?.value ?? [])));
  const deepest = deepestBox(scene, boxes);
  const whole: readonly Length[] = scene.case === undefined ? [] : [zero, scene.case.deep.value];
  const depths: readonly Length[] = deepest === undefined ? [] : [...deepest, zero, ...clear.slice(0, 1)];
  const openings = column.openings.flatMap((opening) => openingPlace(scene, opening).y);
  const boxHeights = boxes.flatMap((box) => [
    ...openingPlace(scene, box.opening).y,
    ...extentOf(boxSolids(scene, box), "y"),
  ]);
  const height: readonly Length[] = scene.case === undefined ? [] : [zero, scene.case.high.value];
  const kick = scene.case?.kick === undefined ? [] : [scene.case.kick.value];
  const left = right(
    extentOf(
      solids.filter((solid) => inColumn(solid, column)),
      "z",
    )[0],
  );
  const far = right(extentOf(shell, "z")[1]);
  return [
    ...rowsBeside(desk, { run: "across", edge: floor, away: 1, paper: right }, [depths, whole]),
    ...rowsBeside(desk, { run: "up", edge: left, away: -1, paper: up }, [[...openings, ...kick, ...height], height]),
    ...rowsBeside(desk, { run: "up", edge: far, away: 1, paper: up }, [boxHeights]),
  ];
}

function inColumn(solid: Solid, column: Column): boolean {
  return column.openings.some((opening) => solid.of.endsWith(opening.name.text)) || solid.role === "frame";
}

function boxSolids(scene: Scene, box: BoxModel): readonly Solid[] {
  return scene.solids.filter((solid) => solid.role === "box" && solid.of === box.of);
}

function deepestBox(scene: Scene, boxes: readonly BoxModel[]): Range | undefined {
  const all = boxes.flatMap((box) => boxSolids(scene, box));
  return all.length === 0 ? undefined : extentOf(all, "z");
}

/** Below: openings, boxes and their clearances, then the whole. Behind: panels and mounts. Left: the depth. */
export function planSizes(
  desk: Desk,
  scene: Scene,
  projection: Projection,
  openings: readonly Opening[],
  cut: readonly Solid[],
): readonly Item[] {
  const right = (at: Length): number => acrossPaper(projection, at);
  const up = (at: Length): number => downPaper(projection, at);
  const shell = scene.solids.filter((solid) => solid.role !== "slide" && solid.role !== "box");
  const spread = extentOf(shell, "x");
  const whole: readonly Length[] = scene.case === undefined ? [] : [zero, scene.case.wide.value];
  const edges = openings.flatMap((opening) => openingPlace(scene, opening).x);
  const boxes = scene.boxes.filter((box) => openings.includes(box.opening));
  const boxEdges = boxes.flatMap((box) => extentOf(boxSolids(scene, box), "x"));
  const behind = cut.filter((solid) => solid.role === "case" || solid.role === "existing");
  const panels = behind.filter((solid) => solid.name !== "back").flatMap((solid) => solid.place.x);
  const packing = onceOnly(cut.filter((solid) => solid.role === "mount").flatMap((solid) => solid.place.x));
  const front = up(extentOf(shell, "z")[0]);
  const back = up(extentOf(shell, "z")[1]);
  const depth: readonly Length[] =
    scene.case === undefined ? openings.flatMap((one) => one.deep?.value ?? []) : [scene.case.deep.value];
  const frame = cut.filter((solid) => solid.role === "frame").flatMap((solid) => solid.place.z);
  const ends = boxes.flatMap((box) => extentOf(boxSolids(scene, box), "z"));
  return [
    ...rowsBeside(desk, { run: "across", edge: front, away: 1, paper: right }, [
      boxEdges.length === 0 ? [] : [...edges, ...boxEdges],
      [...edges, ...whole],
      whole,
    ]),
    ...rowsBeside(desk, { run: "across", edge: back, away: -1, paper: right }, [
      scene.case === undefined ? [] : [...panels, ...packing, ...edges],
    ]),
    ...rowsBeside(desk, { run: "up", edge: right(spread[0]), away: -1, paper: up }, [[zero, ...depth]]),
    ...rowsBeside(desk, { run: "up", edge: right(spread[1]), away: 1, paper: up }, [
      ends.length === 0 ? [] : [...frame, ...ends, ...depth],
    ]),
  ];
}

/** Places that bound one thing only: where two layers meet, nothing is measured. */
function onceOnly(places: readonly Length[]): readonly Length[] {
  return places.filter((place) => places.filter((other) => equal(place, other)).length === 1);
}
