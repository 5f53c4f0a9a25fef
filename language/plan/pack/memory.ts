import type { Demand } from "./demands.ts";
import { type Layout, layOut } from "./layout.ts";
import { dive } from "./pattern-dive.ts";
import { type Pattern, type Relaxed, relaxPatterns, type Task } from "./pattern-relax.ts";
import type { Kind } from "./pattern-values.ts";
import type { Panel } from "./prepare.ts";
import type { Random } from "./random.ts";
import type { Loose } from "./ruin.ts";
import type { Blanks } from "./search.ts";
import { collectItems, LEAF, leaf, type Node, split } from "./tree.ts";

/** Layouts of single sheets met during a search, each set of blanks once, and a way to combine them anew. */
export type Memory = {
  /** Keeps a layout that wastes no more than the sheets can about bear, when its set of blanks is new. */
  readonly keep: (layout: Layout) => void;
  /** Goes on combining towards a plan of this cost at most, a little; answers the combination once it is there. */
  readonly combine: (cost: number) => Loose | undefined;
  /** What any set of sheets must carry, by the number of the panel; undefined as long as it is not known. */
  readonly proof: () => Demand | undefined;
  /** Whether all patterns have been looked at. */
  readonly isComplete: () => boolean;
};

const MOST_KEPT = 30_000;
const MOST_BLANKS = 400;
/** With more blanks than so many on a sheet, there are too many patterns to choose from. */
const MOST_ON_SHEET = 12;
/** A sheet with more free area than so many times the mean is hardly one of a tight plan. */
const MEANS_FREE = 4;
const LEAST_SHARE_FREE = 0.05;
const NOISE = 0.3;

/**
 * A memory of the panels. What was met on sheets like those of `start` is the beginning of a pattern relaxation, and plans
 * are read from that by diving. Undefined where there are too many blanks for it to be quick, or where nothing has a cost.
 */
export function memoryOf(
  blanks: Blanks,
  panels: readonly Panel[],
  start: readonly Layout[],
  random: Random,
): Memory | undefined {
  if (MOST_BLANKS < blanks.count || MOST_ON_SHEET * start.length < blanks.count) return undefined;
  const bins = panels.flatMap((panel, bin) => (0 < panel.have ? [bin] : []));
  const dearest = Math.max(0, ...bins.map((bin) => panels[bin]!.cost));
  if (dearest <= 0) return undefined;
  const taskSheetOf = panels.map((_, bin) => bins.indexOf(bin));
  const { kinds, kindOf, demand } = kindsOf(blanks);
  const sheets = bins.map((bin) => ({ w: panels[bin]!.w, h: panels[bin]!.h, cost: panels[bin]!.cost / dearest }));
  const have = bins.map((bin) => panels[bin]!.have);
  const task: Task = { kinds, sheets };
  const shareFree = shareFreeOf(blanks, start);
  const numbers = kinds.map(() => Math.floor(random.unit() * 2 ** 32));
  const known = bins.map(() => new Set<number>());
  let kept: Pattern[] = [];
  let root: Relaxed | undefined;
  let proof: Demand | undefined;
  let dives = 0;
  let under: Generator<undefined, Loose> | undefined;
  const found: number[] = [];

  function keep({ root: node, bin, w, h, free }: Layout): void {
    const sheet = taskSheetOf[bin]!;
    const seen = known[sheet]!;
    if (node === undefined || w * h * shareFree < free || MOST_KEPT <= seen.size) return;
    found.length = 0;
    collectItems(node, found);
    let sum = 0;
    for (const item of found) sum += numbers[kindOf[item]!]!;
    if (seen.has(sum)) return;
    seen.add(sum);
    kept.push({ tree: () => withKinds(node, kindOf), kinds: found.map((item) => kindOf[item]!), sheet });
  }

  function combine(cost: number): Loose | undefined {
    under ??= combining(cost / dearest);
    const step = under.next();
    if (step.done !== true) return undefined;
    under = undefined;
    return step.value;
  }

  function* combining(cost: number): Generator<undefined, Loose> {
    const pool = root === undefined ? kept : [...root.near(cost), ...kept];
    kept = [];
    root = yield* relaxPatterns(task, demand, have, pool);
    proof = ofPanels(root.proof) ?? proof;
    const noise = dives++ === 0 ? 0 : NOISE;
    return laidOut(yield* dive(task, { demand, have, cost }, root, noise, random));
  }

  function laidOut(fixed: readonly Pattern[]): Loose {
    const waiting = kinds.map((): number[] => []);
    for (let item = blanks.count - 1; 0 <= item; item--) waiting[kindOf[item]!]!.push(item);
    const layouts = fixed.map((pattern) => {
      const node = withItems(pattern.tree(), waiting);
      const items: number[] = [];
      if (node !== undefined) collectItems(node, items);
      const bin = bins[pattern.sheet]!;
      const used = items.reduce((sum, item) => sum + blanks.area[item]!, 0);
      return layOut(bin, panels[bin]!.w, panels[bin]!.h, node, used);
    });
    return { layouts, out: waiting.flat() };
  }

  function ofPanels(shown: Demand | undefined): Demand | undefined {
    if (shown === undefined) return undefined;
    return { need: shown.need, carries: taskSheetOf.map((sheet) => (sheet < 0 ? 0 : shown.carries[sheet]!)) };
  }

  return { keep, combine, proof: () => proof, isComplete: () => root?.complete === true };
}

/** The share of a sheet that may be free where the blanks leave so much of these sheets. */
function shareFreeOf(blanks: Blanks, sheets: readonly Layout[]): number {
  const whole = sheets.reduce((sum, { w, h }) => sum + w * h, 0);
  const used = blanks.area.reduce((sum, one) => sum + one, 0);
  return Math.max((1 - used / whole) * MEANS_FREE, LEAST_SHARE_FREE);
}

function kindsOf(blanks: Blanks): { kinds: Kind[]; kindOf: Int32Array; demand: number[] } {
  const kinds: Kind[] = [];
  const demand: number[] = [];
  const kindOf = new Int32Array(blanks.count);
  const byName = new Map<string, number>();
  for (let item = 0; item < blanks.count; item++) {
    const turns = blanks.turns[item] === 1;
    const long = Math.max(blanks.w[item]!, blanks.h[item]!);
    const w = turns ? long : blanks.w[item]!;
    const h = turns ? blanks.w[item]! + blanks.h[item]! - long : blanks.h[item]!;
    const name = `${w},${h},${turns}`;
    const kind = byName.get(name) ?? kinds.length;
    if (kind === kinds.length) {
      byName.set(name, kind);
      kinds.push({ w, h, turns });
      demand.push(0);
    }
    kindOf[item] = kind;
    demand[kind]!++;
  }
  return { kinds, kindOf, demand };
}

function withKinds(node: Node, kindOf: Int32Array): Node {
  if (node.along === LEAF) return leaf(kindOf[node.item]!, node.w, node.h);
  return split(
    node.along,
    node.kids.map((kid) => withKinds(kid, kindOf)),
  );
}

/** The tree with a waiting blank in place of each kind, without those of which none waits any more. */
function withItems(node: Node, waiting: readonly number[][]): Node | undefined {
  if (node.along === LEAF) {
    const item = waiting[node.item]!.pop();
    return item === undefined ? undefined : leaf(item, node.w, node.h);
  }
  const kids = node.kids.flatMap((kid) => withItems(kid, waiting) ?? []);
  return kids.length < 2 ? kids[0] : split(node.along, kids);
}
