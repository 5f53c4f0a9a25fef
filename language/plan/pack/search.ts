import { bestGap, insertAt, type Place, squeezeIn } from "./insert.ts";
import { type Layout, layOut } from "./layout.ts";
import type { Random } from "./random.ts";
import { collectItems, type Node, without } from "./tree.ts";

/** The blanks to pack, as columns of numbers; `turns[i]` is 1 where blank i may lie either way. */
export type Blanks = {
  readonly count: number;
  readonly w: Int32Array | Float64Array;
  readonly h: Int32Array | Float64Array;
  readonly area: Float64Array;
  readonly turns: Uint8Array;
};

/** A sheet in the set that the search must make do with. */
export type Bin = { readonly w: number; readonly h: number };

/** A search for a layout of all blanks on a given set of sheets. */
export type Search = {
  /** Does one round of taking out and putting back; true once every blank has a place. */
  readonly round: () => boolean;
  readonly layouts: () => readonly Layout[];
  readonly left: () => readonly number[];
};
export const P = { hist: 300, removed: 8, wWorth: 0.02, blink: 0.02, squeeze: 1, expo: 1.0 };

type State = { layouts: Layout[]; out: number[]; cost: number };

/** Ruin and recreate towards a goal: the sheets are fixed, and what counts is the area that has no place yet. */
export function searchOn(blanks: Blanks, bins: readonly Bin[], start: readonly Layout[], random: Random): Search {
  const gone = new Uint8Array(blanks.count);
  const keys = new Float64Array(blanks.count);
  const sheetArea = bins.reduce((most, bin) => Math.max(most, bin.w * bin.h), 1);
  const worthScale = P.wWorth / (sheetArea * Math.sqrt(Math.sqrt(sheetArea)));
  let now: State = startState(blanks, start);
  now.cost = cost(now);
  let best = now;
  const history = new Float64Array(P.hist).fill(now.cost);
  let roundNumber = 0;
  const place: Place = { at: 0, node: undefined, along: 0, w: 0, h: 0, gain: 0 };

  function cost(state: State): number {
    let out = 0;
    for (const item of state.out) out += (blanks.area[item]! / sheetArea) ** P.expo;
    let worth = 0;
    for (const layout of state.layouts) worth += layout.worth;
    return out - worth * worthScale;
  }

  function round(): boolean {
    const next: State = { layouts: now.layouts.slice(), out: now.out.slice(), cost: 0 };
    ruin(next);
    recreate(next);
    next.cost = cost(next);
    const slot = roundNumber++ % history.length;
    if (next.cost <= now.cost || next.cost < history[slot]!) now = next;
    if (now.cost < history[slot]!) history[slot] = now.cost;
    if (now.cost < best.cost || now.out.length === 0) best = now;
    return now.out.length === 0;
  }

  function ruin(state: State): void {
    const { layouts } = state;
    let toGo = 1 + random.below(2 * P.removed - 1);
    for (let tries = 0; 0 < toGo && tries < 4 * P.removed; tries++) {
      const at = random.below(layouts.length);
      const layout = layouts[at]!;
      if (layout.root === undefined) continue;
      const taken: number[] = [];
      collectItems(randomNode(layout.root, random), taken);
      if (toGo + 2 < taken.length) continue;
      toGo -= taken.length;
      takeOut(state, at, taken);
    }
  }

  function takeOut(state: State, at: number, taken: readonly number[]): void {
    const layout = state.layouts[at]!;
    let used = layout.w * layout.h - layout.free;
    for (const item of taken) {
      gone[item] = 1;
      used -= blanks.area[item]!;
      state.out.push(item);
    }
    state.layouts[at] = layOut(layout.bin, layout.w, layout.h, without(layout.root!, gone), used);
    for (const item of taken) gone[item] = 0;
  }

  function recreate(state: State): void {
    order(state.out);
    const waiting: number[] = [];
    for (const item of state.out) {
      if (!putIn(state, item)) waiting.push(item);
    }
    state.out = waiting;
  }

  function order(items: number[]): void {
    const kind = random.below(8);
    const noise = random.unit() * 0.6;
    for (const item of items) {
      const w = blanks.w[item]!;
      const h = blanks.h[item]!;
      let key = kind < 4 ? w * h : kind === 4 ? Math.max(w, h) ** 2 : kind === 5 ? w * w : kind === 6 ? h * h : 1;
      key *= 1 + noise * (random.unit() - 0.5) * 2;
      if (kind === 7) key = random.unit();
      keys[item] = key;
    }
    items.sort((a, b) => keys[b]! - keys[a]! || a - b);
  }

  function putIn(state: State, item: number): boolean {
    const { layouts } = state;
    const area = blanks.area[item]!;
    const w = blanks.w[item]!;
    const h = blanks.h[item]!;
    const turns = blanks.turns[item] === 1 && w !== h;
    place.gain = Number.NEGATIVE_INFINITY;
    for (let at = 0; at < layouts.length; at++) {
      const layout = layouts[at]!;
      if (layout.free < area) continue;
      if (random.unit() < P.blink) continue;
      bestGap(layout, at, w, h, place);
      if (turns) bestGap(layout, at, h, w, place);
    }
    if (place.gain !== Number.NEGATIVE_INFINITY) {
      layouts[place.at] = insertAt(layouts[place.at]!, place, item);
      return true;
    }
    let bestGain = Number.NEGATIVE_INFINITY;
    let bestLayout: Layout | undefined;
    let bestAt = -1;
    for (let at = 0; at < layouts.length; at++) {
      const layout = layouts[at]!;
      if (layout.free < area) continue;
      for (let way = 0; way < (turns ? 2 : 1); way++) {
        const candidate = way === 0 ? squeezeIn(layout, item, w, h) : squeezeIn(layout, item, h, w);
        if (candidate === undefined) continue;
        const gain = candidate.worth - layout.worth;
        if (bestGain < gain) {
          bestGain = gain;
          bestLayout = candidate;
          bestAt = at;
        }
      }
    }
    if (bestLayout === undefined) return false;
    layouts[bestAt] = bestLayout;
    return true;
  }

  return { round, layouts: () => best.layouts, left: () => best.out };
}

function startState(blanks: Blanks, start: readonly Layout[]): State {
  const there = new Uint8Array(blanks.count);
  for (const layout of start) {
    const items: number[] = [];
    if (layout.root !== undefined) collectItems(layout.root, items);
    for (const item of items) there[item] = 1;
  }
  const out: number[] = [];
  for (let item = 0; item < blanks.count; item++) if (there[item] === 0) out.push(item);
  return { layouts: start.slice(), out, cost: 0 };
}

function randomNode(root: Node, random: Random): Node {
  let node = root;
  while (node.kids.length !== 0) {
    if (node !== root && random.unit() < 0.2) return node;
    node = node.kids[random.below(node.kids.length)]!;
  }
  return node;
}
