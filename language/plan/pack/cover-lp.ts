/** A covering program under way: least cost of columns that cover every row as often as wanted, by revised simplex. */
export type CoverProgram = {
  /** What one more of each row would cost now; a column that costs less than its rows are worth gains by coming in. */
  readonly duals: Float64Array;
  /** Brings a column in; answers the row whose column it replaces, or undefined when no pivot is possible. */
  readonly enter: (rows: readonly number[], times: readonly number[], cost: number) => number | undefined;
  /** Lets a row be covered more often than wanted, answers as `enter` does; worth it where its dual is below nought. */
  readonly release: (row: number) => number | undefined;
  /** How much of the column that stands for each row is used. */
  readonly amounts: () => Float64Array;
};

const SPECK = 1e-3;

/**
 * Starts with a column for each row that covers it once, at the cost given (the revised simplex of Dantzig and Orchard-Hays
 * 1954 with the inverse kept whole, for the few hundred rows a shop's job has).
 */
export function coverProgram(demand: readonly number[], costs: readonly number[]): CoverProgram {
  const size = demand.length;
  const inverse = new Float64Array(size * size);
  const duals = Float64Array.from(costs);
  const direction = new Float64Array(size);
  // A different speck more of each row: without it many amounts are equal and the pivots go round in circles.
  const amount = Float64Array.from(demand, (count, row) => count + SPECK * (1 + ((row * 7919) % 997) / 997));
  for (let row = 0; row < size; row++) inverse[row * size + row] = 1;

  function enter(rows: readonly number[], times: readonly number[], cost: number): number | undefined {
    let reduced = cost;
    for (let at = 0; at < rows.length; at++) reduced -= duals[rows[at]!]! * times[at]!;
    for (let row = 0; row < size; row++) {
      const base = row * size;
      let sum = 0;
      for (let at = 0; at < rows.length; at++) sum += inverse[base + rows[at]!]! * times[at]!;
      direction[row] = sum;
    }
    return pivot(reduced);
  }

  function release(released: number): number | undefined {
    for (let row = 0; row < size; row++) direction[row] = -inverse[row * size + released]!;
    return pivot(duals[released]!);
  }

  function pivot(reduced: number): number | undefined {
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
    if (leaving < 0) return undefined;
    exchange(leaving, Math.max(0, least), reduced);
    return leaving;
  }

  function exchange(leaving: number, step: number, reduced: number): void {
    const base = leaving * size;
    const by = direction[leaving]!;
    for (let col = 0; col < size; col++) inverse[base + col]! /= by;
    for (let row = 0; row < size; row++) {
      const factor = direction[row]!;
      amount[row]! -= step * factor;
      if (amount[row]! < 0) amount[row] = 0;
      if (row === leaving || factor === 0) continue;
      const into = row * size;
      for (let col = 0; col < size; col++) inverse[into + col]! -= factor * inverse[base + col]!;
    }
    for (let col = 0; col < size; col++) duals[col]! += reduced * inverse[base + col]!;
    amount[leaving] = step;
  }

  function amounts(): Float64Array {
    return Float64Array.from(demand, (_, row) => {
      let sum = 0;
      for (let col = 0; col < size; col++) sum += inverse[row * size + col]! * demand[col]!;
      return sum;
    });
  }

  return { duals, enter, release, amounts };
}
