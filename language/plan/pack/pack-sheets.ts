import { type Attempt, attemptOn, changeManner, filledUp, leastTried, startOn, widened } from "./attempts.ts";
import { type Combiner, combinerOf } from "./combiner.ts";
import { type Built, construct, KEYS } from "./construct.ts";
import { usedSheet } from "./cut-tree.ts";
import { type Demand, demandsOf, suffices } from "./demands.ts";
import { betterFleets, cheaper, type Fleet, fleetOf, fleetPrice, holds, priceOf } from "./fleets.ts";
import type { Layout } from "./layout.ts";
import { oneRow, type RowPlan } from "./one-row.ts";
import { addUnplaced, type Prepared, prepare } from "./prepare.ts";
import type { SheetPlan, SheetProblem } from "./problem.ts";
import { seededRandom } from "./random.ts";
import type { Loose } from "./ruin.ts";
import { higher, raisedBy, type SheetBounds, sheetBounds } from "./sheet-bounds.ts";
import { tidyLast } from "./tidy.ts";

/** How long to search: rounds in all, and a question asked now and then whether to stop at once. */
export type Budget = {
  readonly steps: number;
  readonly shouldStop?: (() => boolean) | undefined;
  readonly seed?: number | undefined;
};

/** A packing that is under way: good from the start, and better when given more rounds. */
export type Packing = {
  /** Searches for so many rounds; true when nothing is left to find (proven, or no cheaper set of sheets is in reach). */
  readonly advance: (rounds: number) => boolean;
  /** The best plan so far. */
  readonly plan: () => SheetPlan;
  /** The best plan so far with its emptiest sheet tidied, so that one large offcut remains. */
  readonly finish: () => SheetPlan;
  /** Counts up whenever a better plan has been found. */
  readonly version: () => number;
};

/** Rounds in which fewer sheets, or smaller ones, are looked for at a price that cannot be less. */
const ROUNDS_FOR_FEWER = 1_000;
/** Searches that are under way at once, at most. */
const MOST_ATTEMPTS = 12;

/** Packs parts within a budget and answers the best plan found; the same input and steps give the same plan. */
export function packSheets(problem: SheetProblem, budget: Budget): SheetPlan {
  const packing = startPacking(problem, budget.seed);
  const stop = budget.shouldStop;
  for (let spent = 0; spent < budget.steps; ) {
    const rounds = Math.min(16, budget.steps - spent);
    if (stop?.() === true || packing.advance(rounds)) break;
    spent += rounds;
  }
  return packing.finish();
}

