import { type Layout, layOut } from "./layout.ts";
import { dive } from "./pattern-dive.ts";
import type { Pattern } from "./pattern-price.ts";
import { type Relaxed, relaxPatterns, type Task } from "./pattern-relax.ts";
import type { Kind } from "./pattern-values.ts";
import type { Random } from "./random.ts";
import type { Loose } from "./ruin.ts";
import type { Blanks } from "./search.ts";
import { collectItems, LEAF, leaf, type Node, split } from "./tree.ts";

/** Layouts of single sheets met during a search, each set of blanks once, and a way to combine them anew. */
export type Memory = {
  /** Keeps a layout that wastes no more than the sheets can about bear, when its set of blanks is new. */
  readonly keep: (layout: Layout) => void;
  /** Goes on combining, a little; answers the combination once it is there. */
  readonly combine: () => Loose | undefined;
  /** The sheets that are needed for certain, as far as is known yet. */
  readonly least: () => number;
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
 * A memory for the sheets given. What was met is the start of a pattern relaxation, and plans are read from that by
 * diving. Undefined where the sheets are not all of one size, where one of the blanks is larger than they are, or where
 * there are too many blanks for it to be quick.
 */
export function memoryOf(blanks: Blanks, sheets: readonly Layout[], random: Random): Memory | undefined {
  const [first] = sheets;
  if (first === undefined || MOST_BLANKS < blanks.count || MOST_ON_SHEET * sheets.length < blanks.count)
    return undefined;
  if (sheets.some((one) => one.bin !== first.bin)) return undefined;
  const area = first.w * first.h;
  const slack = area - blanks.area.reduce((sum, one) => sum + one, 0) / sheets.length;
  const mostFree = Math.max(slack * MEANS_FREE, area * LEAST_SHARE_FREE);
  const { kinds, kindOf, demand } = kindsOf(blanks);
  if (!kinds.every((kind) => fits(kind, first))) return undefined;
  const task: Task = { kinds, sheet: { w: first.w, h: first.h } };
  const numbers = kinds.map(() => Math.floor(random.unit() * 2 ** 32));
  const known = new Set<number>();
  let kept: Pattern[] = [];
  let root: Relaxed | undefined;
  let dives = 0;
  let under: Generator<undefined, Loose> | undefined;
  const found: number[] = [];

  function keep(layout: Layout): void {
    if (layout.root === undefined || mostFree < layout.free || MOST_KEPT <= known.size) return;
    found.length = 0;
    collectItems(layout.root, found);
    let sum = 0;
    for (const item of found) sum += numbers[kindOf[item]!]!;
    if (known.has(sum)) return;
    known.add(sum);
    const { root: node } = layout;
    kept.push({ tree: () => withKinds(node, kindOf), kinds: found.map((item) => kindOf[item]!) });
  }

  function combine(): Loose | undefined {
    under ??= combining();
    const step = under.next();
    if (step.done !== true) return undefined;
    under = undefined;
    return step.value;
  }

  function* combining(): Generator<undefined, Loose> {
    const pool = root === undefined ? kept : [...root.near(sheets.length), ...kept];
    kept = [];
    root = yield* relaxPatterns(task, demand, pool);
    const noise = dives++ === 0 ? 0 : NOISE;
    return laidOut(yield* dive(task, demand, sheets.length, root, noise, random));
  }

  function laidOut(fixed: readonly Pattern[]): Loose {
    const waiting = kinds.map((): number[] => []);
    for (let item = blanks.count - 1; 0 <= item; item--) waiting[kindOf[item]!]!.push(item);
    const layouts = fixed.map((pattern) => {
      const node = withItems(pattern.tree(), waiting);
      const items: number[] = [];
      if (node !== undefined) collectItems(node, items);
      return layOut(
        first!.bin,
        first!.w,
        first!.h,
        node,
        items.reduce((sum, item) => sum + blanks.area[item]!, 0),
      );
    });
    while (layouts.length < sheets.length) layouts.push(layOut(first!.bin, first!.w, first!.h, undefined, 0));
    return { layouts, out: waiting.flat() };
  }

  return { keep, combine, least: () => root?.least ?? 0 };
}

function fits({ w, h, turns }: Kind, sheet: { readonly w: number; readonly h: number }): boolean {
  return (w <= sheet.w && h <= sheet.h) || (turns && h <= sheet.w && w <= sheet.h);
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
