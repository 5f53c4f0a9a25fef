import { type Lengths, type Pattern, patternOf } from "./bar-lp.ts";

/** Bars cut so far, one pattern each; undefined where the stock does not suffice. */
export type Filled = readonly Pattern[] | undefined;

/** Best fit decreasing: each length into the fullest open bar that takes it, else a new bar of the given stock. */
export function bestFit(problem: Lengths, demand: readonly number[], stock: number, have: number): Filled {
  const { lengths, stocks } = problem;
  const bars: { counts: Int32Array; room: number }[] = [];
  const order = lengths.map((_, kind) => kind).sort((a, b) => lengths[b]! - lengths[a]! || a - b);
  for (const kind of order) {
    const length = lengths[kind]!;
    for (let count = 0; count < demand[kind]!; count++) {
      let best: (typeof bars)[number] | undefined;
      for (const bar of bars) if (length <= bar.room && (best === undefined || bar.room < best.room)) best = bar;
      if (best === undefined) {
        best = { counts: new Int32Array(lengths.length), room: stocks[stock]!.length };
        if (best.room < length || have <= bars.length) return undefined;
        bars.push(best);
      }
      best.counts[kind]!++;
      best.room -= length;
    }
  }
  return bars.map(({ counts }) => patternOf(stock, counts));
}

/**
 * Minimum slack: the longest piece left, then whatever fills the rest of its bar best, found by a bounded search (Gupta
 * and Ho 1999); `choose` picks the stock for each bar by the slack left per price.
 */
export function leastSlack(problem: Lengths, demand: readonly number[], have: readonly number[]): Filled {
  const { lengths, stocks } = problem;
  const order = lengths.map((_, kind) => kind).sort((a, b) => lengths[b]! - lengths[a]! || a - b);
  const rest = demand.slice();
  const left = have.slice();
  const bars: Pattern[] = [];
  for (;;) {
    const longest = order.find((kind) => 0 < rest[kind]!);
    if (longest === undefined) return bars;
    let best: Pattern | undefined;
    let least = Number.POSITIVE_INFINITY;
    stocks.forEach(({ length, cost }, stock) => {
      if (left[stock]! < 1 || length < lengths[longest]!) return;
      const filled = fill(lengths, order, rest, longest, length);
      const score = stocks.length === 1 ? 0 : cost / (length - filled.slack);
      if (score < least) {
        least = score;
        best = patternOf(stock, filled.counts);
      }
    });
    if (best === undefined) return undefined;
    left[best.stock]!--;
    best.counts.forEach((count, kind) => {
      rest[kind]! -= count;
    });
    bars.push(best);
  }
}

function fill(
  lengths: readonly number[],
  order: readonly number[],
  rest: readonly number[],
  first: number,
  capacity: number,
): { counts: Int32Array; slack: number } {
  const counts = new Int32Array(lengths.length);
  counts[first] = 1;
  let slack = capacity - lengths[first]!;
  let best = counts.slice();
  let nodes = 0;
  const visit = (from: number, room: number): void => {
    if (room < slack) {
      slack = room;
      best = counts.slice();
    }
    for (let at = from; at < order.length && slack !== 0 && nodes < 3000; at++) {
      const kind = order[at]!;
      if (room < lengths[kind]! || rest[kind]! <= counts[kind]!) continue;
      nodes++;
      counts[kind]!++;
      visit(at, room - lengths[kind]!);
      counts[kind]!--;
    }
  };
  visit(order.indexOf(first), slack);
  return { counts: best, slack };
}

/** The same bars, each exchanged for the cheapest stock still there that holds its pieces. */
export function onCheapest(problem: Lengths, bars: readonly Pattern[]): Pattern[] {
  const { lengths, stocks } = problem;
  const left = stocks.map(({ have }) => have);
  for (const bar of bars) left[bar.stock]!--;
  return bars.map((bar) => {
    const length = bar.counts.reduce((sum, count, kind) => sum + count * lengths[kind]!, 0);
    let best = bar.stock;
    stocks.forEach((stock, at) => {
      if (length <= stock.length && 0 < left[at]! && stock.cost < stocks[best]!.cost) best = at;
    });
    left[bar.stock]!++;
    left[best]!--;
    return patternOf(best, bar.counts);
  });
}