/** Makes a first plan at once and leaves it to the caller to go on searching, so that a worker can report and stop. */
export function startPacking(problem: SheetProblem, seed = 1): Packing {
  const prepared = prepare(problem);
  const { blanks, panels } = prepared;
  const random = seededRandom(seed);
  const totalArea = blanks.area.reduce((sum, area) => sum + area, 0);
  let best = firstLayouts(prepared);
  let version = 1;
  let bounds: SheetBounds | undefined;
  let demands: readonly Demand[] | undefined;
  let attempts: Attempt[] | undefined;
  let combiner: Combiner | undefined;
  /** What a plan may cost that is combined anew. */
  let goal = 0;
  let learnt: Demand | undefined;
  let row = oneRow(prepared);
  const hasPrices = 1 < costsOf(panels).size;
  let atLeastCost = 0;
  let tidied: readonly Layout[] | undefined;

  function demanded(): readonly Demand[] {
    demands ??= demandsOf(blanks, panels);
    return demands;
  }

  function known(): SheetBounds {
    bounds ??= sheetBounds(blanks, panels, demanded());
    return bounds;
  }

  function isCheapest(): boolean {
    return best.left.length === 0 && meets(best, prepared, known());
  }

  function finished(): boolean {
    return isCheapest() && (!hasPrices || ROUNDS_FOR_FEWER <= atLeastCost);
  }

  function advance(rounds: number): boolean {
    if (finished()) return true;
    for (let done = 0; done < rounds; ) {
      if (row !== undefined && !isCheapest()) {
        done++;
        const step = row.next();
        if (step.done === true) takeRow(step.value);
        if (finished()) return true;
        continue;
      }
      attempts ??= startAttempts([]);
      const attempt = leastTried(attempts);
      if (attempt === undefined) return true;
      const stretch = Math.min(rounds - done, 16);
      done += stretch;
      pursue(attempt, stretch);
      learn();
      if (hasPrices && isCheapest()) atLeastCost += stretch;
      if (finished()) return true;
    }
    return false;
  }

  function takeRow({ layouts, bounds: ofRow }: RowPlan): void {
    row = undefined;
    attempts = undefined;
    bounds = higher(known(), ofRow);
    if (
      layouts !== undefined &&
      (best.left.length !== 0 || cheaper(priceOf(layouts, panels), priceOf(best.layouts, panels)))
    )
      take({ layouts: layouts.slice(), out: [] });
    else version++;
  }

  /** Works on one attempt. */
  function pursue(attempt: Attempt, rounds: number): void {
    let found: Loose | undefined;
    for (let done = 0; done < rounds && found === undefined; done++) found = oneRound(attempt);
    attempt.spent += rounds;
    const stands = { layouts: attempt.search.layouts().slice(), out: attempt.search.left().slice() };
    if (found !== undefined || fewerLeft(stands.out)) take(found ?? stands);
    else changeManner(attempt, blanks, random);
    if (found !== undefined) attempts = undefined;
  }

  function take({ layouts, out }: Loose): void {
    best = { layouts: inUse(layouts), left: out };
    version++;
    tidied = undefined;
  }

  /** A round of the search, or, when it is due, a little of combining anew what it has met; answers a better plan. */
  function oneRound(attempt: Attempt): Loose | undefined {
    const { search } = attempt;
    if (combiner === undefined || combiner.searches()) {
      attempt.rounds++;
      return search.round() ? { layouts: search.layouts().slice(), out: [] } : undefined;
    }
    const combined = combiner.combine(goal);
    return combined === undefined ? undefined : goOnFrom(combined, attempt);
  }

  /** Goes on from sheets that were combined anew, with a search whose fleet has them all. */
  function goOnFrom(combined: Loose, attempt: Attempt): Loose | undefined {
    if (combined.out.length === 0) {
      const better = cheaper(priceOf(combined.layouts, panels), priceOf(best.layouts, panels));
      return better || best.left.length !== 0 ? combined : undefined;
    }
    const to = attemptWith(fleetOf(combined.layouts, panels), attempt);
    const start = to === undefined ? undefined : filledUp(combined, to.fleet, panels);
    if (to === undefined || start === undefined || !to.search.goOnFrom(start)) return undefined;
    return { layouts: to.search.layouts().slice(), out: [] };
  }

  /** This attempt, or another one, whose fleet has all that is wanted; a new one where there is none. */
  function attemptWith(wanted: Fleet, attempt: Attempt): Attempt | undefined {
    const others = attempts ?? [];
    const found = [attempt, ...others].find(({ fleet }) => holds(fleet, wanted));
    if (found !== undefined || MOST_ATTEMPTS <= others.length) return found;
    const fleet = widened(wanted, panels, goal, { area: totalArea, demands: demanded() });
    if (fleet === undefined) return undefined;
    const begun = attemptOn(fleet, startOn(fleet, best.layouts, panels), blanks, combiner, random);
    begun.spent = attempt.spent;
    others.push(begun);
    return begun;
  }

  /** Takes in what the patterns prove, and gives up the attempts that cannot succeed. */
  function learn(): void {
    const proof = combiner?.memory.proof();
    // Where the stock does not suffice there is nothing to prove, but less to leave over.
    if (proof === undefined || proof === learnt || best.left.length !== 0) return;
    learnt = proof;
    const before = known();
    const more = [...demanded(), proof];
    bounds = raisedBy(before, more, panels, "all patterns of straight cuts");
    if (bounds === before && attempts?.every(({ fleet }) => suffices(fleet, [proof])) === true) return;
    demands = more;
    if (attempts !== undefined) attempts = startAttempts(attempts);
    if (bounds !== before) version++;
  }

  /** Where the stock does not suffice for all, a plan with less area left over is the better one. */
  function fewerLeft(left: readonly number[]): boolean {
    const area = (items: readonly number[]): number => items.reduce((sum, item) => sum + blanks.area[item]!, 0);
    return best.left.length !== 0 && area(left) < area(best.left);
  }

  /** An attempt for each fleet that is worth one, with those that are under way as far as they may succeed. */
  function startAttempts(underWay: readonly Attempt[]): Attempt[] {
    const fleets =
      best.left.length === 0
        ? betterFleets(fleetOf(best.layouts, panels), panels, demanded(), totalArea).filter(isNotTooCheap)
        : [panels.map((panel) => Math.min(panel.have, blanks.count))];
    const kept = underWay.filter(({ fleet }) => suffices(fleet, demanded()));
    const started = fleets.filter((fleet) => !kept.some((one) => one.fleet.join() === fleet.join()));
    goal = Math.max(0, ...fleets.map((fleet) => fleetPrice(fleet, panels).cost));
    // Where sheets are of several sizes, what was learnt of them holds for all fleets.
    const holdsOn = combiner !== undefined && (1 < panels.length || 0 < underWay.length);
    if (!holdsOn && fleets[0] !== undefined)
      combiner = combinerOf(blanks, panels, startOn(fleets[0], best.layouts, panels), random);
    return [
      ...kept,
      ...started.map((fleet) => attemptOn(fleet, startOn(fleet, best.layouts, panels), blanks, combiner, random)),
    ];
  }

  function isNotTooCheap(fleet: Fleet): boolean {
    return known().cost * (1 - 1e-9) <= fleetPrice(fleet, panels).cost;
  }

  function finish(): SheetPlan {
    if (best.left.length === 0) tidied ??= tidyLast(best.layouts, prepared, random);
    return planOf({ layouts: tidied ?? best.layouts, left: best.left }, prepared, known());
  }

  return { advance, plan: () => planOf(best, prepared, known()), finish, version: () => version };
}

