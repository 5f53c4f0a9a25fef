import type { Stock } from "../../derive/model.ts";
import type { Box, Range as Stretch } from "../../solid/box.ts";
import { axes } from "../../solid/box.ts";
import { machined } from "../../solid/lay.ts";
import type { Solid as Fitted } from "../../solid/solid.ts";
import type { Axis, Place, Range, Role, Solid } from "./solid.ts";
import { madeOf } from "./solid.ts";

/** A piece of the dry fit as it is drawn flat: its outline without joints, a slab with the band round it. */
export function flatSolid(fitted: Fitted, stocks: ReadonlyMap<string, Stock>): Solid {
  const { part } = fitted;
  const notch = notchOf(fitted);
  return {
    id: part.id,
    role: roleOf(fitted),
    part,
    name: part.name,
    of: part.of,
    place: placeOf(part.name === "slab" ? fitted.bounds : fitted.outline),
    made: madeOf(stocks.get(part.stock)),
    grain: grainAxis(fitted),
    ...(notch === undefined ? {} : { notch }),
    target: part.source,
  };
}

const members = new Set(["stile", "rail", "mid stile", "mid rail"]);

function roleOf({ part, frame, assembly }: Fitted): Role {
  if (assembly === frame) return members.has(part.name) ? "frame" : part.name.endsWith("mount") ? "mount" : "case";
  const [kind] = assembly.split(" ");
  return kind === "box" || kind === "shelf" ? kind : "front";
}

function placeOf(box: Box): Place {
  const range = ({ from, to }: Stretch): Range => [from, to];
  return { x: range(box.x), y: range(box.y), z: range(box.z) };
}

/** What a kick takes out of a side: the cut that begins at its floor. */
function notchOf({ part, outline, cuts }: Fitted): Solid["notch"] {
  if (machined(part, "notch", "kick") === undefined) return undefined;
  const cut = cuts.find(({ rough }) => rough[2] === outline.rough[2] && rough[3] < outline.rough[3]);
  return cut === undefined ? undefined : { z: cut.z.to, y: cut.y.to };
}

/** The axis that the grain of a piece's face runs along; `undefined` where its grain does not matter. */
export function grainAxis({ part, outline }: Fitted): Axis | undefined {
  if (part.grain === "none") return undefined;
  const size = part.grain === "long" ? part.length.value : part.width.value;
  const long = axes.map((_, index) => outline.rough[2 * index + 1]! - outline.rough[2 * index]!);
  const thin = long.indexOf(Math.min(...long));
  // A tenoned piece is laid shorter than it is cut, so the nearest size is its own; square pieces stand as most do.
  const off = (axis: Axis): number => Math.abs(long[axes.indexOf(axis)]! - Number(size.n) / Number(size.d));
  const [first, second] = (["y", "x", "z"] as const).filter((axis) => axes.indexOf(axis) !== thin);
  return off(second!) < off(first!) - 1e-6 ? second : first;
}

/** The pieces of one frame of axes, what is let in behind what it is let into, fronts last. */
export function flatSolids(fitted: readonly Fitted[], frame: string, stocks: ReadonlyMap<string, Stock>) {
  const flat = fitted.filter((solid) => solid.frame === frame).map((solid) => flatSolid(solid, stocks));
  return (...roles: readonly Role[]): readonly Solid[] => flat.filter(({ role }) => roles.includes(role));
}
