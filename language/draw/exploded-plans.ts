import { gatheredBy } from "../core/gather.ts";
import { zero } from "../core/rational.ts";
import type { Model, Opening } from "../derive/model.ts";
import type { Box } from "../solid/box.ts";
import { boxWith, mirrored } from "../solid/box.ts";
import { groupedBy } from "../solid/grouped.ts";
import type { Mate } from "../solid/mate.ts";
import type { Placement } from "../solid/place.ts";
import type { Solid } from "../solid/solid.ts";
import type { Desk } from "./desk.ts";
import type { Unit } from "./exploded-moves.ts";
import { boxMoves, caseMoves, contentMoves, extentOfAll, leafMoves } from "./exploded-moves.ts";

/** What one exploded view shows. */
export interface ExplodedPlan {
  readonly id: string;
  readonly title: string;
  readonly units: readonly Unit[];
  readonly mates: readonly Mate[];
  readonly on: "page" | "half a page";
}

type Fitted = Pick<Placement, "solids" | "mates">;

/** What stands in one frame of axes, and what is of one assembly; mates by the first of the two, for both are shown or neither. */
const solidsIn = groupedBy(({ frame }: Solid) => [frame]);
const solidsOf = groupedBy(({ assembly }: Solid) => [assembly]);
const matesIn = groupedBy(({ a }: Mate) => [a.frame]);
const matesOf = groupedBy(({ a }: Mate) => [a.assembly]);

/** Cases apart, what goes into each, then boxes and framed fronts that differ; what stands in a rear face is seen from there. */
export function explodedPlans(desk: Desk, placement: Placement): readonly ExplodedPlan[] {
  const { model } = desk;
  const hasRear = model.openings.some((opening) => opening.face === "rear");
  const rear = hasRear ? turnedAbout(placement) : placement;
  const seenFrom = (opening: Opening | undefined): Fitted => (opening?.face === "rear" ? rear : placement);
  const faceOf = facesOf(model);
  const frames = [...new Set(placement.solids.map(({ frame }) => frame))];
  return [
    ...frames.flatMap((frame) => [
      ...casePlan(desk, placement, frame),
      ...contentPlan(desk, placement, frame, "front", faceOf),
      ...(hasRear ? contentPlan(desk, rear, frame, "rear", faceOf) : []),
    ]),
    ...boxPlans(desk, seenFrom),
    ...leafPlans(desk, seenFrom),
  ];
}

function casePlan(desk: Desk, { solids, mates }: Fitted, frame: string): readonly ExplodedPlan[] {
  const own = solidsIn(solids, frame).filter(({ assembly }) => assembly === frame);
  if (!frame.startsWith("case ") || own.length < 2) return [];
  const units = caseMoves(own, (unit) => marksOf(desk, unit));
  return [
    {
      id: `${frame}/exploded`,
      title: `${sentence(frame)}: exploded view`,
      units,
      mates: matesIn(mates, frame),
      on: "page",
    },
  ];
}

/** A case with all that goes into one face of it; a standing opening with what hangs in it. */
function contentPlan(
  desk: Desk,
  { solids, mates }: Fitted,
  frame: string,
  face: Opening["face"],
  faceOf: (assembly: string) => Opening["face"],
): readonly ExplodedPlan[] {
  const here = solidsIn(solids, frame);
  const home = here.filter(({ assembly }) => assembly === frame);
  const others = here.filter(({ assembly }) => assembly !== frame && faceOf(assembly) === face);
  const fronts = grouped(others.filter(({ assembly }) => /^(front|door) /.test(assembly))).flatMap(leavesOf);
  const shelves = others.filter(({ part }) => part.name === "shelf").map((solid) => [solid]);
  const inside = [...shelves, ...grouped(others.filter(({ assembly }) => assembly.startsWith("box ")))];
  if (inside.length + fronts.length === 0) return [];
  const isCase = frame.startsWith("case ");
  const contents = contentMoves(isCase ? home : [], inside, fronts, (unit) => unitName(desk, unit));
  const mounts = isCase ? [] : caseMoves(home, (unit) => marksOf(desk, unit));
  const at = face === "rear" ? " at the rear" : "";
  return [
    {
      id: `${frame}/exploded-contents${face === "rear" ? "-rear" : ""}`,
      title: `${sentence(frame)}: exploded view of what goes into it${at}`,
      units: [...mounts, ...contents],
      mates: matesIn(mates, frame),
      on: "page",
    },
  ];
}

/** Slabs go on one by one, framed leaves as they are. */
function leavesOf(front: readonly Solid[]): readonly (readonly Solid[])[] {
  return front.every(({ part }) => part.name === "slab") ? front.map((leaf) => [leaf]) : [front];
}

