import { bestFit, leastSlack, onCheapest } from "./bar-fill.ts";
import { finishWithin } from "./bar-finish.ts";
import { type Lengths, type Pattern, type Relaxed, relax } from "./bar-lp.ts";
import type { Random } from "./random.ts";

const FEW_PIECES = 110;
const FINISH_EFFORT = 60_000;

/** The cost of bars cut. */
export function costOf(problem: Lengths, bars: readonly Pattern[]): number {
  return bars.reduce((sum, bar) => sum + problem.stocks[bar.stock]!.cost, 0);
}

/** The cheapest of the quick ways to cut what is wanted from what is there, or undefined where the stock runs out. */
export function quickest(problem: Lengths, demand: readonly number[], have: readonly number[]): Pattern[] | undefined {
  let best: Pattern[] | undefined;
  const offer = (bars: readonly Pattern[] | undefined): void => {
    if (bars === undefined) return;
    const cheap = onCheapest(
      { ...problem, stocks: problem.stocks.map((one, at) => ({ ...one, have: have[at]! })) },
      bars,
    );
    if (best === undefined || costOf(problem, cheap) < costOf(problem, best)) best = cheap;
  };
  offer(leastSlack(problem, demand, have));
  problem.stocks.forEach((_, stock) => {
    offer(bestFit(problem, demand, stock, have[stock]!));
  });
  return best;
}

/**
 * Dives from the relaxation: takes the whole part of its amounts, then the largest fractions, relaxes what is left, and
 * tries the quick ways on it at each turn. Answers bars below `target` in cost, or the best found.
 */
export function* dive(
  problem: Lengths,
  from: Relaxed,
  pool: Pattern[],
  goal: number,
  random: Random,
  share: number,
): Generator<undefined, Pattern[] | undefined> {
  const rest = problem.demand.slice();
  const have = problem.stocks.map((stock) => stock.have);
  const taken: Pattern[] = [];
  let spent = 0;
  let best: Pattern[] | undefined;
  let relaxed: Relaxed | undefined = from;
  while (relaxed !== undefined) {
    const before = taken.length;
    take(relaxed);
    const finish = quickest(problem, rest, have);
    if (finish !== undefined) {
      const all = [...taken, ...finish];
      if (best === undefined || costOf(problem, all) < costOf(problem, best)) best = all;
      if (costOf(problem, best) <= goal + 1e-9) return best;
    }
    const finished = yield* finishTo(goal - spent);
    if (finished !== undefined) return [...taken, ...finished];
    if (rest.every((count) => count === 0) || taken.length === before) return best;
    const stocks = problem.stocks.map((stock, at) => ({ ...stock, have: have[at]! }));
    relaxed = yield* relax({ lengths: problem.lengths, demand: rest, stocks }, pool, "quick");
    if (relaxed === undefined || goal + 1e-4 < spent + relaxed.cost) return best;
  }
  return best;

  /** When few pieces are left and one stock is all there is: a search that needs the number of bars and keeps to it. */
  function* finishTo(money: number): Generator<undefined, Pattern[] | undefined> {
    const pieces = rest.reduce((sum, count) => sum + count, 0);
    if (problem.stocks.length !== 1 || FEW_PIECES < pieces) return undefined;
    const bars = Math.floor(money / problem.stocks[0]!.cost + 1e-6);
    return bars <= have[0]! ? yield* finishWithin(problem, rest, 0, bars, FINISH_EFFORT) : undefined;
  }

  function take({ patterns, amounts }: Relaxed): void {
    patterns.forEach((pattern, at) => {
      for (let whole = Math.floor(amounts[at]! + 1e-4); 0 < whole; whole--) takeOne(pattern);
    });
    const fractions = patterns.map((pattern, at) => ({
      pattern,
      part: ((amounts[at]! + 1e-4) % 1) + (share < 1 ? 0.2 * random.unit() : 0),
    }));
    fractions.sort((a, b) => b.part - a.part);
    let more = Math.max(1, Math.floor(fractions.length * 0.12 * share));
    for (const { pattern, part } of fractions) {
      if (more <= 0 || part < 0.05) break;
      if (takeOne(pattern)) more--;
    }
  }

  function takeOne(pattern: Pattern): boolean {
    if (have[pattern.stock]! < 1 || pattern.kinds.some((kind) => rest[kind]! < pattern.counts[kind]!)) return false;
    have[pattern.stock]!--;
    spent += problem.stocks[pattern.stock]!.cost;
    pattern.counts.forEach((count, kind) => {
      rest[kind]! -= count;
    });
    taken.push(pattern);
    return true;
  }
}
