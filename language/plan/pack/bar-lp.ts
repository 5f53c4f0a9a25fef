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

const SCALE = 1e7;
const ENOUGH = 1e-7;
const SPECK = 1e-3;

/**
 * Gilmore and Gomory's pattern relaxation (1961) by column generation: patterns are priced by a bounded knapsack, so that
 * no pattern holds more of a length than is wanted. `pool` is offered first and grows by what is found.
 */
export function relax(
  { lengths, demand, stocks }: Lengths,
  pool: Pattern[],
  effort: "quick" | "thorough",
): Relaxed | undefined {
  const rows = lengths.flatMap((_, kind) => (0 < demand[kind]! ? [kind] : []));
  const size = rows.length;
  const rowOf = new Int32Array(lengths.length).fill(-1);
  rows.forEach((kind, row) => {
    rowOf[kind] = row;
  });
  const basis = rows.map((kind) => single(kind, lengths, demand, stocks));
  if (basis.some((pattern) => pattern === undefined)) return undefined;
  const columns: (Pattern | number)[] = basis as Pattern[];
  const inverse = new Float64Array(size * size);
  const amount = new Float64Array(size);
  const dual = new Float64Array(size);
  rows.forEach((kind, row) => {
    const count = (columns[row] as Pattern).counts[kind]!;
    inverse[row * size + row] = 1 / count;
    // A different speck more of each length: without it many amounts are equal and the pivots go round in circles.
    amount[row] = (demand[kind]! + SPECK * (1 + ((row * 7919) % 997) / 997)) / count;
    dual[row] = stocks[(columns[row] as Pattern).stock]!.cost / count;
  });
  const usable = pool.filter((pattern) => pattern.kinds.every((kind) => pattern.counts[kind]! <= demand[kind]!));
  const limits = demand;
  const direction = new Float64Array(size);
  let weights: number[] = [];
  let carries: number[] = [];
  for (let turn = 0; turn < 40 * size + 400; turn++) {
    const entering = effort === "quick" ? (fromPool() ?? price("quick") ?? surplus()) : thoroughly();
    if (entering === undefined) break;
    if (!pivot(entering)) break;
  }
  if (effort === "thorough" || carries.length === 0) price(effort);
  return result();

  /** Pricing at every pivot needs far fewer of them than settling the known patterns first, but each costs more. */
  function thoroughly(): Pattern | number | undefined {
    return price("quick") ?? fromPool() ?? surplus() ?? price("thorough");
  }

  /** The pattern already known with the most negative reduced cost: quick pricing may have lost sight of it. */
  function fromPool(): Pattern | undefined {
    let best = ENOUGH;
    let found: Pattern | undefined;
    for (const pattern of usable) {
      let worth = -stocks[pattern.stock]!.cost;
      for (const kind of pattern.kinds) worth += dual[rowOf[kind]!]! * pattern.counts[kind]!;
      if (best < worth) {
        best = worth;
        found = pattern;
      }
    }
    return found;
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

  /** A new pattern with negative reduced cost, and what every stock can carry of the present duals. */
  function price(how: "quick" | "thorough"): Pattern | undefined {
    weights = lengths.map(() => 0);
    rows.forEach((kind, row) => {
      weights[kind] = Math.max(0, Math.floor(dual[row]! * SCALE));
    });
    const found = loads(how);
    if (found !== undefined) {
      pool.push(found);
      usable.push(found);
    }
    return found;
  }

  function loads(how: "quick" | "thorough"): Pattern | undefined {
    let best = ENOUGH;
    let found: Pattern | undefined;
    carries = stocks.map(({ length, cost, have }, stock) => {
      if (have < 1) return 0;
      const load = fullest(lengths, weights, limits, length, how);
      const worth = load.counts.reduce((sum, count, kind) => sum + count * weights[kind]!, 0) / SCALE - cost;
      if (best < worth) {
        best = worth;
        found = patternOf(stock, load.counts);
      }
      return load.value;
    });
    return found;
  }

  function pivot(entering: Pattern | number): boolean {
    for (let row = 0; row < size; row++) {
      let sum = 0;
      const base = row * size;
      if (typeof entering === "number") sum = -inverse[base + entering]!;
      else {
        for (const kind of entering.kinds) sum += inverse[base + rowOf[kind]!]! * entering.counts[kind]!;
      }
      direction[row] = sum;
    }
    let leaving = -1;
    let least = Number.POSITIVE_INFINITY;
    for (let row = 0; row < size; row++) {
      if (direction[row]! <= 1e-9) continue;
      const ratio = amount[row]! / direction[row]!;
      if (ratio < least - 1e-12 || (ratio <= least && direction[leaving]! < direction[row]!)) {
        least = ratio;
        leaving = row;
      }
    }
    if (leaving < 0) return false;
    exchange(entering, leaving, Math.max(0, least));
    return true;
  }

  function exchange(entering: Pattern | number, leaving: number, step: number): void {
    const base = leaving * size;
    const by = direction[leaving]!;
    let reduced = typeof entering === "number" ? 0 : stocks[entering.stock]!.cost;
    for (let col = 0; col < size; col++) {
      if (typeof entering === "number") {
        if (col === entering) reduced += dual[col]!;
      } else reduced -= dual[col]! * entering.counts[rows[col]!]!;
    }
    for (let col = 0; col < size; col++) inverse[base + col]! /= by;
    for (let row = 0; row < size; row++) {
      amount[row]! -= step * direction[row]!;
      if (amount[row]! < 0) amount[row] = 0;
      const factor = direction[row]!;
      if (row === leaving || factor === 0) continue;
      for (let col = 0; col < size; col++) inverse[row * size + col]! -= factor * inverse[base + col]!;
    }
    for (let col = 0; col < size; col++) dual[col]! += reduced * inverse[base + col]!;
    amount[leaving] = step;
    columns[leaving] = entering;
  }

  function result(): Relaxed {
    const patterns: Pattern[] = [];
    const amounts: number[] = [];
    let cost = 0;
    for (let row = 0; row < size; row++) {
      amount[row] = 0;
      for (let col = 0; col < size; col++) amount[row]! += inverse[row * size + col]! * demand[rows[col]!]!;
    }
    columns.forEach((column, row) => {
      if (typeof column === "number" || amount[row]! <= 1e-5) return;
      patterns.push(column);
      amounts.push(amount[row]!);
      cost += amount[row]! * stocks[column.stock]!.cost;
    });
    return { patterns, amounts, weights, carries, cost };
  }
}

/** The pattern of one length alone on the stock that is cheapest for it. */
function single(
  kind: number,
  lengths: Lengths["lengths"],
  demand: Lengths["demand"],
  stocks: Lengths["stocks"],
): Pattern | undefined {
  let best: Pattern | undefined;
  let least = Number.POSITIVE_INFINITY;
  stocks.forEach(({ length, cost, have }, stock) => {
    const count = Math.min(demand[kind]!, Math.floor(length / lengths[kind]!));
    if (have < 1 || count < 1 || least <= cost / count) return;
    least = cost / count;
    const counts = new Int32Array(lengths.length);
    counts[kind] = count;
    best = patternOf(stock, counts);
  });
  return best;
}
