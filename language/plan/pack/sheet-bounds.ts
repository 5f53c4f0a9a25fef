import { type DualFeasible, familyFor } from "./dual-feasible.ts";
import type { Panel } from "./prepare.ts";
import type { BoundReason } from "./problem.ts";
import type { Blanks } from "./search.ts";

/** The best lower bounds found, in new sheets and in cost, with each reason that raised one of them. */
export type SheetBounds = { readonly sheets: number; readonly cost: number; readonly reasons: readonly BoundReason[] };

/** What one way of weighing pieces says: what all blanks weigh, and the most that each panel can carry. */
type Weighing = { readonly total: number; readonly carries: (panel: Panel) => number; readonly because: () => string };

/** Guards the rounding up of quotients of doubles: a bound must never be one too high. */
const SLACK = 1e-9;

/**
 * Least numbers of new sheets and least cost for blanks on panels, by area, by dual feasible functions over both
 * lengths, and by pieces of which no two can share a sheet. Holds for any cutting, guillotine or not.
 */
export function sheetBounds(blanks: Blanks, panels: readonly Panel[]): SheetBounds {
  const there = panels.filter((panel) => 0 < panel.have);
  if (blanks.count === 0 || there.length === 0) return { sheets: 0, cost: 0, reasons: [] };
  const reasons: BoundReason[] = [];
  let sheets = 0;
  let cost = 0;
  const learn = (least: number, leastCost: number, because: () => string): void => {
    if (least <= sheets && leastCost <= cost) return;
    sheets = Math.max(sheets, least);
    cost = Math.max(cost, leastCost);
    reasons.push({ sheets: least, cost: leastCost, because: because() });
  };
  const area = areaWeighing(blanks);
  learn(leastSheets(area, there), leastCost(area, there, 0), area.because);
  const alone = piecesThatCannotShare(blanks, there);
  learn(alone, alone * cheapest(there), () => `${alone} pieces of which no two can share a sheet`);
  for (const weighing of pairWeighings(blanks, there)) {
    learn(leastSheets(weighing, there), leastCost(weighing, there, cost), weighing.because);
  }
  return { sheets, cost, reasons };
}

function cheapest(panels: readonly Panel[]): number {
  const costs = panels.filter((panel) => !panel.offcut).map((panel) => panel.cost);
  return costs.length === 0 ? 0 : Math.min(...costs);
}

function areaWeighing(blanks: Blanks): Weighing {
  let total = 0;
  for (let item = 0; item < blanks.count; item++) total += blanks.area[item]!;
  return { total, carries: (panel) => panel.w * panel.h, because: () => "the area of the parts with their kerfs" };
}

/** The fewest new sheets that carry the weight left over by the offcuts: the strongest sheets first. */
function leastSheets(weighing: Weighing, panels: readonly Panel[]): number {
  let left = weighing.total;
  for (const panel of panels) if (panel.offcut) left -= panel.have * weighing.carries(panel);
  const fresh = panels
    .filter((panel) => !panel.offcut)
    .map((panel) => ({ have: panel.have, carries: weighing.carries(panel) }));
  fresh.sort((a, b) => b.carries - a.carries);
  let count = 0;
  for (const { have, carries } of fresh) {
    if (left <= SLACK * weighing.total || carries <= 0) break;
    const needed = Math.min(have, Math.ceil(left / carries - SLACK));
    count += needed;
    left -= needed * carries;
  }
  return count;
}

/** The least cost of new sheets that carry the weight: a small exact search; 0 when it cannot pass `known` anyway. */
function leastCost(weighing: Weighing, panels: readonly Panel[], known: number): number {
  let left = weighing.total;
  for (const panel of panels) if (panel.offcut) left -= panel.have * weighing.carries(panel);
  const fresh = panels
    .filter((panel) => !panel.offcut)
    .map((panel) => ({ have: panel.have, cost: panel.cost, carries: weighing.carries(panel) }))
    .filter((one) => 0 < one.carries)
    .sort((a, b) => a.cost / a.carries - b.cost / b.carries);
  const first = fresh[0];
  const enough = SLACK * weighing.total;
  if (first === undefined || left <= enough) return 0;
  const dearest = fresh.reduce((most, one) => Math.max(most, one.cost), 0);
  const fraction = (left / first.carries) * first.cost;
  if (fresh.length !== 1 && fraction + dearest < known) return 0;
  let best = Number.POSITIVE_INFINITY;
  let visited = 0;
  const visit = (at: number, rest: number, spent: number): void => {
    const kind = fresh[at];
    if (rest <= enough) best = Math.min(best, spent);
    else if (kind !== undefined && spent + (rest / kind.carries) * kind.cost * (1 - SLACK) < best && visited++ < 5000) {
      const most = Math.min(kind.have, Math.ceil(rest / kind.carries - SLACK));
      for (let count = most; 0 <= count; count--) visit(at + 1, rest - count * kind.carries, spent + count * kind.cost);
    }
  };
  visit(0, left, 0);
  if (best === Number.POSITIVE_INFINITY || 5000 <= visited) return fraction * (1 - SLACK);
  return best;
}

/** Size of a set of blanks found greedily of which no two fit one sheet together, less the offcuts there are. */
function piecesThatCannotShare(blanks: Blanks, panels: readonly Panel[]): number {
  const order = Array.from({ length: blanks.count }, (_, item) => item);
  const short = (item: number): number => Math.min(blanks.w[item]!, blanks.h[item]!);
  order.sort((a, b) => short(b) - short(a) || blanks.area[b]! - blanks.area[a]! || a - b);
  const apart: number[] = [];
  for (const item of order) {
    if (apart.every((other) => panels.every((panel) => !shareOne(blanks, item, other, panel)))) apart.push(item);
  }
  const offcuts = panels.reduce((sum, panel) => sum + (panel.offcut ? panel.have : 0), 0);
  return Math.max(0, apart.length - offcuts);
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
 * Every pair of functions over width and height. Pieces that may turn count with the smaller of their two products, or,
 * over a square that holds every sheet, with the mean: a plan and its mirror image show each piece both ways
 * (Clautiaux, Jouglet and El Hayek 2007).
 */
function* pairWeighings(blanks: Blanks, panels: readonly Panel[]): Generator<Weighing> {
  const wide = Math.max(...panels.map((panel) => panel.w));
  const high = Math.max(...panels.map((panel) => panel.h));
  const most = Math.max(10, Math.min(120, Math.floor(12000 / blanks.count)));
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
