import { relaxFromCoarse } from "./bar-coarse.ts";
import { costOf, dive, quickest } from "./bar-dive.ts";
import { finishWithin } from "./bar-finish.ts";
import { type Lengths, type Pattern, patternOf } from "./bar-lp.ts";
import { prepareBars } from "./bar-prepare.ts";
import type { BarPlan, BarProblem, UsedBar } from "./bar-problem.ts";
import { cheapestToCarry, fewestToCarry } from "./cover.ts";
import { familyFor } from "./dual-feasible.ts";
import { addUnplaced } from "./prepare.ts";
import type { Unplaced } from "./problem.ts";
import { seededRandom } from "./random.ts";

type Bounds = { sheets: number; cost: number };
const LEAST_DIVES = 30;
const MOST_DIVES = 600;
const DIVE_WORK = 600_000;
/** Up to so many pieces are tried by search alone first. */
const FEW_PIECES = 130;
const FINISH_EFFORT = 300_000;

/**
 * The cheapest bars for the lengths wanted, kerf and trim allowed for: quick ways and quick bounds first, then the pattern
 * relaxation for a bound and for dives towards it. Bad figures become faults; what the stock cannot hold is unplaced.
 */
export function packBars(problem: BarProblem): BarPlan {
  const search = searchBars(problem);
  for (;;) {
    const step = search.next();
    if (step.done === true) return step.value;
  }
}

/** The same, yielding after each piece of work. */
export function* searchBars(problem: BarProblem): Generator<undefined, BarPlan> {
  const prepared = prepareBars(problem);
  const { task, members, faults } = prepared;
  const unplaced = prepared.unplaced.slice();
  const wanted = task.demand.reduce((sum, count) => sum + count, 0);
  const have = task.stocks.map((stock) => stock.have);
  let bars = wanted === 0 ? [] : quickest(task, task.demand, have);
  const bounds = quickBounds(task);
  const complete = bars !== undefined;
  if (bars === undefined) bars = asManyAsThereAre(task, unplaced, members);
  else if (!meets(task, bars, bounds)) bars = yield* improved(task, bars, bounds);
  const cost = costOf(task, bars);
  return {
    bars: written(bars, task, prepared.stockOf, members, prepared.trim, prepared.kerf),
    unplaced,
    faults,
    barsUsed: bars.length,
    cost,
    lowerBound: complete ? bounds.sheets : 0,
    costBound: complete ? bounds.cost : 0,
    proven: complete && meets(task, bars, bounds),
  };
}

function* improved(task: Lengths, start: Pattern[], bounds: Bounds): Generator<undefined, Pattern[]> {
  const pieces = task.demand.reduce((sum, count) => sum + count, 0);
  if (task.stocks.length === 1 && pieces <= FEW_PIECES && bounds.sheets <= task.stocks[0]!.have) {
    const found = yield* finishWithin(task, task.demand, 0, bounds.sheets, FINISH_EFFORT);
    if (found !== undefined) return found;
  }
  const pool: Pattern[] = [];
  const relaxed = yield* relaxFromCoarse(task, pool);
  if (relaxed === undefined) return start;
  const weight = task.demand.reduce((sum, count, kind) => sum + count * relaxed.weights[kind]!, 0);
  raise(bounds, task, weight, relaxed.carries);
  const random = seededRandom(1);
  const dives = Math.min(MOST_DIVES, LEAST_DIVES + Math.floor(DIVE_WORK / task.lengths.length ** 2));
  const promising = nearest(pool, relaxed.weights, task);
  let best = start;
  for (let round = 0; round < dives && !meets(task, best, bounds); round++) {
    const goal = equalCosts(task) ? bounds.sheets * task.stocks[0]!.cost : bounds.cost;
    const found = yield* dive(task, relaxed, promising.slice(), Math.max(goal, bounds.cost), random, 1 / (1 + round));
    if (found !== undefined && costOf(task, found) < costOf(task, best) - 1e-9) best = found;
  }
  return best;
}

