/** The worth of giving a row to a column, or `undefined` where that cannot be. Whole numbers, so that sums are exact. */
export type Worth = (row: number, column: number) => bigint | undefined;

/**
 * The assignment of rows to columns, each used once at most, whose worths add up to the most; a row that gains nothing
 * stays free. Exact: shortest augmenting paths with potentials (the Hungarian method), in rows² × columns steps.
 */
export function bestMatching(rows: number, columns: number, worth: Worth): readonly (number | undefined)[] {
  // Each row has a column of its own besides, worth nothing, so that it may stay free.
  const wide = columns + rows;
  const cost = (row: number, column: number): bigint | undefined => {
    if (columns <= column) return column - columns === row ? 0n : undefined;
    const value = worth(row, column);
    return value === undefined || value <= 0n ? undefined : -value;
  };
  const rowPotential = Array.from({ length: rows + 1 }, () => 0n);
  const columnPotential = Array.from({ length: wide + 1 }, () => 0n);
  /** Which row holds each column, counted from one; column nought stands for the row that is being placed. */
  const holder = Array.from({ length: wide + 1 }, () => 0);
  for (let row = 1; row <= rows; row++) place(row, { wide, cost, rowPotential, columnPotential, holder });
  const given: (number | undefined)[] = Array.from({ length: rows });
  for (let column = 1; column <= columns; column++) if (holder[column] !== 0) given[holder[column]! - 1] = column - 1;
  return given;
}

interface Tableau {
  readonly wide: number;
  readonly cost: (row: number, column: number) => bigint | undefined;
  readonly rowPotential: bigint[];
  readonly columnPotential: bigint[];
  readonly holder: number[];
}

/** Finds the cheapest chain of moves that gives one more row a column. There always is one: its own. */
function place(row: number, { wide, cost, rowPotential, columnPotential, holder }: Tableau): void {
  const least: (bigint | undefined)[] = Array.from({ length: wide + 1 });
  const from: number[] = Array.from({ length: wide + 1 }, () => 0);
  const seen: boolean[] = Array.from({ length: wide + 1 }, () => false);
  holder[0] = row;
  let column = 0;
  while (holder[column] !== 0) {
    seen[column] = true;
    const holding = holder[column]!;
    let step: bigint | undefined;
    let next = 0;
    for (let other = 1; other <= wide; other++) {
      if (seen[other]) continue;
      const price = cost(holding - 1, other - 1);
      if (price !== undefined) {
        const reduced = price - rowPotential[holding]! - columnPotential[other]!;
        const before = least[other];
        if (before === undefined || reduced < before) [least[other], from[other]] = [reduced, column];
      }
      const known = least[other];
      if (known !== undefined && (step === undefined || known < step)) [step, next] = [known, other];
    }
    if (step === undefined) break;
    for (let other = 0; other <= wide; other++) {
      const known = least[other];
      if (seen[other]) {
        rowPotential[holder[other]!]! += step;
        columnPotential[other]! -= step;
      } else if (known !== undefined) least[other] = known - step;
    }
    column = next;
  }
  while (column !== 0) {
    const before = from[column]!;
    holder[column] = holder[before]!;
    column = before;
  }
}
