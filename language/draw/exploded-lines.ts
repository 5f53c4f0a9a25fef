import type { Mate } from "../solid/mate.ts";
import type { Solid } from "../solid/solid.ts";
import type { Segment } from "./exploded-hidden.ts";
import { spotOn } from "./exploded-hidden.ts";
import type { Unit } from "./exploded-moves.ts";
import { extentOfAll } from "./exploded-moves.ts";
import type { Face, Spot, Way } from "./exploded-shape.ts";
import { within } from "./exploded-shape.ts";

/**
 * Thin lines from each moved part to what it belongs on: from the middle of each joint, where what it meets lies straight
 * along the move. What has no such joint, or is held by hardware, is led back to where it was.
 */
export function explosionLines(units: readonly Unit[], mates: readonly Mate[]): readonly Segment[] {
  const homes = new Map(units.flatMap((unit) => unit.solids.map((solid) => [solid, unit] as const)));
  const led = new Set<Unit>();
  const joints = mates.flatMap(({ a, b }): readonly Segment[] => {
    const [one, other] = [homes.get(a), b === undefined ? undefined : homes.get(b)];
    if (one === undefined || other === undefined || b === undefined) return [];
    const by = minus(other.move, one.move);
    if (by.filter((part) => part !== 0).length !== 1) return [];
    for (const unit of [one, other]) if (unit.move.some((part) => part !== 0)) led.add(unit);
    const from = plus(middleOf(a, b), one.move);
    return [{ from, to: plus(from, by) }];
  });
  return [...joints, ...units.filter((unit) => !led.has(unit)).flatMap(ledBack)];
}

/** The middle of what two solids share on each way, or of the gap between them. */
function middleOf(a: Solid, b: Solid): Spot {
  const at = (way: Way): number => {
    const [p, q] = [a.bounds.rough, b.bounds.rough];
    return (Math.max(p[2 * way]!, q[2 * way]!) + Math.min(p[2 * way + 1]!, q[2 * way + 1]!)) / 2;
  };
  return [at(0), at(1), at(2)];
}

/** Straight back by the longest part of the move, from both ends of the side that is turned to where it was. */
function ledBack({ solids, move }: Unit): readonly Segment[] {
  const { from, to } = extentOfAll(solids);
  const way = longest(move.map(Math.abs) as unknown as Spot);
  if (move[way] === 0) return [];
  const ends = longest([0, 1, 2].map((one) => (one === way ? -1 : to[one]! - from[one]!)) as unknown as Spot);
  return [from, to].map((end) => {
    const at: [number, number, number] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2];
    at[ends] = end[ends];
    at[way] = (move[way] < 0 ? to : from)[way];
    const was: [number, number, number] = [...plus(at, move)];
    was[way] -= move[way];
    return { from: plus(at, move), to: was };
  });
}

function longest([x, y, z]: Spot): Way {
  return y <= x && z <= x ? 0 : z <= y ? 1 : 2;
}

function plus(a: Spot, b: Spot): Spot {
  return [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
}

function minus(a: Spot, b: Spot): Spot {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

/** A few uneven strokes along the grain on each broad face, about so far apart in inches; the same for the same face. */
export function grainMarks(faces: readonly Face[], grain: Way | undefined, apart: number): readonly Segment[] {
  return faces.flatMap((face) => (grain === undefined || face.way === grain ? [] : strokesOn(face, grain, apart)));
}

function strokesOn({ way, at, from, to }: Face, grain: Way, apart: number): readonly Segment[] {
  const along = within[way]![0] === grain ? 0 : 1;
  const across = along === 0 ? 1 : 0;
  const [long, wide] = [to[along] - from[along], to[across] - from[across]];
  const count = Math.min(9, Math.floor(wide / apart));
  if (long < 2 * apart) return [];
  return Array.from({ length: count }, (_, index) => {
    const [one, two, three] = [fraction(index + wide), fraction(index * 3 + long), fraction(index * 7 + wide + long)];
    const place = from[across] + (wide * (index + 0.25 + 0.5 * one)) / count;
    const start = 0.06 + 0.4 * two;
    const end = Math.min(0.95, start + 0.18 + 0.3 * three);
    const spot = (part: number): Spot => {
      const on: [number, number] = [0, 0];
      on[along] = from[along] + long * part;
      on[across] = place;
      return spotOn(way, at, on);
    };
    return { from: spot(start), to: spot(end) };
  });
}

/** A number from 0 to 1 that looks like none in particular. */
function fraction(seed: number): number {
  const value = Math.sin(seed * 12.9898) * 43758.5453;
  return value - Math.floor(value);
}
