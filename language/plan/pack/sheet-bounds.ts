import { type Demand, demandsOf } from "./demands.ts";
import { leastToMeet } from "./least-to-meet.ts";
import type { Panel } from "./prepare.ts";
import type { BoundReason } from "./problem.ts";
import type { Blanks } from "./search.ts";
import { areaWeighing, pairWeighings, piecesThatCannotShare, type Weighing } from "./weighings.ts";

/** The best lower bounds found, in new sheets and in cost, with each reason that raised one of them. */
export type SheetBounds = { readonly sheets: number; readonly cost: number; readonly reasons: readonly BoundReason[] };

/** Guards the rounding up of quotients of doubles: a bound must never be one too high. */
const SLACK = 1e-9;

/**
 * Least numbers of new sheets and least cost for blanks on panels, by area, by dual feasible functions over both
 * lengths, by pieces of which no two can share a sheet, and by what goes on some of the sheets only. Holds for any
 * cutting, guillotine or not.
 */
export function sheetBounds(
  blanks: Blanks,
  panels: readonly Panel[],
  demands: readonly Demand[] = demandsOf(blanks, panels),
): SheetBounds {
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
  const offcuts = there.reduce((sum, panel) => sum + (panel.offcut ? panel.have : 0), 0);
  const alone = Math.max(0, piecesThatCannotShare(blanks, there) - offcuts);
  learn(alone, alone * cheapest(there), () => `${alone} pieces of which no two can share a sheet`);
  for (const weighing of pairWeighings(blanks, there, Math.max(10, Math.min(120, Math.floor(12000 / blanks.count))))) {
    learn(leastSheets(weighing, there), leastCost(weighing, there, cost), weighing.because);
  }
  const least = (costOf: (panel: Panel) => number): number => leastToMeet(demands, panels, costOf);
  if (0 < demands.length) {
    const fewest = Math.ceil(least(() => 1) - SLACK);
    learn(
      fewest,
      least(({ cost: each }) => each),
      () => "parts that fit only some of the sheets",
    );
  }
  return { sheets, cost, reasons };
}

/** The bounds with what all demands together ask for, some of which were not known before; the same where that is no more. */
export function raisedBy(
  bounds: SheetBounds,
  demands: readonly Demand[],
  panels: readonly Panel[],
  because: string,
): SheetBounds {
  const sheets = Math.ceil(leastToMeet(demands, panels, () => 1) - SLACK);
  const cost = leastToMeet(demands, panels, ({ cost: each }) => each);
  return higher(bounds, { sheets, cost, reasons: [{ sheets, cost, because }] });
}

/** The first bounds with what others say beyond them; the same where that is no more. */
export function higher(bounds: SheetBounds, { sheets, cost, reasons }: SheetBounds): SheetBounds {
  if (sheets <= bounds.sheets && cost <= bounds.cost * (1 + SLACK)) return bounds;
  return {
    sheets: Math.max(sheets, bounds.sheets),
    cost: Math.max(cost, bounds.cost),
    reasons: [...bounds.reasons, ...reasons],
  };
}

function cheapest(panels: readonly Panel[]): number {
  const costs = panels.filter((panel) => !panel.offcut).map((panel) => panel.cost);
  return costs.length === 0 ? 0 : Math.min(...costs);
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
