import { chooseCover } from "./choose-cover.ts";
import { type Layout, layOut } from "./layout.ts";
import type { Random } from "./random.ts";
import { type Loose, layoutWithout } from "./ruin.ts";
import type { Blanks } from "./search.ts";
import { collectItems } from "./tree.ts";

/** Layouts of single sheets met during a search, each set of blanks once, and a way to combine them anew. */
export type Memory = {
  /** Keeps a layout that wastes no more than the sheets can about bear, when its set of blanks is new. */
  readonly keep: (layout: Layout) => void;
  /** As many of the kept layouts as there are sheets, chosen so that few blanks are in none; every blank once. */
  readonly recombine: () => Loose;
};

const MOST_KEPT = 30_000;
const MOST_BLANKS = 400;
const STEPS = 4_000;
/** A sheet with more free area than so many times the mean is hardly one of a tight plan. */
const MEANS_FREE = 2;
const LEAST_SHARE_FREE = 0.02;

/**
 * A memory for the sheets given. Choosing among sheets met before is the set covering of Monaci and Toth 2006. Undefined
 * where the sheets are not all of one size, where there are more blanks than such a choice is quick for, and where blanks
 * may turn: there, by trial on the benchmark instances, the time is better spent on the search itself.
 */
export function memoryOf(blanks: Blanks, sheets: readonly Layout[], random: Random): Memory | undefined {
  const [first] = sheets;
  if (first === undefined || MOST_BLANKS < blanks.count || blanks.turns.includes(1)) return undefined;
  if (sheets.some((one) => one.bin !== first.bin)) return undefined;
  const area = first.w * first.h;
  const slack = area - blanks.area.reduce((sum, one) => sum + one, 0) / sheets.length;
  const mostFree = Math.max(slack * MEANS_FREE, area * LEAST_SHARE_FREE);
  const layouts: Layout[] = [];
  const sets: number[][] = [];
  const known = new Set<number>();
  /** A set is known again by the sum of its blanks' numbers, drawn from so wide a range that two sums hardly meet. */
  const numbers = Float64Array.from({ length: blanks.count }, () => Math.floor(random.unit() * 2 ** 22) * 2 ** 22);
  for (let item = 0; item < blanks.count; item++) numbers[item]! += Math.floor(random.unit() * 2 ** 22);
  const found: number[] = [];
  let next = 0;

  function keep(layout: Layout): void {
    if (layout.root === undefined || mostFree < layout.free) return;
    found.length = 0;
    collectItems(layout.root, found);
    let sum = 0;
    for (const item of found) sum += numbers[item]!;
    if (known.has(sum)) return;
    known.add(sum);
    const at = layouts.length < MOST_KEPT ? layouts.length : next++ % MOST_KEPT;
    layouts[at] = layout;
    sets[at] = found.slice();
  }

  function recombine(): Loose {
    const { chosen, out } = chooseCover(blanks.area, sets, sheets.length, STEPS, random);
    const seen = new Uint8Array(blanks.count);
    const combined = chosen.map((at) => {
      const twice = new Uint8Array(blanks.count);
      for (const item of sets[at]!) {
        twice[item] = seen[item]!;
        seen[item] = 1;
      }
      return twice.includes(1) ? layoutWithout(blanks, layouts[at]!, twice) : layouts[at]!;
    });
    while (combined.length < sheets.length) combined.push(layOut(first!.bin, first!.w, first!.h, undefined, 0));
    return { layouts: combined, out };
  }

  return { keep, recombine };
}
