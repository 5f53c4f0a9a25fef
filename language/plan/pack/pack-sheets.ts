import { type Built, construct, KEYS } from "./construct.ts";
import { usedSheet } from "./cut-tree.ts";
import { type Demand, demandsOf } from "./demands.ts";
import { betterFleets, cheaper, type Fleet, priceOf } from "./fleets.ts";
import { type Layout, layOut } from "./layout.ts";
import { type Memory, memoryOf } from "./memory.ts";
import { addUnplaced, type Prepared, prepare } from "./prepare.ts";
import type { SheetPlan, SheetProblem } from "./problem.ts";
import { seededRandom } from "./random.ts";
import { type Manner, type Search, searchOn } from "./search.ts";
import { type SheetBounds, sheetBounds } from "./sheet-bounds.ts";
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

/** A search towards one fleet: the rounds spent on it, those of the search itself, and those of combining anew. */
type Attempt = {
  readonly fleet: Fleet;
  readonly memory: Memory | undefined;
  search: Search;
  spent: number;
  rounds: number;
  restarts: number;
  combining: number;
  /** Rounds of the search after which sheets are combined anew. */
  due: number;
};

const MANNERS: readonly Manner[] = [
  { memory: 50, removed: 12, power: 1.3, blink: 0.02, whole: 0.5 },
  { memory: 200, removed: 10, power: 2, blink: 0.02, whole: 0.2 },
  { memory: 50, removed: 12, power: 1.2, blink: 0.05, whole: 0.5 },
  { memory: 400, removed: 6, power: 1.5, blink: 0.01, whole: 0 },
];
const FIRST_STRETCH = 30_000;

