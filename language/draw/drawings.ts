import { place } from "../solid/place.ts";
import { boxViews } from "./box-view.ts";
import type { Desk } from "./desk.ts";
import { millimetres, reductionFor } from "./desk.ts";
import type { Drawing } from "./display-list.ts";
import { elevation, finishedFace } from "./elevation.ts";
import { explodedViews } from "./exploded.ts";
import { frontDetails } from "./front-detail.ts";
import type { Scene } from "./place/scene.ts";
import { scenesOf } from "./place/scene.ts";
import { columnsOf, planSection, sideSection } from "./section.ts";
import { stickDrawing } from "./stick-drawing.ts";
import type { Stick } from "./sticks.ts";
import { sticksOf } from "./sticks.ts";

/** Every drawing of a build, in the order in which people look. */
export function drawingsOf(desk: Desk): readonly Drawing[] {
  const placement = place(desk.context, desk.model);
  const scenes = scenesOf(desk.context, desk.model, placement);
  return [
    ...scenes.flatMap((scene) => sceneDrawings(desk, scene)),
    ...boxViews(desk, scenes),
    ...frontDetails(desk),
    ...explodedViews(desk, placement),
    ...sticksOf(scenes).flatMap((stick) => stickDrawing(desk, stick, stickReduction(desk, stick)) ?? []),
  ];
}

function sceneDrawings(desk: Desk, scene: Scene): readonly Drawing[] {
  const columns = columnsOf(scene);
  const cuts = columns.map((column) => column.at);
  const rear = scene.openings.some((opening) => opening.face === "rear");
  return [
    finishedFace(desk, scene, "front"),
    elevation(desk, scene, "front", cuts),
    ...(rear ? [finishedFace(desk, scene, "rear"), elevation(desk, scene, "rear", [])] : []),
    ...columns.map((column, index) => sideSection(desk, scene, column, index)),
    planSection(desk, scene),
  ].filter((drawing) => drawing !== undefined);
}

/** As large as fits across a page. */
function stickReduction(desk: Desk, stick: Stick): number {
  return reductionFor(desk, millimetres(stick.marks.at(-1)!.at), 1, { wide: 170, high: 200 });
}
