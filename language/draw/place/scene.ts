import type { Length } from "../../core/length.ts";
import { zero } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type {
  BoxModel,
  CaseModel,
  FrontModel,
  Model,
  MountModel,
  Opening,
  ShelfModel,
  Stock,
} from "../../derive/model.ts";
import { boxSolids } from "./box.ts";
import { caseSolids } from "./case.ts";
import { existingSolids } from "./existing.ts";
import { frontSolids } from "./front.ts";
import { mountSolids } from "./mount.ts";
import { shelfSolids } from "./shelf.ts";
import { slideSolids } from "./slide.ts";
import type { Solid } from "./solid.ts";
import { turnedRound } from "./solid.ts";

/** One thing to be drawn as a whole: a case with all that goes into it and over it, or an opening that stands already. */
export interface Scene {
  readonly name: string;
  readonly case: CaseModel | undefined;
  readonly openings: readonly Opening[];
  readonly boxes: readonly BoxModel[];
  readonly mounts: readonly MountModel[];
  readonly fronts: readonly FrontModel[];
  readonly shelves: readonly ShelfModel[];
  readonly solids: readonly Solid[];
}

/** What placing needs to look up. */
export interface Tables {
  readonly context: Context;
  readonly model: Model;
  readonly stocks: ReadonlyMap<string, Stock>;
}

/** A scene for each case and for each opening that stands alone, in the order of the file. */
export function scenesOf(context: Context, model: Model): readonly Scene[] {
  const tables: Tables = { context, model, stocks: model.stocks };
  const cases = model.cases.map((one) => sceneOf(tables, one.name, one, one.openings));
  const standing = model.openings.filter((opening) => opening.case === undefined);
  return [...cases, ...standing.map((one) => sceneOf(tables, one.name.text, undefined, [one]))];
}

function sceneOf(tables: Tables, name: string, home: CaseModel | undefined, openings: readonly Opening[]): Scene {
  const { model } = tables;
  const names = new Set(openings.map((opening) => opening.name.text));
  const mine = (opening: Opening | undefined): boolean => opening !== undefined && names.has(opening.name.text);
  const boxes = model.boxes.filter((box) => mine(box.opening));
  const mounts = model.mounts.filter((mount) => mine(mount.openings[0]));
  const fronts = model.fronts.filter((front) => mine(front.openings[0]));
  const shelves = model.shelves.filter((shelf) => mine(shelf.opening));
  // A rear face is laid out as one stands before it.
  const facing = (opening: Opening, solids: readonly Solid[]): readonly Solid[] =>
    home === undefined || opening.face === "front"
      ? solids
      : solids.map((solid) => turnedRound(solid, home.wide.value, home.deep.value));
  const solids = [
    ...(home === undefined ? openings.flatMap(existingSolids) : caseSolids(tables, home)),
    ...shelves.flatMap((one) => facing(one.opening, shelfSolids(tables, one))),
    ...mounts.flatMap((one) => facing(one.openings[0]!, mountSolids(tables, one))),
    ...boxes.flatMap((one) => facing(one.opening, slideSolids(tables, one))),
    ...boxes.flatMap((one) => facing(one.opening, boxSolids(tables, one, setBack(fronts, one.opening)))),
    ...fronts.flatMap((one) => facing(one.openings[0]!, frontSolids(tables, one))),
  ];
  return { name, case: home, openings, boxes, mounts, fronts, shelves, solids: numbered(solids) };
}

/** How far an inset front sets back what stands behind it. */
function setBack(fronts: readonly FrontModel[], opening: Opening): Length {
  const front = fronts.find((one) => one.openings.some((of) => of.name.text === opening.name.text));
  return front?.whole.inset === undefined ? zero : (front.thickness?.value ?? zero);
}

/** A part that stands in several places has its id several times: told apart by a number behind it. */
function numbered(solids: readonly Solid[]): readonly Solid[] {
  const seen = new Map<string, number>();
  return solids.map((solid) => {
    const count = (seen.get(solid.id) ?? 0) + 1;
    seen.set(solid.id, count);
    return count === 1 ? solid : { ...solid, id: `${solid.id}#${count}` };
  });
}
