/**
 * Dual feasible functions: f with f(a) + f(b) <= f(a + b) on 0..capacity, so that pieces which fit side by side keep
 * fitting when each length is replaced by f(length). Values are whole numbers; f(capacity) is the new capacity.
 * Fekete and Schepers 2004; Carlier, Clautiaux and Moukrim 2007.
 */
export type DualFeasible = { readonly name: string; readonly of: (length: number) => number };

/** The length itself. */
export function identity(): DualFeasible {
  return { name: "lengths as they are", of: (length) => length };
}

/** Rounds to k-ths: what is more than j parts of k + 1 counts as j parts of k. */
export function rounded(capacity: number, k: number): DualFeasible {
  const of = (length: number): number => {
    const times = (k + 1) * length;
    return times % capacity === 0 ? length * k : Math.floor(times / capacity) * capacity;
  };
  return { name: `rounded to 1/${k}`, of };
}

/** Drops lengths below `small` and counts as whole what leaves no room for them. */
export function dropping(capacity: number, small: number): DualFeasible {
  const of = (length: number): number => (capacity - small < length ? capacity : length < small ? 0 : length);
  return { name: `without pieces below ${small}`, of };
}

/** Counts how many lengths of `step` go into a short piece, and how many no longer go beside a long one. */
export function counting(capacity: number, step: number): DualFeasible {
  const all = Math.floor(capacity / step);
  const of = (length: number): number => {
    if (capacity < 2 * length) return 2 * (all - Math.floor((capacity - length) / step));
    return 2 * length === capacity ? all : 2 * Math.floor(length / step);
  };
  return { name: `counted in steps of ${step}`, of };
}

/** The functions worth trying for pieces of the given lengths, at most `most` of them, always the same ones. */
export function familyFor(capacity: number, lengths: Iterable<number>, most: number): DualFeasible[] {
  const family = [identity()];
  for (let k = 1; k <= 12; k++) family.push(rounded(capacity, k));
  const steps = new Set<number>();
  for (const length of lengths) {
    for (const step of [length, length + 1, capacity - length, capacity - length + 1]) {
      if (0 < step && 2 * step <= capacity) steps.add(step);
    }
  }
  const sorted = [...steps].sort((a, b) => b - a);
  const stride = Math.max(1, Math.ceil((2 * sorted.length) / most));
  for (let at = 0; at < sorted.length; at += stride) {
    family.push(dropping(capacity, sorted[at]!), counting(capacity, sorted[at]!));
  }
  return family;
}
