import type { Length } from "../core/length.ts";
import { showText, toMillimetres } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { add, subtract, toNumber, zero } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import type { Model, Opening } from "../derive/model.ts";
import type { Area, Item } from "./display-list.ts";
import type { Scene } from "./place/scene.ts";
import type { Axis, Range, Solid } from "./place/solid.ts";
import { longOf } from "./place/solid.ts";
import type { Projection } from "./view.ts";
import { named } from "./view.ts";

/** What every drawing is made from. */
export interface Desk {
  readonly context: Context;
  readonly model: Model;
  /** The letters of the cut list; a part without one is drawn all the same. */
  readonly marks: ReadonlyMap<Part, string>;
}

/** A size as the tape shows it. */
export function sized(desk: Desk, length: Length): string {
  return showText(length, desk.context.reading);
}

export function unitOf({ context }: Desk): string {
  return context.units === "inches" ? "in" : "mm";
}

/** Scales that rules are sold in: by the foot and by tens for inches, ISO 5455 for millimetres. */
const reductions = {
  inches: [1, 2, 4, 8, 10, 12, 16, 20, 24, 48, 96],
  millimetres: [1, 2, 5, 10, 20, 50, 100],
} as const;

export interface Room {
  readonly wide: number;
  readonly high: number;
}

/** What is left on a page beside the usual rows of dimensions. */
export const pageRoom: Room = { wide: 142, high: 165 };

/** The largest scale at which so many millimetres of work fit the room; the smallest of all where none does. */
export function reductionFor(desk: Desk, wide: number, high: number, room: Room): number {
  const all = reductions[desk.context.units];
  return all.find((one) => wide / one <= room.wide && high / one <= room.high) ?? all[all.length - 1]!;
}

export function scaleText(reduction: number): string {
  return `1 : ${reduction}`;
}

export function millimetres(length: Length): number {
  return toNumber(toMillimetres(length));
}

/** The range over all solids along one axis; from nought to nought where there are none. */
export function extentOf(solids: readonly Solid[], axis: Axis): Range {
  const [first, ...rest] = solids.map((solid) => solid.place[axis]);
  if (first === undefined) return [zero, zero];
  return rest.reduce(
    (all, one): Range => [
      toNumber(one[0]) < toNumber(all[0]) ? one[0] : all[0],
      toNumber(all[1]) < toNumber(one[1]) ? one[1] : all[1],
    ],
    first,
  );
}

/** Where an opening lies, seen from the front of its case. */
export function openingPlace(scene: Scene, opening: Opening): { readonly x: Range; readonly y: Range } {
  const [left, floor] = [opening.rect?.x ?? zero, opening.rect?.y ?? zero];
  const [right, head] = [add(left, opening.wide.value), add(floor, opening.high.value)];
  const turned = scene.case !== undefined && opening.face === "rear";
  const wide = scene.case?.wide.value ?? zero;
  return { x: turned ? [subtract(wide, right), subtract(wide, left)] : [left, right], y: [floor, head] };
}

/** A solid in words, with its mark and size: `C side of case chest, 34 1/2 × 25 1/4 × 45/64 in`. */
export function solidName(desk: Desk, solid: Solid): string {
  const { part } = solid;
  const mark = part === undefined ? undefined : desk.marks.get(part);
  const sizes =
    part === undefined
      ? (["x", "y", "z"] as const).map((axis) => longOf(solid.place[axis]))
      : [part.length.value, part.width.value, part.thickness.value];
  const text = sizes.map((size) => sized(desk, size)).join(" × ");
  return `${mark === undefined ? "" : `${mark} `}${solid.name} of ${solid.of}, ${text} ${unitOf(desk)}`;
}

/** Each solid as a group of its own. */
export function drawn(
  desk: Desk,
  projection: Projection,
  solids: readonly Solid[],
  draw: (projection: Projection, solid: Solid) => Area | Item,
): readonly Item[] {
  return solids.map((solid) => named(solid, solidName(desk, solid), [draw(projection, solid)]));
}