/** The face of the opening that a box, front or shelf belongs to. */
function facesOf({ boxes, fronts, shelves }: Model): (assembly: string) => Opening["face"] {
  const faces = new Map<string, Opening["face"]>([
    ...boxes.map(({ of, opening }) => [of, opening.face] as const),
    ...shelves.map(({ of, opening }) => [of, opening.face] as const),
    ...fronts.map(({ of, openings }) => [of, openings[0]?.face ?? "front"] as const),
  ]);
  return (assembly) => faces.get(assembly) ?? "front";
}

function boxPlans(desk: Desk, seenFrom: (opening: Opening) => Fitted): readonly ExplodedPlan[] {
  const boxes = desk.model.boxes.map((box) => {
    const { solids, mates } = seenFrom(box.opening);
    return { box, mates, solids: solidsOf(solids, box.of) };
  });
  return alikes(boxes).map((same): ExplodedPlan => {
    const { box, solids, mates } = same[0]!;
    const names = same.map((one) => one.box.opening.name.text).join(", ");
    const slides = box.whole.bottom?.fittings.some(({ word }) => word === "from behind") === true;
    const units = boxMoves(solids, (unit) => marksOf(desk, unit), slides ? "out at the back" : "down");
    return {
      id: `${box.of}/exploded`,
      title: `Box for ${names}: exploded view`,
      units,
      mates: matesOf(mates, box.of),
      on: "half a page",
    };
  });
}

function leafPlans(desk: Desk, seenFrom: (opening: Opening | undefined) => Fitted): readonly ExplodedPlan[] {
  const framed = desk.model.fronts.filter(({ whole }) => whole.frame !== undefined);
  const leaves = framed.map((front) => {
    const { solids, mates } = seenFrom(front.openings[0]);
    const all = solidsOf(solids, front.of);
    return { front, mates, solids: front.leaves === 1 ? all : leftLeaf(all) };
  });
  return alikes(leaves).map((same): ExplodedPlan => {
    const { front, solids, mates } = same[0]!;
    const names = same.map((one) => one.front.of).join(", ");
    const leaf = front.leaves === 1 ? "" : ", one leaf";
    const units = leafMoves(solids, (unit) => marksOf(desk, unit));
    const title = `${sentence(names)}${leaf}: exploded view`;
    return { id: `${front.of}/exploded`, title, units, mates: matesOf(mates, front.of), on: "half a page" };
  });
}

function leftLeaf(solids: readonly Solid[]): readonly Solid[] {
  const { from, to } = extentOfAll(solids);
  return solids.filter(({ bounds: { rough } }) => rough[0] + rough[1] < from[0] + to[0]);
}

/** Those whose solids are of the same names, stocks and sizes together; those without solids left out. */
function alikes<T extends { readonly solids: readonly Solid[] }>(all: readonly T[]): readonly (readonly T[])[] {
  const shown = all.filter(({ solids }) => 0 < solids.length);
  return [...gatheredBy(shown, ({ solids }) => solids.map(looks).join("\n")).values()];
}

function looks({ part, bounds: { rough } }: Solid): string {
  const sizes = [0, 2, 4].map((at) => (rough[at + 1]! - rough[at]!).toFixed(5));
  return `${part.name} ${part.stock} ${sizes.join(" ")}`;
}

function grouped(solids: readonly Solid[]): readonly (readonly Solid[])[] {
  return [...gatheredBy(solids, ({ assembly }) => assembly).values()];
}

/** The letters of parts in the cut list, each once; the name of a part that has none. */
function marksOf({ marks }: Desk, solids: readonly Solid[]): string {
  return [...new Set(solids.map(({ part }) => marks.get(part) ?? part.name))].join(" + ");
}

/** A letter where all that is moved together has one, or else what it is: `box plan-1`. */
function unitName(desk: Desk, solids: readonly Solid[]): string {
  const marks = marksOf(desk, solids);
  return marks.includes("+") ? solids[0]!.assembly : marks;
}

function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** Everything turned about, to be seen from behind. */
function turnedAbout({ solids, mates }: Placement): Fitted {
  const turned = new Map(solids.map((solid) => [solid, turnedSolid(solid)] as const));
  return {
    solids: [...turned.values()],
    mates: mates.map((mate) => ({
      ...mate,
      a: turned.get(mate.a) ?? mate.a,
      b: mate.b === undefined ? undefined : turned.get(mate.b),
    })),
  };
}

function turnedSolid(solid: Solid): Solid {
  const { outline, pieces, bounds } = solid;
  return { ...solid, outline: turnedBox(outline), pieces: pieces.map(turnedBox), bounds: turnedBox(bounds) };
}

function turnedBox(box: Box): Box {
  const x = boxWith(box, "x", mirrored(box.x, zero)) ?? box;
  return boxWith(x, "z", mirrored(box.z, zero)) ?? box;
}
