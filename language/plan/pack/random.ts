/** A source of random numbers that is the same for the same seed on every machine. */
export type Random = {
  /** A whole number from 0 to `below` - 1. */
  readonly below: (below: number) => number;
  /** A number from 0 up to, not including, 1. */
  readonly unit: () => number;
};

/** Makes a random source from a whole-number seed (Marsaglia's xorshift, 32 bits); any number is a valid seed. */
export function seededRandom(seed: number): Random {
  let state = (seed ^ 0x9e3779b9) | 0 || 1;
  const next = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return state >>> 0;
  };
  for (let warmUp = 0; warmUp < 8; warmUp++) next();
  return {
    below: (below) => Math.floor((next() / 4294967296) * below),
    unit: () => next() / 4294967296,
  };
}