/** The patterns closest to entering the relaxation: the dives look through them at every pivot, so they must be few. */
function nearest(pool: readonly Pattern[], weights: readonly number[], task: Lengths): Pattern[] {
  const worth = ({ counts, kinds, stock }: Pattern): number => {
    const weight = kinds.reduce((sum, kind) => sum + counts[kind]! * weights[kind]!, 0);
    return weight - 1e7 * task.stocks[stock]!.cost;
  };
  const ranked = pool.map((pattern) => ({ pattern, worth: worth(pattern) }));
  ranked.sort((a, b) => b.worth - a.worth);
  return ranked.slice(0, 4 * task.lengths.length).map(({ pattern }) => pattern);
}

function raise(bounds: Bounds, { stocks }: Lengths, weight: number, carries: readonly number[]): void {
  const carriers = stocks.map(({ cost, have }, at) => ({ cost, have, carries: carries[at]! }));
  bounds.sheets = Math.max(bounds.sheets, fewestToCarry(weight, carriers));
  bounds.cost = Math.max(bounds.cost, cheapestToCarry(weight, carriers, bounds.cost));
}

/** Total length and dual feasible functions over the longest bar. */
function quickBounds(task: Lengths): Bounds {
  const bounds: Bounds = { sheets: 0, cost: 0 };
  const longest = task.stocks.reduce((most, stock) => Math.max(most, 0 < stock.have ? stock.length : 0), 0);
  if (task.lengths.length === 0 || longest === 0) return bounds;
  for (const { of } of familyFor(longest, task.lengths, 400)) {
    const weight = task.lengths.reduce((sum, length, kind) => sum + task.demand[kind]! * of(length), 0);
    raise(
      bounds,
      task,
      weight,
      task.stocks.map((stock) => (stock.have < 1 ? 0 : of(stock.length))),
    );
  }
  return bounds;
}

function equalCosts({ stocks }: Lengths): boolean {
  return new Set(stocks.filter((stock) => 0 < stock.have).map((stock) => stock.cost)).size < 2;
}

function meets(task: Lengths, bars: readonly Pattern[], bounds: Bounds): boolean {
  if (equalCosts(task)) return bars.length <= bounds.sheets;
  return costOf(task, bars) <= bounds.cost * (1 + 1e-9);
}

/** Where the stock runs out: the longest pieces that still go in, bar after bar; the rest has no place. */
function asManyAsThereAre(task: Lengths, unplaced: Unplaced[], members: readonly (readonly string[])[]): Pattern[] {
  const bars: { stock: number; counts: Int32Array; room: number }[] = [];
  task.stocks.forEach(({ length, have }, stock) => {
    const most = Math.min(
      have,
      task.demand.reduce((sum, wanted) => sum + wanted, 0),
    );
    for (let count = 0; count < most; count++)
      bars.push({ stock, counts: new Int32Array(task.lengths.length), room: length });
  });
  const order = task.lengths.map((_, kind) => kind).sort((a, b) => task.lengths[b]! - task.lengths[a]! || a - b);
  for (const kind of order) {
    for (let count = 0; count < task.demand[kind]!; count++) {
      const room = bars.filter((bar) => task.lengths[kind]! <= bar.room).sort((a, b) => a.room - b.room)[0];
      if (room === undefined) addUnplaced(unplaced, members[kind]![count]!, "no stock left");
      else {
        room.counts[kind]!++;
        room.room -= task.lengths[kind]!;
      }
    }
  }
  return bars.map((bar) => patternOf(bar.stock, bar.counts)).filter((bar) => bar.kinds.length !== 0);
}

function written(
  bars: readonly Pattern[],
  task: Lengths,
  stockOf: readonly { readonly id: string; readonly length: number }[],
  members: readonly (readonly string[])[],
  trim: number,
  kerf: number,
): UsedBar[] {
  const next = members.map(() => 0);
  return bars.map((bar) => {
    const pieces: { part: string; at: number; length: number }[] = [];
    let at = trim;
    const order = task.lengths.map((_, kind) => kind).sort((a, b) => task.lengths[b]! - task.lengths[a]! || a - b);
    for (const kind of order) {
      for (let count = 0; count < bar.counts[kind]!; count++) {
        const length = task.lengths[kind]! - kerf;
        pieces.push({ part: members[kind]![next[kind]!++]!, at, length });
        at += length + kerf;
      }
    }
    return { stock: stockOf[bar.stock]!.id, length: stockOf[bar.stock]!.length, pieces };
  });
}
