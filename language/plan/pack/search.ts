import { type Layout, worthOf } from "./layout.ts";
import type { Random } from "./random.ts";
import { putIn } from "./recreate.ts";
import { type Extent, type Loose, ruinOf } from "./ruin.ts";
import { collectItems } from "./tree.ts";

/** The blanks to pack, as columns of numbers; `turns[i]` is 1 where blank i may lie either way. */
export type Blanks = {
  readonly count: number;
  readonly w: Float64Array;
  readonly h: Float64Array;
  readonly area: Float64Array;
  readonly turns: Uint8Array;
  /** Blanks of one kind are of the same size, and may lie the same ways. */
  readonly kind: Int32Array;
};

/** A search for a layout of all blanks on a fixed set of sheets, going on from where it stands. */
export type Search = {
  /** Does one round of taking out and putting back; true once every blank has a place. */
  readonly round: () => boolean;
  /** Goes on from other sheets, be they worse: the way down from there is another one. Answers as a round does. */
  readonly goOnFrom: (from: Loose) => boolean;
  readonly layouts: () => readonly Layout[];
  readonly left: () => readonly number[];
};

/** How a search goes about it; found by trial on the benchmark instances. */
export type Manner = Extent & {
  /** How many earlier costs late acceptance looks back on. */
  readonly memory: number;
  /** Power of a left-out blank's area in the cost: above 1, small ones are better left out than a large one. */
  readonly power: number;
  /** Share of sheets passed over at random while putting back. */
  readonly blink: number;
};

type State = { layouts: Layout[]; out: number[]; cost: number };

/** Weight of the gaps' worth beside the area left out: it only guides the way between equal areas. */
const GAP_WEIGHT = 0.02;

/**
 * Ruin and recreate towards a goal: the sheets are given, and what counts is the area that has no place yet. The idea of
 * a goal and late acceptance is that of Gardeyn and Wauters 2022; the moves work on slicing trees. What
 * sheets it meets is told to `meet`.
 */
export function searchOn(
  blanks: Blanks,
  start: readonly Layout[],
  random: Random,
  manner: Manner,
  meet?: (layout: Layout) => void,
): Search {
  const ruin = ruinOf(blanks, random, manner);
  const keys = new Float64Array(blanks.count);
  const largest = start.reduce((most, layout) => Math.max(most, layout.w * layout.h), 1);
  const gapScale = GAP_WEIGHT / worthOf(largest);
  const weight = blanks.area.map((area) => (area / largest) ** manner.power);
  let now = startState(blanks, start);
  now.cost = costOf(now);
  let best = now;
  const history = new Float64Array(manner.memory).fill(now.cost);
  let rounds = 0;
  const skip = (): boolean => random.unit() < manner.blink;

  function costOf(state: State): number {
    let out = 0;
    for (const item of state.out) out += weight[item]!;
    let worth = 0;
    for (const layout of state.layouts) worth += layout.worth;
    return out - worth * gapScale;
  }

  function round(): boolean {
    if (now.out.length === 0) return true;
    const next: State = { layouts: now.layouts.slice(), out: now.out.slice(), cost: 0 };
    ruin(next);
    recreate(next);
    next.cost = costOf(next);
    if (meet !== undefined) {
      for (let at = 0; at < next.layouts.length; at++) {
        if (next.layouts[at] !== now.layouts[at]) meet(next.layouts[at]!);
      }
    }
    const slot = rounds++ % history.length;
    if (next.cost <= now.cost || next.cost < history[slot]!) now = next;
    if (now.cost < history[slot]!) history[slot] = now.cost;
    if (now.cost < best.cost || now.out.length === 0) best = now;
    return now.out.length === 0;
  }

  function goOnFrom({ layouts, out }: Loose): boolean {
    now = { layouts, out, cost: 0 };
    recreate(now);
    now.cost = costOf(now);
    history.fill(now.cost);
    if (now.cost < best.cost || now.out.length === 0) best = now;
    return now.out.length === 0;
  }

  function recreate(state: State): void {
    const waiting: number[] = [];
    for (const item of inSomeOrder(state.out)) {
      if (!putIn(blanks, state.layouts, item, skip)) waiting.push(item);
    }
    state.out = waiting;
  }

  /** Mostly by area, sometimes by a length or by chance, always with some noise. */
  function inSomeOrder(items: number[]): number[] {
    const kind = random.below(8);
    const noise = random.unit() * 1.2;
    for (const item of items) {
      const w = blanks.w[item]!;
      const h = blanks.h[item]!;
      const key = kind < 4 ? w * h : kind === 4 ? Math.max(w, h) ** 2 : kind === 5 ? w * w : h * h;
      const unit = random.unit();
      keys[item] = kind === 7 ? unit : key * (1 + noise * (unit - 0.5));
    }
    return items.sort((a, b) => keys[b]! - keys[a]! || a - b);
  }

  return { round, goOnFrom, layouts: () => best.layouts, left: () => best.out };
}

function startState(blanks: Blanks, start: readonly Layout[]): State {
  const there = new Uint8Array(blanks.count);
  for (const { root } of start) {
    const items: number[] = [];
    if (root !== undefined) collectItems(root, items);
    for (const item of items) there[item] = 1;
  }
  const out: number[] = [];
  for (let item = 0; item < blanks.count; item++) if (there[item] === 0) out.push(item);
  return { layouts: start.slice(), out, cost: 0 };
}
