/** Numbers that look random and are the same again for the same seed. */
export interface Random {
  /** A whole number from nought to one below the bound. */
  below(bound: number): number;
  /** Whether something happens that happens once in so many times. */
  oneIn(times: number): boolean;
  pick<T>(from: readonly T[]): T;
}

/** Mulberry32: small, quick, and good enough to choose where a text is broken. */
export function seeded(seed: number): Random {
  let state = seed >>> 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (bound: number): number => Math.floor(next() * bound);
  return {
    below,
    oneIn: (times) => below(times) === 0,
    pick: (from) => {
      if (from.length === 0) throw new Error("nothing to pick from");
      return from[below(from.length)]!;
    },
  };
}

/**
 * The seed of this run: the same each time, so that a run can be trusted to say the same of the same program;
 * `SCANTLING_SEED=random`, or a number, for another. Whoever uses it prints it.
 */
export function seedOfRun(): number {
  const said = process.env["SCANTLING_SEED"];
  if (said === "random") return Math.floor(Math.random() * 2 ** 31);
  return said === undefined ? 2026 : Number(said);
}

/** How many cases to run: `SCANTLING_CASES`, else what the test says. */
export function casesOfRun(usual: number): number {
  return Number(process.env["SCANTLING_CASES"] ?? usual);
}
