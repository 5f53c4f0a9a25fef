import { oncePer } from "../core/once-per.ts";
import type { Stepwise } from "../core/stepwise.ts";
import { atOnce } from "../core/stepwise.ts";
import { place } from "../solid/place.ts";
import { boxViewSteps } from "./box-view.ts";
import type { Desk } from "./desk.ts";
import { millimetres, reductionFor } from "./desk.ts";
import type { Drawing } from "./display-list.ts";
import { elevation, finishedFace } from "./elevation.ts";
import { explodedSteps } from "./exploded.ts";
import { frontDetails } from "./front-detail.ts";
import type { Scene } from "./place/scene.ts";
import { scenesOf } from "./place/scene.ts";
import { columnsOf, planSection, sideSection } from "./section.ts";
import { stickDrawing } from "./stick-drawing.ts";
import type { Stick } from "./sticks.ts";
import { sticksOf } from "./sticks.ts";

/** Every drawing of a build, in the order in which people look; made once for a desk. */
export function drawingsOf(desk: Desk): readonly Drawing[] {
  return atOnce(drawingSteps(desk));
}

const known = new WeakMap<Desk, readonly Drawing[]>();

/** As `drawingsOf`, some at a time. */
export function* drawingSteps(desk: Desk): Stepwise<readonly Drawing[]> {
  const made = known.get(desk);
  if (made !== undefined) return made;
  const drawings: Drawing[] = [];
  const { placement, scenes } = standing(desk);
  yield "drawings";
  for (const scene of scenes) {
    drawings.push(...sceneDrawings(desk, scene));
    yield `drawings of ${scene.name}`;
  }
  drawings.push(...(yield* boxViewSteps(desk, scenes)), ...frontDetails(desk));
  drawings.push(...(yield* explodedSteps(desk, placement)));
  for (const stick of sticksFor(desk)) {
    const drawing = stickDrawing(desk, stick, stickReduction(desk, stick));
    if (drawing !== undefined) drawings.push(drawing);
    yield `story stick, ${stick.title}`;
  }
  known.set(desk, drawings);
  return drawings;
}

/** The sticks of a build, made once for a desk. */
export const sticksFor: (desk: Desk) => readonly Stick[] = oncePer((desk) => sticksOf(standing(desk).scenes));

/** Every piece in its place, as it is looked at and drawn. */
const standing = oncePer(({ context, model }: Desk) => {
  const placement = place(context, model);
  return { placement, scenes: scenesOf(context, model, placement) };
});

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
