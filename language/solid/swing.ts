import type { Length } from "../core/length.ts";
import { toNumber, zero } from "../core/rational.ts";
import { type Context, pieces } from "../derive/context.ts";
import { fallback } from "../derive/defaults.ts";
import type { FrontModel, Model } from "../derive/model.ts";
import { around, type Box } from "./box.ts";
import { type Block, inFrame, isStuck } from "./moving.ts";
import { turnOf } from "./place.ts";
import type { Solid } from "./solid.ts";
import { overlaps, planOf, sharesHeight, touching } from "./turned.ts";
import { type WallStop, wallStop } from "./wall-stop.ts";

/** One leaf of a door, and the edge that it turns on. */
export interface Leaf {
  readonly front: FrontModel;
  readonly solids: readonly Solid[];
  readonly bounds: Box;
  readonly thick: Length;
  /** The axis across which it turns: x for hinges left or right, y for hinges at its top or bottom. */
  readonly axis: "x" | "y";
  /** Whether the hinges are at the low or the high end of that axis. */
  readonly hinge: "low" | "high";
  readonly rear: boolean;
  /** How far its hinges let it open, in degrees; what lies along its case is folded right back. */
  readonly opens: number;
  /** How far it stands open: that, or where it meets a wall. */
  readonly stands: number;
  readonly wall: WallStop | undefined;
}

/** The leaves of a door that says how it turns; a pair turns on its two outer edges. */
export function leavesOf(context: Context, model: Model, front: FrontModel, solids: readonly Solid[]): readonly Leaf[] {
  const hinged = front.whole.hinged?.value;
  const whole = around(solids.map(({ bounds }) => bounds));
  const opening = front.openings[0];
  if (hinged === undefined || whole === undefined || opening === undefined) return [];
  const thick = front.thickness?.value ?? zero;
  const rear = turnOf(model, opening) !== undefined;
  const home = model.cases.find(({ name }) => name === opening.case);
  const opens = Math.min(front.opens.value, folded);
  const pull = pullOf(context, front);
  const made = (own: readonly Solid[], axis: "x" | "y", hinge: "low" | "high"): readonly Leaf[] => {
    const bounds = around(own.map((solid) => solid.bounds));
    if (bounds === undefined) return [];
    const wall = home === undefined ? undefined : wallStop({ bounds, axis, hinge, rear }, home, opens, pull);
    return [{ front, solids: own, bounds, thick, axis, hinge, rear, opens, stands: wall?.at ?? opens, wall }];
  };
  if (front.leaves === 1) {
    const axis = hinged === "left" || hinged === "right" ? "x" : "y";
    // Seen from behind, left is where x is high.
    const low = hinged === "bottom" || hinged === (rear ? "right" : "left");
    return made(solids, axis, low ? "low" : "high");
  }
  const middle = (whole.rough[0] + whole.rough[1]) / 2;
  const low = solids.filter(({ bounds }) => (bounds.rough[0] + bounds.rough[1]) / 2 < middle);
  return [
    ...made(low, "x", "low"),
    ...made(
      solids.filter((solid) => !low.includes(solid)),
      "x",
      "high",
    ),
  ];
}

/** A leaf that is folded right back lies along its case; further it can only go round a corner. */
const folded = 180;

/** How far its pull stands out, in inches; nought where it has none. */
function pullOf(context: Context, { whole: { pulls } }: FrontModel): number {
  const count = pulls === undefined ? 0 : (pieces(context, pulls.value, 12) ?? 0);
  return count === 0 ? 0 : toNumber(fallback("pull.stands").value);
}

/**
 * What a leaf meets on its way to where it stands open. It turns about the front edge at its hinges, which is where a cup hinge
 * keeps it within its own width (common practice, no source). In plan, with each degree tried and the one where the free
 * edge stands out furthest.
 */
export function swingOf(leaf: Leaf, solids: readonly Solid[], stuck: ReadonlySet<string>): readonly Block[] {
  const own = new Set(leaf.solids);
  const wide =
    leaf.axis === "x" ? leaf.bounds.rough[1] - leaf.bounds.rough[0] : leaf.bounds.rough[3] - leaf.bounds.rough[2];
  const reach = Math.hypot(wide, leaf.bounds.rough[5] - leaf.bounds.rough[4]) + touching;
  const around = inFrame(solids, leaf.solids[0]?.frame ?? "");
  const obstacles = around.filter((solid) => !own.has(solid) && isNear(leaf, solid, reach));
  const furthest = (Math.atan2(toNumber(leaf.thick), wide) * 180) / Math.PI;
  const whole = Array.from({ length: Math.floor(leaf.stands) }, (_, index) => index + 1);
  const angles = [...whole, furthest].sort((a, b) => a - b);
  const blocks: Block[] = [];
  for (const obstacle of obstacles) {
    const met = firstMeeting(leaf, obstacle, angles, stuck);
    if (met !== undefined) blocks.push(met);
  }
  return blocks.sort((a, b) => a.at - b.at);
}

/**
 * Whether a solid can be met at all: at the leaf's height (or width), nearer to the hinges than its furthest corner, on its
 * side of them unless it opens past a right angle, and before its back, past which turning takes no point of it.
 */
function isNear(leaf: Leaf, { bounds }: Solid, reach: number): boolean {
  if (!sharesHeight(leaf, leaf.bounds, bounds)) return false;
  const { from, to } = planOf(leaf, bounds);
  const back = leaf.bounds.rough[5] - leaf.bounds.rough[4];
  const beside = 90 < leaf.stands ? touching - reach : touching;
  return beside < to[0] && from[0] < reach - touching && from[1] + touching < back && -reach < to[1];
}

function firstMeeting(
  leaf: Leaf,
  obstacle: Solid,
  angles: readonly number[],
  stuck: ReadonlySet<string>,
): Block | undefined {
  const parts = leaf.solids.filter((part) => !isStuck(stuck, part, obstacle));
  if (parts.length === 0) return undefined;
  for (const at of angles) {
    for (const part of parts) {
      const mine = planOf(leaf, part.bounds);
      const hits = obstacle.pieces.some(
        (piece) => sharesHeight(leaf, part.bounds, piece) && overlaps(mine, at, planOf(leaf, piece)),
      );
      if (hits) return { part, obstacle, at, standing: undefined };
    }
  }
  return undefined;
}
