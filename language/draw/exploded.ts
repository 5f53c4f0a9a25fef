import type { Stepwise } from "../core/stepwise.ts";
import { axes } from "../solid/box.ts";
import type { Placement } from "../solid/place.ts";
import type { Solid } from "../solid/solid.ts";
import { drawingOf } from "./bounds.ts";
import type { Desk, Room } from "./desk.ts";
import { reductionFor, scaleText } from "./desk.ts";
import type { Drawing, Group, Item, Point } from "./display-list.ts";
import { line } from "./display-list.ts";
import type { Body, Seen, SeenBody } from "./exploded-hidden.ts";
import { onSheet, seenFrom, seenScene } from "./exploded-hidden.ts";
import type { Labelled, Region } from "./exploded-labels.ts";
import { labelItems } from "./exploded-labels.ts";
import { explosionLines, grainMarks } from "./exploded-lines.ts";
import type { ExplodedPlan } from "./exploded-plans.ts";
import { explodedPlans } from "./exploded-plans.ts";
import type { Shape, Way } from "./exploded-shape.ts";
import { blockOf, shapeOf, thinWay } from "./exploded-shape.ts";
import { explodedName, explodedRows } from "./exploded-text.ts";
import { grainAxis } from "./place/fitted.ts";

/** Exploded views, isometric after ISO 5456-3: each case's parts, what goes into it, and the parts of each box and framed front that differs. */
export function* explodedSteps(desk: Desk, placement: Placement): Stepwise<readonly Drawing[]> {
  const views: Drawing[] = [];
  for (const plan of explodedPlans(desk, placement)) {
    const view = explodedView(desk, plan);
    if (view !== undefined) views.push(view);
    yield plan.title;
  }
  return views;
}

/** Whether a drawing is one of those. */
export function isExploded({ id }: Drawing): boolean {
  return /\/exploded[^/]*$/.test(id);
}

/** What is left on a page beside labels. */
const rooms: Readonly<Record<ExplodedPlan["on"], Room>> = {
  page: { wide: 156, high: 190 },
  "half a page": { wide: 80, high: 84 },
};

const millimetresInAnInch = 25.4;

/** A solid of a unit, as moved. */
interface Piece {
  readonly unit: number;
  readonly solid: Solid;
  readonly shape: Shape;
}

function explodedView(desk: Desk, plan: ExplodedPlan): Drawing | undefined {
  const { id, title, units, mates, on } = plan;
  const pieces = units.flatMap(({ solids, move }, unit) =>
    solids.map((solid): Piece => ({ unit, solid, shape: shapeOf(solid.pieces.map((one) => blockOf(one, move))) })),
  );
  const reduction = reductionOf(desk, pieces, rooms[on]);
  const scale = millimetresInAnInch / reduction;
  const bodies = pieces.map(({ solid, shape }): Body => ({ ...shape, marks: grainOn(solid, shape, scale) }));
  const seen = seenScene(bodies, explosionLines(units, mates));
  const onPaper = (place: Seen): Point => {
    const { x, y } = onSheet(place);
    return { x: x * scale, y: y * scale };
  };
  const ids = numbered(pieces.map(({ solid }) => solid.part.id));
  const groups = pieces.map(({ solid }, index): Group => {
    const items = bodyItems(seen.bodies[index]!, onPaper);
    return { kind: "group", id: ids[index]!, name: explodedName(desk, solid), target: solid.part.source, items };
  });
  const regions = seen.bodies.map((body) => regionsOf(body, onPaper));
  const labelled = units.map(
    ({ label }, unit): Labelled => ({
      label,
      regions: regions.flatMap((all, index) => (pieces[index]!.unit === unit ? all : [])),
    }),
  );
  const items = [
    // Nobody is led to what is not to be seen.
    ...nearestLast(seen.bodies).flatMap((index) => (groups[index]!.items.length === 0 ? [] : [groups[index]!])),
    ...seen.lines.flat().map(({ from, to }) => line(onPaper(from), onPaper(to), "hair", "chain")),
    ...labelItems(labelled),
  ];
  const hidden = new Set(units.filter((_, unit) => labelled[unit]!.regions.length === 0));
  const equivalent = explodedRows(desk, plan, hidden);
  return drawingOf({ id, title, scale: scaleText(reduction), equivalent }, items);
}

function reductionOf(desk: Desk, pieces: readonly Piece[], room: Room): number {
  const ends = pieces
    .flatMap(({ shape }) => shape.edges.flatMap(({ from, to }) => [from, to]))
    .map((spot) => onSheet(seenFrom(spot)));
  const long = (values: readonly number[]): number =>
    values.reduce((most, value) => Math.max(most, value), -Infinity) -
    values.reduce((least, value) => Math.min(least, value), Infinity);
  const wide = long(ends.map(({ x }) => x)) * millimetresInAnInch;
  return reductionFor(desk, wide, long(ends.map(({ y }) => y)) * millimetresInAnInch, room);
}

/** Millimetres on the paper between strokes of grain. */
const grainApart = 4.5;

function grainOn(solid: Solid, { faces }: Shape, scale: number): Body["marks"] {
  const thin = thinWay(solid.outline);
  const grain = grainAxis(solid);
  return grainMarks(
    faces.filter(({ way }) => way === thin),
    grain === undefined ? undefined : (axes.indexOf(grain) as Way),
    grainApart / scale,
  );
}

function bodyItems({ regions, edges, marks }: SeenBody, onPaper: (place: Seen) => Point): readonly Item[] {
  const ground = regions.map(
    ({ points }): Item => ({
      kind: "shape",
      points: points.map(onPaper),
      closed: true,
      weight: undefined,
      stroke: "solid",
      fill: "paper",
    }),
  );
  return [
    ...ground,
    ...marks.map(({ from, to }) => line(onPaper(from), onPaper(to), "hair")),
    ...edges.map(({ from, to, kind }) => line(onPaper(from), onPaper(to), kind === "outline" ? "medium" : "fine")),
  ];
}

function regionsOf({ regions }: SeenBody, onPaper: (place: Seen) => Point): readonly Region[] {
  return regions.map(({ face, points }) => ({ face, points: points.map(onPaper) }));
}

/** Bodies in an order in which each comes before those that hide some of it, so that no ground lies over a nearer outline. */
function nearestLast(bodies: readonly SeenBody[]): readonly number[] {
  const order: number[] = [];
  const state = new Map<number, "open" | "done">();
  const over = bodies.map((): number[] => []);
  for (const [index, { under }] of bodies.entries()) for (const nearer of under) over[nearer]!.push(index);
  const visit = (index: number): void => {
    if (state.has(index)) return;
    state.set(index, "open");
    for (const farther of over[index]!) visit(farther);
    state.set(index, "done");
    order.push(index);
  };
  for (let index = 0; index < bodies.length; index++) visit(index);
  return order;
}

/** A part that stands in several places is told apart by a number behind its id. */
function numbered(ids: readonly string[]): readonly string[] {
  const seen = new Map<string, number>();
  return ids.map((id) => {
    const count = (seen.get(id) ?? 0) + 1;
    seen.set(id, count);
    return count === 1 ? id : `${id}#${count}`;
  });
}
