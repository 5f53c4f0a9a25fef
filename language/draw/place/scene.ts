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
import type { Placement } from "../../solid/place.ts";
import { place } from "../../solid/place.ts";
import { existingSolids } from "./existing.ts";
import { flatSolids } from "./fitted.ts";
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

/** A scene for each case and for each opening that stands alone, in the order of the file, every piece where the dry fit puts it. */
export function scenesOf(
  context: Context,
  model: Model,
  placement: Placement = place(context, model),
): readonly Scene[] {
  const tables: Tables = { context, model, stocks: model.stocks };
  const cases = model.cases.map((one) => sceneOf(tables, placement, one.name, one, one.openings));
  const standing = model.openings.filter((opening) => opening.case === undefined);
  return [...cases, ...standing.map((one) => sceneOf(tables, placement, one.name.text, undefined, [one]))];
}

function sceneOf(
  tables: Tables,
  placement: Placement,
  name: string,
  home: CaseModel | undefined,
  openings: readonly Opening[],
): Scene {
  const { model } = tables;
  const names = new Set(openings.map((opening) => opening.name.text));
  const mine = (opening: Opening | undefined): boolean => opening !== undefined && names.has(opening.name.text);
  const boxes = model.boxes.filter((box) => mine(box.opening));
  const fitted = flatSolids(placement.solids, `${home === undefined ? "opening" : "case"} ${name}`, tables.stocks);
  // A rear face is laid out as one stands before it.
  const facing = (opening: Opening, solids: readonly Solid[]): readonly Solid[] =>
    home === undefined || opening.face === "front"
      ? solids
      : solids.map((solid) => turnedRound(solid, home.wide.value, home.deep.value));
  const solids = [
    ...(home === undefined ? openings.flatMap(existingSolids) : fitted("case", "frame")),
    ...fitted("shelf"),
    ...fitted("mount"),
    ...boxes.flatMap((one) => facing(one.opening, slideSolids(tables, one))),
    ...fitted("box"),
    ...fitted("front"),
  ];
  return {
    name,
    case: home,
    openings,
    boxes,
    mounts: model.mounts.filter((mount) => mine(mount.openings[0])),
    fronts: model.fronts.filter((front) => mine(front.openings[0])),
    shelves: model.shelves.filter((shelf) => mine(shelf.opening)),
    solids: numbered(solids),
  };
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
