import { around, axes } from "../solid/box.ts";
import type { Solid } from "../solid/solid.ts";
import type { Spot, Way } from "./exploded-shape.ts";
import { snapped } from "./exploded-shape.ts";

/** Solids that are moved as one. */
export interface Unit {
  /** What stands on it in the drawing; `undefined` for what is shown only to tell where the others go. */
  readonly label: string | undefined;
  readonly solids: readonly Solid[];
  /** From its place, in inches. */
  readonly move: Spot;
}

/** Room of solids in plain inches. */
export interface Extent {
  readonly from: Spot;
  readonly to: Spot;
}

export function extentOfAll(solids: readonly Solid[]): Extent {
  const rough = around(solids.map(({ bounds }) => bounds))?.rough ?? [0, 0, 0, 0, 0, 0];
  return { from: [rough[0], rough[2], rough[4]], to: [rough[1], rough[3], rough[5]] };
}

/** One step apart: what keeps parts clear of one another without losing sight of where they belong. */
const share = 0.17;

function stepOf({ from, to }: Extent): number {
  return share * Math.max(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
}

type Label = (unit: readonly Solid[]) => string;

/** Each part of a case on its own: along the way in which it is put on, the outer ones farther. The layers of a mount stay together. */
export function caseMoves(solids: readonly Solid[], label: Label): readonly Unit[] {
  const all = extentOfAll(solids);
  const step = stepOf(all);
  return layered(solids).map((one) => unit(one, label(one), scaled(caseWay(one[0]!, all), step)));
}

/** Mounts that lie side by side are made up to one thickness, and go in as one. */
function layered(solids: readonly Solid[]): readonly (readonly Solid[])[] {
  const units: Solid[][] = [];
  for (const solid of solids) {
    const last = units.at(-1);
    if (last !== undefined && isMount(solid) && isMount(last[0]!) && levels(solid, last[0]!)) last.push(solid);
    else units.push([solid]);
  }
  return units;
}

function isMount({ part }: Solid): boolean {
  return part.name.endsWith("mount");
}

function levels(a: Solid, b: Solid): boolean {
  const near = Math.abs(a.bounds.rough[0] - b.bounds.rough[0]);
  return Math.abs(a.bounds.rough[2] - b.bounds.rough[2]) < 1e-6 && near < 6;
}

/** In steps. Common practice, no source: shells open outwards, frames come off their face, what stands inside stays. */
function caseWay(solid: Solid, all: Extent): Spot {
  const { name } = solid.part;
  const outward = (way: Way): number => sideOf(solid, all, way);
  switch (name) {
    case "side":
      return [outward(0), 0, 0];
    case "bottom":
      return [0, -0.8, 0];
    case "top":
      return [0, 1.2, 0];
    case "stretcher":
      return [0, endsAt(solid, all, 1) ? 1.2 : 0, 0];
    case "back":
      return [0, 0, 1.2];
    case "nailer":
      return [0, 0, 0.6];
    case "kick":
      return [0, 0, -0.7];
    case "stile":
      return [0.4 * outward(0), 0, 1.6 * outward(2)];
    case "rail":
    case "mid rail":
    case "mid stile":
      return [0, 0, 1.6 * outward(2)];
    case "mount":
      return [0.5 * outward(0), 0, 0];
    default:
      return [0, 0, 0];
  }
}

/** Whether a solid lies in the lower or the upper half of the whole. */
function sideOf({ bounds }: Solid, { from, to }: Extent, way: Way): 1 | -1 {
  return bounds.rough[2 * way]! + bounds.rough[2 * way + 1]! < from[way] + to[way] ? -1 : 1;
}

function endsAt({ bounds }: Solid, { to }: Extent, way: Way): boolean {
  return to[way] - bounds.rough[2 * way + 1]! < 1e-6;
}

/** Fronts are broad, and hide what they are not well clear of. */
const frontSteps = 2.6;

/** What goes into a case and before it: shelves and boxes out of the face, fronts and doors farther. The case stays whole. */
export function contentMoves(
  home: readonly Solid[],
  inside: readonly (readonly Solid[])[],
  fronts: readonly (readonly Solid[])[],
  label: Label,
): readonly Unit[] {
  const step = stepOf(extentOfAll([...home, ...inside.flat(), ...fronts.flat()]));
  const face = home.length === 0 ? 0 : extentOfAll(home).from[2];
  const rooms = inside.map(extentOfAll);
  const out = rooms.map(({ to }) => face - step - to[2]);
  const reach = Math.min(face, ...rooms.map(({ from }, index) => from[2] + out[index]!));
  return [
    ...(home.length === 0 ? [] : [unit(home, undefined, [0, 0, 0])]),
    ...inside.map((solids, index) => unit(solids, label(solids), [0, 0, out[index]!])),
    ...fronts.map((solids) =>
      unit(solids, label(solids), [0, 0, reach - frontSteps * step - extentOfAll(solids).to[2]]),
    ),
  ];
}

/** A drawer box: its walls outwards, its bottom down or out at the back, dividers up. */
export function boxMoves(solids: readonly Solid[], label: Label, bottom: "down" | "out at the back"): readonly Unit[] {
  const all = extentOfAll(solids);
  const step = stepOf(all) * 1.3;
  const way = (solid: Solid): Spot => {
    switch (solid.part.name) {
      case "side":
        return [sideOf(solid, all, 0), 0, 0];
      case "front":
        return [0, 0, -1];
      case "back":
        return [0, 0, 1];
      case "bottom":
        return bottom === "down" ? [0, -1, 0] : [0, 0, 2.2];
      default:
        return [0, 1, 0];
    }
  };
  return solids.map((solid) => unit([solid], label([solid]), scaled(way(solid), step)));
}

/** A frame and its panels: rows and columns spread in their plane, so that every tongue shows. */
export function leafMoves(solids: readonly Solid[], label: Label): readonly Unit[] {
  const step = stepOf(extentOfAll(solids)) * 0.7;
  const columns = ranksOf(
    solids.filter(({ part }) => !part.name.endsWith("rail")),
    0,
  );
  const rows = ranksOf(
    solids.filter(({ part }) => part.name !== "stile"),
    1,
  );
  return solids.map((solid) => {
    const x = solid.part.name.endsWith("rail") ? 0 : columns(solid);
    const y = solid.part.name === "stile" ? 0 : rows(solid);
    return unit([solid], label([solid]), scaled([x, y, 0], step));
  });
}

/** The place of a solid among the others by its middle along a way, from the middle one. */
function ranksOf(solids: readonly Solid[], way: Way): (solid: Solid) => number {
  const middle = ({ bounds }: Solid): number => Math.round((bounds.rough[2 * way]! + bounds.rough[2 * way + 1]!) * 8);
  const places = [...new Set(solids.map(middle))].sort((a, b) => a - b);
  return (solid) => places.indexOf(middle(solid)) - (places.length - 1) / 2;
}

function unit(solids: readonly Solid[], label: string | undefined, move: Spot): Unit {
  return { label, solids, move: [snapped(move[0]), snapped(move[1]), snapped(move[2])] };
}

function scaled([x, y, z]: Spot, by: number): Spot {
  return [x * by, y * by, z * by];
}

const ends: readonly (readonly [before: string, after: string])[] = [
  ["to the left", "to the right"],
  ["down", "up"],
  ["to the front", "to the rear"],
];

/** A move in words: `up`, `to the left and to the front`, `stays`. */
export function wayText(move: Spot): string {
  const words = axes.flatMap((_, way) => (move[way] === 0 ? [] : [ends[way]![move[way]! < 0 ? 0 : 1]!]));
  return words.length === 0 ? "stays" : words.join(" and ");
}