/** Rounds before sheets are first combined anew, times the cube of the blanks on a sheet: it is the dearer the more they are. */
const ROUNDS_FIRST = 40;
const ROUNDS_BETWEEN = 2_000;
/** Where patterns cannot be priced to the end, the search is likelier to get there: it has so many times the rounds. */
const LESS_OFTEN = 4;

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
  let tidied: readonly Layout[] | undefined;

  function demanded(): readonly Demand[] {
    demands ??= demandsOf(blanks, panels);
    return demands;
  }

  function known(): SheetBounds {
    bounds ??= sheetBounds(blanks, panels, demanded());
    return bounds;
  }

  function finished(): boolean {
    return best.left.length === 0 && meets(best, prepared, known());
  }

  function advance(rounds: number): boolean {
    if (finished()) return true;
    for (let done = 0; done < rounds; ) {
      attempts ??= startAttempts();
      const attempt = leastTried(attempts);
      if (attempt === undefined) return true;
      const stretch = Math.min(rounds - done, 16);
      done += stretch;
      const better = pursue(attempt, stretch);
      const learnt = learnFrom(attempt);
      if ((better || learnt) && finished()) return true;
    }
    return false;
  }

  /** Works on one attempt; true when it led to a better plan. */
  function pursue(attempt: Attempt, rounds: number): boolean {
    let complete = false;
    for (let done = 0; done < rounds && !complete; done++) complete = oneRound(attempt);
    attempt.spent += rounds;
    if (complete || fewerLeft(attempt.search.left())) {
      best = { layouts: inUse(attempt.search.layouts()), left: attempt.search.left().slice() };
      version++;
      tidied = undefined;
      if (complete) attempts = undefined;
      return complete;
    }
    if (FIRST_STRETCH * 2 ** attempt.restarts <= attempt.rounds) {
      attempt.restarts++;
      const manner = MANNERS[attempt.restarts % MANNERS.length]!;
      attempt.search = searchOn(blanks, attempt.search.layouts(), random, manner, attempt.memory?.keep);
    }
    return false;
  }

  /** A round of the search, or, when it is due, a little of combining anew what the search has met. */
  function oneRound(attempt: Attempt): boolean {
    const { memory, search } = attempt;
    if (memory === undefined || attempt.rounds < attempt.due) {
      attempt.rounds++;
      return search.round();
    }
    attempt.combining++;
    const combined = memory.combine();
    if (combined === undefined) return false;
    attempt.due = attempt.rounds + Math.max(ROUNDS_BETWEEN, memory.least() === 0 ? LESS_OFTEN * attempt.combining : 0);
    attempt.combining = 0;
    return combined.layouts.length <= 2 * inUse(combined.layouts).length && search.goOnFrom(combined);
  }

  /** Gives an attempt up that cannot succeed; true when that says that fewer sheets are not possible at all. */
  function learnFrom({ fleet, memory }: Attempt): boolean {
    const least = memory?.least() ?? 0;
    // Where the stock does not suffice there is nothing to prove, but less to leave over.
    if (best.left.length !== 0 || least <= fleet.reduce((sum, count) => sum + count, 0)) return false;
    attempts = attempts?.filter((attempt) => attempt.memory !== memory);
    const [panel] = panels;
    if (panel === undefined || panels.length !== 1 || panel.offcut || least <= known().sheets) return false;
    const cost = least * panel.cost;
    const because = "all patterns of straight cuts";
    bounds = { sheets: least, cost, reasons: [...known().reasons, { sheets: least, cost, because }] };
    version++;
    return true;
  }

  /** Where the stock does not suffice for all, a plan with less area left over is the better one. */
  function fewerLeft(left: readonly number[]): boolean {
    const areaOf = (items: readonly number[]): number => items.reduce((sum, item) => sum + blanks.area[item]!, 0);
    return best.left.length !== 0 && areaOf(left) < areaOf(best.left);
  }

  function startAttempts(): Attempt[] {
    if (best.left.length !== 0) {
      const whole = panels.map((panel) => Math.min(panel.have, blanks.count));
      return [attemptOn(whole)];
    }
    const from = panels.map((_, bin) =>
      best.layouts.reduce((count, layout) => count + (layout.bin === bin ? 1 : 0), 0),
    );
    return betterFleets(from, panels, demanded(), totalArea).map(attemptOn);
  }

  function attemptOn(fleet: Fleet): Attempt {
    const start = startOn(fleet, best.layouts, prepared);
    const memory = memoryOf(blanks, start, random);
    const search = searchOn(blanks, start, random, MANNERS[0]!, memory?.keep);
    const due = ROUNDS_FIRST * (blanks.count / start.length) ** 3;
    return { fleet, memory, search, spent: 0, rounds: 0, restarts: 0, combining: 0, due };
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

/** The fullest sheets of a plan as far as the fleet has them, and empty sheets for the rest. */
function startOn(fleet: Fleet, layouts: readonly Layout[], { panels }: Prepared): Layout[] {
  const start: Layout[] = [];
  panels.forEach((panel, bin) => {
    const kept = layouts.filter((layout) => layout.bin === bin).sort((a, b) => a.free - b.free);
    for (let at = 0; at < fleet[bin]!; at++) start.push(kept[at] ?? layOut(bin, panel.w, panel.h, undefined, 0));
  });
  return start;
}

function inUse(layouts: readonly Layout[]): Layout[] {
  return layouts.filter((layout) => layout.root !== undefined);
}

function leastTried(attempts: readonly Attempt[]): Attempt | undefined {
  let least: Attempt | undefined;
  for (const attempt of attempts) if (least === undefined || attempt.spent < least.spent) least = attempt;
  return least;
}

/** True when no set of sheets can be cheaper: the cost meets its bound, and so does the number where prices are equal. */
function meets(built: Built, { panels }: Prepared, bounds: SheetBounds): boolean {
  const price = priceOf(built.layouts, panels);
  const costs = new Set(panels.filter((panel) => !panel.offcut && 0 < panel.have).map((panel) => panel.cost));
  if (costs.size < 2) return price.sheets <= bounds.sheets;
  return price.cost <= bounds.cost * (1 + 1e-9);
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
