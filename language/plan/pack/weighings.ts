import { type DualFeasible, familyFor } from "./dual-feasible.ts";
import type { Panel } from "./prepare.ts";
import type { Blanks } from "./search.ts";

/** What one way of weighing pieces says: what all blanks weigh, and the most that each panel can carry. */
export type Weighing = {
  readonly total: number;
  readonly carries: (panel: Panel) => number;
  readonly because: () => string;
};

/** Every piece by its area. */
export function areaWeighing(blanks: Blanks): Weighing {
  let total = 0;
  for (let item = 0; item < blanks.count; item++) total += blanks.area[item]!;
  return { total, carries: (panel) => panel.w * panel.h, because: () => "the area of the parts with their kerfs" };
}

/** Size of a set of blanks found greedily of which no two fit one of the sheets together. */
export function piecesThatCannotShare(blanks: Blanks, panels: readonly Panel[]): number {
  const order = Array.from({ length: blanks.count }, (_, item) => item);
  const short = (item: number): number => Math.min(blanks.w[item]!, blanks.h[item]!);
  order.sort((a, b) => short(b) - short(a) || blanks.area[b]! - blanks.area[a]! || a - b);
  const apart: number[] = [];
  for (const item of order) {
    if (apart.every((other) => panels.every((panel) => !shareOne(blanks, item, other, panel)))) apart.push(item);
  }
  return apart.length;
}

function shareOne(blanks: Blanks, a: number, b: number, panel: Panel): boolean {
  for (const [aw, ah] of waysOf(blanks, a)) {
    for (const [bw, bh] of waysOf(blanks, b)) {
      if (aw + bw <= panel.w && Math.max(ah, bh) <= panel.h) return true;
      if (ah + bh <= panel.h && Math.max(aw, bw) <= panel.w) return true;
    }
  }
  return false;
}

function waysOf(blanks: Blanks, item: number): readonly (readonly [number, number])[] {
  const w = blanks.w[item]!;
  const h = blanks.h[item]!;
  if (blanks.turns[item] === 0) return [[w, h]];
  return [
    [w, h],
    [h, w],
  ];
}

/**
 * Every pair of functions over width and height, of about `most` in each direction besides the usual ones. Pieces that may turn count with the smaller of their two products, or,
 * over a square that holds every sheet, with the mean: a plan and its mirror image show each piece both ways
 * (Clautiaux, Jouglet and El Hayek 2007).
 */
export function* pairWeighings(blanks: Blanks, panels: readonly Panel[], most: number): Generator<Weighing> {
  const wide = Math.max(...panels.map((panel) => panel.w));
  const high = Math.max(...panels.map((panel) => panel.h));
  const turning = blanks.turns.includes(1);
  const both = [...blanks.w, ...blanks.h];
  const across = tabled(familyFor(wide, turning ? both : blanks.w, most), blanks, wide);
  const up = tabled(familyFor(high, turning ? both : blanks.h, most), blanks, high);
  for (const f of across) for (const g of up) yield pairOf(f, g, blanks);
  if (!turning) return;
  const side = Math.max(wide, high);
  const square = tabled(familyFor(side, both, most), blanks, side);
  for (let a = 0; a < square.length; a++) {
    for (let b = a; b < square.length; b++) yield meanOf(square[a]!, square[b]!, blanks);
  }
}

type Tabled = {
  readonly name: string;
  readonly of: (length: number) => number;
  readonly w: Float64Array;
  readonly h: Float64Array;
};

function tabled(family: readonly DualFeasible[], blanks: Blanks, capacity: number): Tabled[] {
  return family.map(({ name, of }) => ({
    name,
    of,
    w: blanks.w.map((length) => (length <= capacity ? of(length) : 0)) as Float64Array,
    h: blanks.h.map((length) => (length <= capacity ? of(length) : 0)) as Float64Array,
  }));
}

/** A blank too long for one way has 0 there, so that it counts for nothing: less than it could, never more. */
function pairOf(f: Tabled, g: Tabled, blanks: Blanks): Weighing {
  let total = 0;
  for (let item = 0; item < blanks.count; item++) {
    const upright = f.w[item]! * g.h[item]!;
    total += blanks.turns[item] === 0 ? upright : Math.min(upright, f.h[item]! * g.w[item]!);
  }
  return { total, carries: (panel) => f.of(panel.w) * g.of(panel.h), because: () => reason(f, g) };
}

function meanOf(f: Tabled, g: Tabled, blanks: Blanks): Weighing {
  let total = 0;
  for (let item = 0; item < blanks.count; item++) total += f.w[item]! * g.h[item]! + f.h[item]! * g.w[item]!;
  const carries = (panel: Panel): number => f.of(panel.w) * g.of(panel.h) + f.of(panel.h) * g.of(panel.w);
  return { total, carries, because: () => `${reason(f, g)}, the mean of both ways` };
}

function reason(f: Tabled, g: Tabled): string {
  return f.name === g.name ? `both lengths ${f.name}` : `one length ${f.name}, the other ${g.name}`;
}
