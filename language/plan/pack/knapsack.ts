/** The most valuable load: its value, how many of each kind, and whether no better one can exist. */
export type Load = { readonly value: number; readonly counts: Int32Array; readonly exact: boolean };

/** Up to so many cells the table is quicker than any search; beyond the second figure it does not fit in memory. */
const SMALL_TABLE = 1_000_000;
const LARGE_TABLE = 60_000_000;
const QUICK_NODES = 3_000;
const MOST_NODES = 400_000;

/**
 * The bounded knapsack for whole lengths and whole values: by table where the capacity is small, else by branch and
 * bound. When `exact` is false, `value` is still an upper bound and the counts are only a good load; with "quick" effort
 * that may happen often.
 */
export function fullest(
  lengths: readonly number[],
  values: readonly number[],
  limits: readonly number[],
  capacity: number,
  effort: "quick" | "thorough",
): Load {
  const kinds: number[] = [];
  let copies = 0;
  lengths.forEach((length, kind) => {
    if (values[kind]! <= 0 || limits[kind]! <= 0 || capacity < length) return;
    kinds.push(kind);
    copies += Math.min(limits[kind]!, Math.floor(capacity / length));
  });
  const cells = (capacity + 1) * copies;
  if (cells <= SMALL_TABLE) return byTable(lengths, values, limits, capacity, kinds);
  const most = effort === "quick" || cells <= LARGE_TABLE ? QUICK_NODES : MOST_NODES;
  const searched = byBranching(lengths, values, limits, capacity, kinds, most);
  if (searched.exact || effort === "quick" || LARGE_TABLE < cells) return searched;
  return byTable(lengths, values, limits, capacity, kinds);
}

/** Kept between calls: making it anew would cost more than the search. */
let marks = new Uint8Array(0);

function byTable(
  lengths: readonly number[],
  values: readonly number[],
  limits: readonly number[],
  capacity: number,
  kinds: readonly number[],
): Load {
  const copies: number[] = [];
  for (const kind of kinds) {
    const most = Math.min(limits[kind]!, Math.floor(capacity / lengths[kind]!));
    for (let count = 0; count < most; count++) copies.push(kind);
  }
  const best = new Float64Array(capacity + 1);
  const cells = copies.length * (capacity + 1);
  if (marks.length < cells) marks = new Uint8Array(cells);
  const taken = marks;
  taken.fill(0, 0, cells);
  copies.forEach((kind, copy) => {
    const length = lengths[kind]!;
    const value = values[kind]!;
    const row = copy * (capacity + 1);
    for (let room = capacity; length <= room; room--) {
      const candidate = best[room - length]! + value;
      if (best[room]! < candidate) {
        best[room] = candidate;
        taken[row + room] = 1;
      }
    }
  });
  const counts = new Int32Array(lengths.length);
  let room = capacity;
  for (let copy = copies.length - 1; 0 <= copy; copy--) {
    if (taken[copy * (capacity + 1) + room] !== 1) continue;
    counts[copies[copy]!]!++;
    room -= lengths[copies[copy]!]!;
  }
  return { value: best[capacity]!, counts, exact: true };
}

function byBranching(
  lengths: readonly number[],
  values: readonly number[],
  limits: readonly number[],
  capacity: number,
  kinds: readonly number[],
  mostNodes: number,
): Load {
  const order = kinds.slice().sort((a, b) => values[b]! / lengths[b]! - values[a]! / lengths[a]! || a - b);
  const shortestFrom = new Float64Array(order.length + 1).fill(Number.POSITIVE_INFINITY);
  for (let at = order.length - 1; 0 <= at; at--)
    shortestFrom[at] = Math.min(shortestFrom[at + 1]!, lengths[order[at]!]!);
  const counts = new Int32Array(lengths.length);
  let best = 0;
  let bestCounts = counts.slice();
  let nodes = 0;
  const visit = (from: number, room: number, value: number): void => {
    if (best < value) {
      best = value;
      bestCounts = counts.slice();
    }
    for (let at = from; at < order.length && shortestFrom[at]! <= room; at++) {
      const kind = order[at]!;
      const length = lengths[kind]!;
      if (Math.floor(value + (room * values[kind]!) / length + 1e-6) <= best) return;
      if (room < length || limits[kind]! <= counts[kind]!) continue;
      if (mostNodes < ++nodes) return;
      counts[kind]!++;
      visit(at, room - length, value + values[kind]!);
      counts[kind]!--;
    }
  };
  visit(0, capacity, 0);
  if (nodes <= mostNodes) return { value: best, counts: bestCounts, exact: true };
  const first = order[0]!;
  return { value: Math.ceil((capacity * values[first]!) / lengths[first]!), counts: bestCounts, exact: false };
}