/** The best of a few quick constructions; only the first two when there are many blanks. */
function firstLayouts({ blanks, panels }: Prepared): Built {
  let best: Built | undefined;
  for (const key of KEYS.slice(0, blanks.count <= 200 ? KEYS.length : 1)) {
    for (const thrift of [0, 1] as const) {
      if (thrift === 1 && panels.length < 2) continue;
      const built = construct(blanks, panels, key, thrift);
      const fewer = best === undefined || built.left.length < best.left.length;
      const same = best !== undefined && built.left.length === best.left.length;
      if (fewer || (same && cheaper(priceOf(built.layouts, panels), priceOf(best!.layouts, panels)))) best = built;
    }
  }
  return best ?? { layouts: [], left: [] };
}

function inUse(layouts: readonly Layout[]): Layout[] {
  return layouts.filter((layout) => layout.root !== undefined);
}

/** True when no set of sheets can be cheaper: the cost meets its bound, and so does the number where prices are equal. */
function meets(built: Built, { panels }: Prepared, bounds: SheetBounds): boolean {
  const price = priceOf(built.layouts, panels);
  if (costsOf(panels).size < 2) return price.sheets <= bounds.sheets;
  return price.cost <= bounds.cost * (1 + 1e-9);
}

/** What new sheets cost, each price once. */
function costsOf(panels: Prepared["panels"]): ReadonlySet<number> {
  return new Set(panels.filter((panel) => !panel.offcut && 0 < panel.have).map((panel) => panel.cost));
}

function planOf(built: Built, prepared: Prepared, bounds: SheetBounds): SheetPlan {
  const { panels, held } = prepared;
  const price = priceOf(built.layouts, panels);
  const unplaced = prepared.unplaced.slice();
  for (const item of built.left) for (const part of held[item]!.parts) addUnplaced(unplaced, part.id, "no stock left");
  const sheets = built.layouts.map((layout) => usedSheet(layout, panels[layout.bin]!, prepared));
  return {
    sheets,
    unplaced,
    faults: prepared.faults,
    sheetsUsed: price.sheets,
    offcutsUsed: sheets.length - price.sheets,
    cost: price.cost,
    lowerBound: bounds.sheets,
    costBound: bounds.cost,
    proven: built.left.length === 0 && meets(built, prepared, bounds),
    reasons: bounds.reasons,
  };
}
