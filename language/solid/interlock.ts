import type { Length } from "../core/length.ts";
import { add, floor, over, times } from "../core/rational.ts";
import { boxOf, extent, type Range } from "./box.ts";
import type { Draft } from "./solid.ts";

/**
 * Shares a corner that two pieces both claim: cut into level slices, every other one taken out of each. Fingers and
 * tails are drawn so as boxes; a mitre is two slices, which leaves each piece the half that it has in truth.
 */
export function interlock(a: Draft | undefined, b: Draft | undefined, corner: Corner, slices: number): void {
  if (a === undefined || b === undefined) return;
  const { from } = corner.y;
  const step = over(extent(corner.y), slices);
  for (let slice = 0; slice < slices; slice++) {
    const y: Range = { from: add(from, times(step, slice)), to: add(from, times(step, slice + 1)) };
    const box = boxOf(corner.x, y, corner.z);
    if (box !== undefined) (slice % 2 === 0 ? b : a).cuts.push(box);
  }
}

export interface Corner {
  readonly x: Range;
  readonly y: Range;
  readonly z: Range;
}

/** An odd number of fingers about as wide as the stock is thick: common practice, no source. */
export function fingers(high: Length, thick: Length): number {
  if (thick.n <= 0n) return 3;
  const pairs = floor({ n: high.n * thick.d, d: high.d * thick.n * 2n });
  const most = 12n;
  return 2 * Number(pairs < 1n ? 1n : most < pairs ? most : pairs) + 1;
}

/** The slices of a mitre. */
export const mitred = 2;
