import { type Lengths, type Pattern, patternOf } from "./bar-lp.ts";

/** Bars filled between two looks at other things. */
const BARS_AT_ONCE = 16;

type Bar = { readonly counts: Int32Array; readonly waste: number };

/**
 * Packs what is wanted on exactly so many bars of one stock, or answers undefined: a search that always cuts the length
 * with the fewest ways to fill a bar around it, so long as the waste stays within what the number of bars allows. Gives
 * up after `effort` ways tried, so that undefined does not say there is none. Yields now and then.
 */
export function* finishWithin(
  problem: Lengths,
  demand: readonly number[],
  stock: number,
  bars: number,
  effort: number,
): Generator<undefined, Pattern[] | undefined> {
  const { lengths } = problem;
  const capacity = problem.stocks[stock]!.length;
  const order = lengths.flatMap((_, kind) => (0 < demand[kind]! ? [kind] : []));
  order.sort((a, b) => lengths[b]! - lengths[a]! || a - b);
  const rest = Int32Array.from(demand);
  const done: Pattern[] = [];
  let work = effort;
  let tried = 0;
  const total = order.reduce((sum, kind) => sum + lengths[kind]! * rest[kind]!, 0);
  return (yield* search(bars * capacity - total)) ? done : undefined;

  function* search(waste: number): Generator<undefined, boolean> {
    if (++tried % BARS_AT_ONCE === 0) yield;
    if (waste < 0 || work <= 0) return false;
    const ways = fewestWays(waste);
    if (ways === undefined) return true;
    ways.sort((a, b) => a.waste - b.waste);
    for (const bar of ways) {
      move(bar.counts, -1);
      done.push(patternOf(stock, bar.counts));
      if (yield* search(waste - bar.waste)) return true;
      done.pop();
      move(bar.counts, 1);
    }
    return false;
  }

  function move(counts: Int32Array, by: 1 | -1): void {
    for (const kind of order) rest[kind]! += by * counts[kind]!;
  }

  /** The ways of the length that has fewest, or undefined when nothing is left to cut. */
  function fewestWays(waste: number): Bar[] | undefined {
    let fewest: Bar[] | undefined;
    let shortest = Number.POSITIVE_INFINITY;
    for (const kind of order) if (0 < rest[kind]!) shortest = lengths[kind]!;
    for (const kind of order) {
      if (rest[kind]! < 1) continue;
      const ways = waysAround(kind, waste, shortest, fewest === undefined ? Number.POSITIVE_INFINITY : fewest.length);
      if (ways !== undefined) fewest = ways;
      if (fewest !== undefined && fewest.length < 2) return fewest;
    }
    return fewest;
  }

  /** The first place in the order, from the given one on, whose length goes into so much room. */
  function firstFitting(from: number, room: number): number {
    let low = from;
    let high = order.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (lengths[order[middle]!]! <= room) high = middle;
      else low = middle + 1;
    }
    return low;
  }

  /** All bars with a piece of this kind in them and no more waste than given, or undefined once there are `most`. */
  function waysAround(first: number, waste: number, shortest: number, most: number): Bar[] | undefined {
    const ways: Bar[] = [];
    const counts = new Int32Array(lengths.length);
    counts[first] = 1;
    visit(0, capacity - lengths[first]!);
    return ways.length < most ? ways : undefined;

    function visit(from: number, room: number): void {
      work--;
      if (room <= waste) ways.push({ counts: counts.slice(), waste: room });
      for (let at = firstFitting(from, room); at < order.length && ways.length < most && 0 < work; at++) {
        const kind = order[at]!;
        const left = room - lengths[kind]!;
        if (rest[kind]! <= counts[kind]!) continue;
        // What can take no further piece has to come close enough already; the lengths after it only leave more.
        if (left < shortest && waste < left) {
          if (room < 2 * shortest) return;
          continue;
        }
        counts[kind]!++;
        visit(at, left);
        counts[kind]!--;
      }
    }
  }
}
