import type { Random } from "./random.ts";

/** Sets chosen, by their number, and the items that are in none of them. */
export type Cover = { readonly chosen: number[]; readonly out: number[] };

/**
 * Chooses `count` sets so that the items in none have little area: the choice changes by one set at a time, and an item
 * weighs the more the longer it is left out (local search with row weights, Gao, Weise and Li 2015). Answers the best
 * choice of so many steps, with every item in it that is in a chosen set.
 */
export function chooseCover(
  area: Float64Array,
  sets: readonly (readonly number[])[],
  count: number,
  steps: number,
  random: Random,
): Cover {
  const holders: number[][] = Array.from(area, () => []);
  sets.forEach((set, at) => {
    for (const item of set) holders[item]!.push(at);
  });
  const weight = new Float64Array(area.length).fill(1);
  const covers = new Int32Array(area.length);
  /** Of a set outside the choice what it would add, of one inside what would be lost without it. */
  const score = Float64Array.from(sets, (set) => set.length);
  const since = new Int32Array(sets.length);
  const inside = new Uint8Array(sets.length);
  const chosen: number[] = [];
  const open = Array.from(area, (_, item) => item);
  const openAt = Int32Array.from(open);
  let best: Cover = { chosen: [], out: open.slice() };
  let bestArea = Number.POSITIVE_INFINITY;
  for (let step = 1; step <= steps && 0 < open.length; step++) {
    const last = count <= chosen.length ? cheapest(step) : -1;
    if (0 <= last) {
      remove(last);
      since[last] = step;
    }
    const put = richest(holders[open[random.below(open.length)]!]!, last);
    if (0 <= put) {
      add(put);
      since[put] = step;
    }
    remember();
  }
  return best;

  function remember(): void {
    let left = 0;
    for (const item of open) {
      left += area[item]!;
      weight[item]!++;
      for (const other of holders[item]!) score[other]!++;
    }
    if (bestArea <= left) return;
    bestArea = left;
    best = { chosen: chosen.slice(), out: open.slice() };
  }

  function add(at: number): void {
    inside[at] = 1;
    chosen.push(at);
    score[at] = 0;
    for (const item of sets[at]!) {
      const now = ++covers[item]!;
      if (now === 1) {
        close(item);
        for (const other of holders[item]!) if (other !== at) score[other]! -= weight[item]!;
        score[at]! += weight[item]!;
      } else if (now === 2) {
        for (const other of chosen) if (other !== at && sets[other]!.includes(item)) score[other]! -= weight[item]!;
      }
    }
  }

  function remove(at: number): void {
    inside[at] = 0;
    chosen.splice(chosen.indexOf(at), 1);
    score[at] = 0;
    for (const item of sets[at]!) {
      const now = --covers[item]!;
      if (now === 0) {
        openAt[item] = open.length;
        open.push(item);
        for (const other of holders[item]!) if (other !== at) score[other]! += weight[item]!;
        score[at]! += weight[item]!;
      } else if (now === 1) {
        for (const other of chosen) if (sets[other]!.includes(item)) score[other]! += weight[item]!;
      }
    }
  }

  function close(item: number): void {
    const last = open.pop()!;
    if (last === item) return;
    open[openAt[item]!] = last;
    openAt[last] = openAt[item]!;
  }

  /** The set inside whose loss costs least, the longest there of equal ones; not the one put in just now. */
  function cheapest(step: number): number {
    let found = -1;
    for (const at of chosen) {
      if (since[at] === step - 1) continue;
      if (found < 0 || score[at]! < score[found]! || (score[at] === score[found] && since[at]! < since[found]!)) {
        found = at;
      }
    }
    return found;
  }

  /** The set outside that adds most, the longest out of equal ones; not the one taken out just now. */
  function richest(candidates: readonly number[], last: number): number {
    let found = -1;
    for (const at of candidates) {
      if (inside[at] === 1 || at === last) continue;
      if (found < 0 || score[found]! < score[at]! || (score[found] === score[at] && since[at]! < since[found]!)) {
        found = at;
      }
    }
    return found;
  }
}
