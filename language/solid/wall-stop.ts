import { toNumber } from "../core/rational.ts";
import type { CaseModel } from "../derive/model.ts";
import type { Wall } from "../derive/walls.ts";
import type { Pivot } from "./turned.ts";

/** Where a leaf meets a wall beside its case before it is open as far as its hinges go. */
export interface WallStop {
  readonly wall: Wall;
  /** Degrees. */
  readonly at: number;
  /** Whether it is the pull on the leaf that meets it. */
  readonly pull: boolean;
  /** How much farther off the wall would have to be for the leaf to open as far as it is said to, or to a right angle if that is less. */
  readonly lacks: number;
}

/** How far a leaf opens before it meets the wall at its hinges; `undefined` where nothing stops it. `stands` is how far its pull stands out. */
export function wallStop(leaf: Pivot, home: CaseModel, opens: number, stands: number): WallStop | undefined {
  const wall = home.walls.find(({ side }) => side === (leaf.hinge === "low" ? "left" : "right"));
  if (wall === undefined || leaf.axis !== "x" || leaf.rear) return undefined;
  const [from, to, , , face] = leaf.bounds.rough;
  const away = toNumber(wall.away.value);
  const room = away + (leaf.hinge === "low" ? from : toNumber(home.wide.value) - to);
  // The leaf's own front face is where it turns; a wall that ends before it is passed.
  const past = wall.past === undefined ? Number.POSITIVE_INFINITY : toNumber(wall.past.value) + face;
  const wide = to - from;
  const bare = metAt(wide, 0, room, past);
  const pulled = stands === 0 ? undefined : metAt(wide, stands, room, past);
  const pull = pulled !== undefined && (bare === undefined || pulled < bare);
  const at = pull ? pulled : bare;
  if (at === undefined || opens <= at + slack) return undefined;
  const wanted = toRadians(Math.min(opens, 90));
  const reach = pull ? stands * Math.sin(wanted) - wide * Math.cos(wanted) : 0;
  return { wall, at, pull, lacks: Math.max(0, reach - room) };
}

/** A hundredth of a degree is no stop. */
const slack = 0.01;

/**
 * The angle at which the free edge of a leaf, or a pull that stands out there, meets a wall `room` beside the hinges that
 * ends `past` before them. Turned by 90 + b degrees the edge is w sin b beside the hinges and w cos b before them.
 */
function metAt(wide: number, stands: number, room: number, past: number): number | undefined {
  if (past <= 0) return undefined;
  const reach = Math.hypot(wide, stands);
  if (reach <= room) return undefined;
  const beyond = Math.asin(Math.max(-1, room / reach)) - Math.atan2(stands, wide);
  const before = wide * Math.cos(beyond) - stands * Math.sin(beyond);
  if (before <= past) return 90 + toDegrees(beyond);
  // The free edge passes the end of the wall: the face of the leaf meets its corner. A pull there has passed it.
  return stands === 0 ? 90 + toDegrees(Math.atan2(room, past)) : undefined;
}

function toRadians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

function toDegrees(radians: number): number {
  return (radians * 180) / Math.PI;
}
