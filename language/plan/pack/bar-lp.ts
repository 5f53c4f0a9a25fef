import { coverProgram } from "./cover-lp.ts";
import { fullest } from "./knapsack.ts";

/** A way to cut one bar: which stock, and how many of each length. */
export type Pattern = { readonly stock: number; readonly counts: Int32Array; readonly kinds: readonly number[] };

/** A pattern with the list of the lengths it holds. */
export function patternOf(stock: number, counts: Int32Array): Pattern {
  const kinds: number[] = [];
  counts.forEach((count, kind) => {
    if (0 < count) kinds.push(kind);
  });
  return { stock, counts, kinds };
}

/** Lengths with their demand, and the bars sold, grown by one kerf each so that the kerf is gone from the problem. */
export type Lengths = {
  readonly lengths: readonly number[];
  readonly demand: readonly number[];
  readonly stocks: readonly { readonly length: number; readonly cost: number; readonly have: number }[];
};

/** The pattern relaxation solved: patterns in use with their amounts, and whole weights that give a safe bound. */
export type Relaxed = {
  readonly patterns: readonly Pattern[];
  readonly amounts: readonly number[];
  /** A whole weight for each length. */
  readonly weights: readonly number[];
  /** The most weight that one bar of each stock can hold, never too low. */
  readonly carries: readonly number[];
  readonly cost: number;
};

/** Where to begin: a weight for each length that is near the best, as a share of a bar's cost. */
export type Start = { readonly weights: readonly number[] };

/** The weights in a `Relaxed` are so many times the share of a bar's cost. */
export const SCALE = 1e7;
const ENOUGH = 1e-7;
const PIVOTS_PER_PRICING = 3;
const TRUST = 0.6;
const MOST_MISSES = 20;

/**
 * Gilmore and Gomory's pattern relaxation (1961) by column generation: patterns are priced by a bounded knapsack, so that
 * no pattern holds more of a length than is wanted. `pool` is offered first and grows by what is found. Yields at each pivot.
 */
