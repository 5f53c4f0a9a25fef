/** A kind of sheet or bar that can carry so much of a weight at a cost, as often as there are of it. */
export type Carrier = { readonly carries: number; readonly cost: number; readonly have: number };

/** Guards the rounding up of quotients of doubles: a bound must never be one too high. */
const SLACK = 1e-9;
const MOST_NODES = 5000;

/** The fewest carriers for a weight: the strongest first. What the stock cannot carry is not counted. */
export function fewestToCarry(weight: number, carriers: readonly Carrier[]): number {
  const strongest = carriers.slice().sort((a, b) => b.carries - a.carries);
  let left = weight;
  let count = 0;
  for (const { have, carries } of strongest) {
    if (left <= SLACK * weight || carries <= 0) break;
    const needed = Math.min(have, Math.ceil((left / carries) * (1 - SLACK) - SLACK));
    count += needed;
    left -= needed * carries;
  }
  return count;
}

/** The least cost of carriers for a weight, by a small exact search, rounded down to the fraction when that is too long. */
export function cheapestToCarry(weight: number, carriers: readonly Carrier[], known: number): number {
  const useful = carriers.filter((one) => 0 < one.carries && 0 < one.have);
  useful.sort((a, b) => a.cost / a.carries - b.cost / b.carries);
  const first = useful[0];
  const enough = SLACK * weight;
  if (first === undefined || weight <= enough) return 0;
  const dearest = useful.reduce((most, one) => Math.max(most, one.cost), 0);
  const fraction = (weight / first.carries) * first.cost * (1 - SLACK);
  if (useful.length !== 1 && fraction + dearest < known) return 0;
  let best = Number.POSITIVE_INFINITY;
  let visited = 0;
  const visit = (at: number, rest: number, spent: number): void => {
    const kind = useful[at];
    if (rest <= enough) best = Math.min(best, spent);
    else if (
      kind !== undefined &&
      spent + (rest / kind.carries) * kind.cost * (1 - SLACK) < best &&
      visited++ < MOST_NODES
    ) {
      const most = Math.min(kind.have, Math.ceil((rest / kind.carries) * (1 - SLACK) - SLACK));
      for (let count = most; 0 <= count; count--) visit(at + 1, rest - count * kind.carries, spent + count * kind.cost);
    }
  };
  visit(0, weight, 0);
  return best === Number.POSITIVE_INFINITY || MOST_NODES <= visited ? fraction : best;
}
