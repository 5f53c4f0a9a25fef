import type { Length } from "../core/length.ts";
import { toNumber, zero } from "../core/rational.ts";
import type { FrontModel, Model } from "../derive/model.ts";
import { around, type Box } from "./box.ts";
import { type Block, inFrame, isStuck } from "./moving.ts";
import { turnOf } from "./place.ts";
import type { Solid } from "./solid.ts";

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
}

/** The leaves of a door that says how it turns; a pair turns on its two outer edges. */
export function leavesOf(model: Model, front: FrontModel, solids: readonly Solid[]): readonly Leaf[] {
  const hinged = front.whole.hinged?.value;
  const whole = around(solids.map(({ bounds }) => bounds));
  const opening = front.openings[0];
  if (hinged === undefined || whole === undefined || opening === undefined) return [];
  const thick = front.thickness?.value ?? zero;
  const rear = turnOf(model, opening) !== undefined;
  const made = (own: readonly Solid[], axis: "x" | "y", hinge: "low" | "high"): readonly Leaf[] => {
    const bounds = around(own.map((solid) => solid.bounds));
    return bounds === undefined ? [] : [{ front, solids: own, bounds, thick, axis, hinge, rear }];
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

/** A corner or a side of a rectangle in plan: across, and towards whoever opens the door. */
type Point = readonly [number, number];

interface Plan {
  readonly from: Point;
  readonly to: Point;
}

/** Less than this, in inches, is a touch. */
const touching = 1e-4;

/**
 * What a leaf meets on its way to a right angle. It turns about the front edge at its hinges, which is where a cup hinge
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
  const angles = [...Array.from({ length: 90 }, (_, index) => index + 1), furthest].sort((a, b) => a - b);
  const blocks: Block[] = [];
  for (const obstacle of obstacles) {
    const met = firstMeeting(leaf, obstacle, angles, stuck);
    if (met !== undefined) blocks.push(met);
  }
  return blocks.sort((a, b) => a.at - b.at);
}

/**
 * Whether a solid can be met at all: at the leaf's height (or width), on its side of the hinges, nearer to them than its
 * furthest corner, and before its back, since turning takes no point of a leaf past its hinges or its own back.
 */
function isNear(leaf: Leaf, { bounds }: Solid, reach: number): boolean {
  if (!sharesHeight(leaf, leaf.bounds, bounds)) return false;
  const { from, to } = planOf(leaf, bounds);
  const back = leaf.bounds.rough[5] - leaf.bounds.rough[4];
  return touching < to[0] && from[0] < reach - touching && from[1] + touching < back && -reach < to[1];
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
      if (hits) return { part, obstacle, at, openDoor: false };
    }
  }
  return undefined;
}

function sharesHeight(leaf: Leaf, a: Box, b: Box): boolean {
  const along = leaf.axis === "x" ? 2 : 0;
  return touching < Math.min(a.rough[along + 1]!, b.rough[along + 1]!) - Math.max(a.rough[along]!, b.rough[along]!);
}

/** A box in plan from the pivot: how far from the hinges, and how far behind the front face. */
function planOf(leaf: Leaf, { rough }: Box): Plan {
  const [low, high] = leaf.axis === "x" ? [rough[0], rough[1]] : [rough[2], rough[3]];
  const mine = leaf.bounds.rough;
  const [first, last] = leaf.axis === "x" ? [mine[0], mine[1]] : [mine[2], mine[3]];
  const [from, to] = leaf.hinge === "low" ? [low - first, high - first] : [last - high, last - low];
  const [front, back] = leaf.rear ? [mine[5] - rough[5], mine[5] - rough[4]] : [rough[4] - mine[4], rough[5] - mine[4]];
  return { from: [from, front], to: [to, back] };
}

/** Whether a rectangle turned about the pivot by so many degrees overlaps one that stands still. */
function overlaps(mine: Plan, degrees: number, other: Plan): boolean {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const turned = cornersOf(mine).map(([a, n]): Point => [a * cos + n * sin, -a * sin + n * cos]);
  const still = cornersOf(other);
  const directions: readonly Point[] = [
    [1, 0],
    [0, 1],
    [cos, -sin],
    [sin, cos],
  ];
  return directions.every((direction) => {
    const [p, q] = [shadow(turned, direction), shadow(still, direction)];
    return touching < Math.min(p[1], q[1]) - Math.max(p[0], q[0]);
  });
}

function cornersOf({ from, to }: Plan): readonly Point[] {
  return [from, [to[0], from[1]], to, [from[0], to[1]]];
}

function shadow(points: readonly Point[], [x, y]: Point): Point {
  const along = points.map((point) => point[0] * x + point[1] * y);
  return [Math.min(...along), Math.max(...along)];
}
