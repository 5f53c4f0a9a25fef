import type { Box } from "./box.ts";
import type { Block } from "./moving.ts";
import type { Solid } from "./solid.ts";
import type { Leaf } from "./swing.ts";
import { type Point, planOf, sharesHeight, touching, turned } from "./turned.ts";

/** A part on its way out: where each of its boxes is at rest, and what that sweeps. */
export interface Path {
  readonly solid: Solid;
  readonly rest: readonly Box[];
  readonly pieces: readonly Box[];
}

/** A leaf that stands open, in the way of what comes out beside its hinges: the part of it that is met first, and how far out. */
export function openLeaf(leaf: Leaf, path: Path): readonly Block[] {
  const met = leaf.solids.flatMap((obstacle) => metBy(leaf, obstacle, path) ?? []);
  const [first] = met.sort((a, b) => a.at - b.at);
  const by = Math.max(...met.map(({ standing }) => standing!.by));
  return first === undefined ? [] : [{ ...first, standing: { ...first.standing!, by } }];
}

function metBy(leaf: Leaf, obstacle: Solid, { solid, rest, pieces }: Path): Block | undefined {
  if (obstacle.frame !== solid.frame) return undefined;
  const corners = turned(planOf(leaf, obstacle.bounds), leaf.stands);
  const reach = Math.max(...corners.map(([across]) => across));
  let [at, by] = [Number.POSITIVE_INFINITY, 0];
  for (const [index, piece] of pieces.entries()) {
    if (!sharesHeight(leaf, obstacle.bounds, piece)) continue;
    const swept = planOf(leaf, piece);
    const back = hindmost(corners, swept.from[0] + touching, swept.to[0] - touching);
    if (back === undefined || back <= swept.from[1] + touching) continue;
    at = Math.min(at, Math.max(0, planOf(leaf, rest[index]!).from[1] - back));
    by = Math.max(by, reach - swept.from[0]);
  }
  const standing = { at: leaf.stands, by, held: leaf.wall !== undefined };
  return at === Number.POSITIVE_INFINITY ? undefined : { part: solid, obstacle, at, standing };
}

/** How far back a shape reaches between two places across; `undefined` where none of it lies there. */
function hindmost(corners: readonly Point[], from: number, to: number): number | undefined {
  let most: number | undefined;
  const reach = (depth: number): void => {
    if (most === undefined || most < depth) most = depth;
  };
  for (const [index, [a, n]] of corners.entries()) {
    if (from <= a && a <= to) reach(n);
    const [b, m] = corners[(index + 1) % corners.length]!;
    for (const edge of [from, to]) {
      if (Math.min(a, b) < edge && edge < Math.max(a, b)) reach(n + ((m - n) * (edge - a)) / (b - a));
    }
  }
  return most;
}