export function* relax(
  { lengths, demand, stocks }: Lengths,
  pool: Pattern[],
  effort: "quick" | "thorough",
  start?: Start,
): Generator<undefined, Relaxed | undefined> {
  const rows = lengths.flatMap((_, kind) => (0 < demand[kind]! ? [kind] : []));
  const size = rows.length;
  const rowOf = new Int32Array(lengths.length).fill(-1);
  rows.forEach((kind, row) => {
    rowOf[kind] = row;
  });
  const alone = rows.map((kind) => single(kind, lengths, stocks));
  if (alone.some((pattern) => pattern === undefined)) return undefined;
  const columns: (Pattern | undefined)[] = alone.slice();
  const wanted = rows.map((kind) => demand[kind]!);
  const program = coverProgram(
    wanted,
    alone.map((pattern) => stocks[pattern!.stock]!.cost),
  );
  const dual = program.duals;
  const usable = pool.filter((pattern) => pattern.kinds.every((kind) => pattern.counts[kind]! <= demand[kind]!));
  const center = start?.weights.slice() ?? lengths.map((length) => length * leastPerLength(stocks));
  let weights: number[] = [];
  let carries: number[] = [];
  let bound = 0;
  let trust = effort === "quick" ? 0 : TRUST;
  let misses = 0;
  let sincePricing = start === undefined ? PIVOTS_PER_PRICING : Number.NEGATIVE_INFINITY;
  for (let turn = 0; turn < 40 * size + 400 && !settled(); turn++) {
    const entering = (effort === "quick" ? fromPool() : undefined) ?? priced() ?? surplus();
    if (entering === undefined || !pivot(entering)) break;
    yield;
  }
  if (carries.length === 0) price(0);
  return result();

  /** With equal prices only whole bars count: the bound need not come closer than that to the amounts found. */
  function settled(): boolean {
    const unit = stocks[0]!.cost;
    if (bound === 0 || stocks.some((stock) => stock.cost !== unit)) return false;
    const cost = demand.reduce((sum, count, kind) => sum + count * (rowOf[kind]! < 0 ? 0 : dual[rowOf[kind]!]!), 0);
    return Math.ceil(cost / unit - 1e-5) <= Math.ceil(bound / unit - 1e-5);
  }

  /** The pattern already known with the most negative reduced cost: quick pricing may have lost sight of it. */
  function fromPool(): Pattern | undefined {
    let best = ENOUGH;
    let found: Pattern | undefined;
    for (const pattern of usable) {
      const worth = worthOf(pattern);
      if (best < worth) {
        best = worth;
        found = pattern;
      }
    }
    return found;
  }

  function worthOf({ stock, kinds, counts }: Pattern): number {
    let worth = -stocks[stock]!.cost;
    for (const kind of kinds) worth += dual[rowOf[kind]!]! * counts[kind]!;
    return worth;
  }

  /** The row with the most negative dual; tried last, for patterns seldom leave any. */
  function surplus(): number | undefined {
    let worst = -ENOUGH;
    let found: number | undefined;
    for (let row = 0; row < size; row++) {
      if (worst <= dual[row]!) continue;
      worst = dual[row]!;
      found = row;
    }
    return found;
  }

  /**
   * New patterns for duals between the present ones and those of the best bound (smoothing after Wentges 1997): far
   * fewer pivots are needed than with the present duals alone. Answers the best pattern known for the present duals.
   */
  function priced(): Pattern | undefined {
    if (++sincePricing < PIVOTS_PER_PRICING) {
      const known = fromPool();
      if (known !== undefined) return known;
    }
    sincePricing = 0;
    for (;;) {
      price(trust);
      const found = fromPool();
      if (found !== undefined || trust === 0) return found;
      trust = ++misses < MOST_MISSES ? trust / 2 : 0;
      if (trust < 0.05) trust = 0;
    }
  }

  /** Adds the patterns found for the duals, drawn towards the center by `share`, and keeps the best bound they give. */
  function price(share: number): void {
    const tried = lengths.map(() => 0);
    rows.forEach((kind, row) => {
      const mixed = share * center[kind]! + (1 - share) * Math.max(0, dual[row]!);
      tried[kind] = Math.max(0, Math.floor(mixed * SCALE));
    });
    const carried = loads(tried);
    const fits = stocks.reduce((least, { cost, have }, stock) => {
      return have < 1 || carried[stock]! <= 0 ? least : Math.min(least, (cost * SCALE) / carried[stock]!);
    }, Number.POSITIVE_INFINITY);
    const reached = (demand.reduce((sum, count, kind) => sum + count * tried[kind]!, 0) / SCALE) * fits;
    if (!(bound < reached) && carries.length !== 0) return;
    bound = reached;
    weights = tried;
    carries = carried;
    for (const kind of rows) center[kind] = (tried[kind]! / SCALE) * fits;
  }

  function loads(tried: readonly number[]): number[] {
    return stocks.map(({ length, have }, stock) => {
      if (have < 1) return 0;
      const load = fullest(lengths, tried, demand, length, effort);
      know(stock, load.counts);
      return load.value;
    });
  }

  function know(stock: number, counts: Int32Array): void {
    const pattern = patternOf(stock, counts);
    if (worthOf(pattern) <= ENOUGH) return;
    pool.push(pattern);
    usable.push(pattern);
  }

  function pivot(entering: Pattern | number): boolean {
    const left = typeof entering === "number" ? program.release(entering) : enter(entering);
    if (left === undefined) return false;
    columns[left] = typeof entering === "number" ? undefined : entering;
    return true;
  }

  function enter({ kinds, counts, stock }: Pattern): number | undefined {
    const held = kinds.map((kind) => rowOf[kind]!);
    return program.enter(
      held,
      kinds.map((kind) => counts[kind]!),
      stocks[stock]!.cost,
    );
  }

  function result(): Relaxed {
    const patterns: Pattern[] = [];
    const amounts: number[] = [];
    let cost = 0;
    const amount = program.amounts();
    columns.forEach((column, row) => {
      if (column === undefined || amount[row]! <= 1e-5) return;
      patterns.push(column);
      amounts.push(amount[row]!);
      cost += amount[row]! * stocks[column.stock]!.cost;
    });
    return { patterns, amounts, weights, carries, cost };
  }
}

function leastPerLength(stocks: Lengths["stocks"]): number {
  return stocks.reduce((least, { length, cost, have }) => (have < 1 ? least : Math.min(least, cost / length)), 1 / 0);
}

/** One piece alone on the stock that is cheapest for it. */
function single(kind: number, lengths: Lengths["lengths"], stocks: Lengths["stocks"]): Pattern | undefined {
  let best = -1;
  stocks.forEach(({ length, cost, have }, stock) => {
    if (have < 1 || length < lengths[kind]!) return;
    if (best < 0 || cost < stocks[best]!.cost) best = stock;
  });
  if (best < 0) return undefined;
  const counts = new Int32Array(lengths.length);
  counts[kind] = 1;
  return patternOf(best, counts);
}
