/** The most valuable load: its value, how many of each kind, and whether no better one can exist. */
export type Load = {
  readonly value: number;
  readonly counts: Int32Array;
  readonly exact: boolean;
};

/** Columns of the table; a longer capacity is divided into so many steps, and the table then only bounds the search. */
const COLUMNS = 1000;
const QUICK_NODES = 3_000;
const MOST_NODES = 2_000_000;

const PAIR_COLUMNS = 20_000;
const pairs = new Float64Array(PAIR_COLUMNS + 1);
/** Kept between calls: making it anew would cost more than the search. */
let table = new Float64Array(0);

/**
 * The bounded knapsack for whole lengths and whole values. A table tells for every kind and room what the kinds from
 * there on are worth at most, exactly where the capacity is small and with lengths rounded down where it is not; a
 * search then only follows what the table leaves open. When `exact` is false, `value` is still an upper bound and the
 * counts are only a good load; with "quick" effort that may happen.
 */
export function fullest(
  lengths: readonly number[],
  values: readonly number[],
  limits: readonly number[],
  capacity: number,
  effort: "quick" | "thorough",
): Load {
  const kinds: number[] = [];
  lengths.forEach((length, kind) => {
    if (0 < values[kind]! && 0 < limits[kind]! && length <= capacity) kinds.push(kind);
  });
  kinds.sort((a, b) => lengths[b]! - lengths[a]! || a - b);
  const step = Math.max(1, Math.ceil(capacity / COLUMNS));
  const width = Math.floor(capacity / step) + 1;
  fillTable(lengths, values, limits, kinds, step, width);
  const shortest = kinds.length === 0 ? capacity : lengths[kinds[kinds.length - 1]!]!;
  const mostFrom = new Float64Array(kinds.length + 1);
  for (let at = kinds.length - 1; 0 <= at; at--) mostFrom[at] = Math.max(mostFrom[at + 1]!, values[kinds[at]!]!);
  const pairStep = Math.max(1, Math.ceil(capacity / PAIR_COLUMNS));
  if (1 < step) fillPairs(lengths, values, kinds, capacity, pairStep);
  const counts = new Int32Array(lengths.length);
  let best = 0;
  let bestCounts = counts.slice();
  let nodes = 0;
  const mostNodes = effort === "quick" ? QUICK_NODES : MOST_NODES;
  visit(0, capacity, 0);
  const load = { value: best, counts: bestCounts, exact: nodes <= mostNodes };
  if (!load.exact) load.value = table[width - 1]!;
  return load;

  function atMost(at: number, room: number): number {
    return table[at * width + Math.floor(room / step)]!;
  }

  /** Chooses how many of the kinds from `at` on: of each first the number that the table says is worth most. */
  function visit(at: number, room: number, value: number): void {
    if (best < value) {
      best = value;
      bestCounts = counts.slice();
    }
    let from = at;
    while (from < kinds.length && room < lengths[kinds[from]!]!) from++;
    if (from === kinds.length || value + atMost(from, room) <= best) return;
    if (room < 3 * shortest) {
      if (1 < step && value + pairs[Math.floor(room / pairStep)]! <= best) return;
      chooseTwo(from, room, value);
      return;
    }
    const kind = kinds[from]!;
    const length = lengths[kind]!;
    const most = Math.min(limits[kind]!, Math.floor(room / length));
    const worthOf = (count: number): number => value + count * values[kind]! + atMost(from + 1, room - count * length);
    let first = 0;
    for (let count = 1; count <= most; count++) if (worthOf(first) < worthOf(count)) first = count;
    for (let turn = -1; turn <= most; turn++) {
      const count = turn < 0 ? first : turn;
      if (turn === first || worthOf(count) <= best) continue;
      if (mostNodes < ++nodes) break;
      counts[kind] = count;
      visit(from + 1, room - count * length, value + count * values[kind]!);
    }
    counts[kind] = 0;
  }

  /** Where no more than two pieces go in: for each the most valuable one that goes beside it, in one sweep. */
  function chooseTwo(from: number, room: number, value: number): void {
    let second = kinds.length;
    let bestFirst = -1;
    let bestSecond = -1;
    nodes += 4;
    for (let first = from; first < kinds.length; first++) {
      const kind = kinds[first]!;
      const left = room - lengths[kind]!;
      while (0 < second && lengths[kinds[second - 1]!]! <= left) second--;
      const beside = Math.max(second, limits[kind]! < 2 ? first + 1 : first);
      const worth = value + values[kind]! + mostFrom[beside]!;
      if (worth <= best) continue;
      best = worth;
      bestFirst = first;
      bestSecond = beside;
    }
    if (bestFirst < 0) return;
    bestCounts = counts.slice();
    bestCounts[kinds[bestFirst]!]!++;
    const wanted = mostFrom[bestSecond]!;
    while (bestSecond < kinds.length && values[kinds[bestSecond]!]! !== wanted) bestSecond++;
    if (bestSecond < kinds.length) bestCounts[kinds[bestSecond]!]!++;
  }
}

/** Row by row from the last kind to the first: the most that the kinds from that row on are worth in so much room. */
function fillTable(
  lengths: readonly number[],
  values: readonly number[],
  limits: readonly number[],
  kinds: readonly number[],
  step: number,
  width: number,
): void {
  const cells = (kinds.length + 1) * width;
  if (table.length < cells) table = new Float64Array(cells);
  table.fill(0, kinds.length * width, cells);
  for (let at = kinds.length - 1; 0 <= at; at--) {
    const kind = kinds[at]!;
    const row = at * width;
    const steps = Math.floor(lengths[kind]! / step);
    table.copyWithin(row, row + width, row + 2 * width);
    const most = steps === 0 ? limits[kind]! : Math.min(limits[kind]!, Math.floor((width - 1) / steps));
    for (let left = most, bundle = 1; 0 < left; bundle *= 2) {
      const count = Math.min(bundle, left);
      left -= count;
      addBundle(row, width, count * steps, count * values[kind]!);
    }
  }
}

/** For every room, the most that one or two pieces are worth there, their length together rounded down. */
function fillPairs(
  lengths: readonly number[],
  values: readonly number[],
  kinds: readonly number[],
  capacity: number,
  step: number,
): void {
  pairs.fill(0);
  for (let a = kinds.length - 1; 0 <= a; a--) {
    const length = lengths[kinds[a]!]!;
    const value = values[kinds[a]!]!;
    const alone = Math.floor(length / step);
    if (pairs[alone]! < value) pairs[alone] = value;
    for (let b = kinds.length - 1; a <= b; b--) {
      const both = length + lengths[kinds[b]!]!;
      if (capacity < both) break;
      const at = Math.floor(both / step);
      const worth = value + values[kinds[b]!]!;
      if (pairs[at]! < worth) pairs[at] = worth;
    }
  }
  for (let at = 1; at < pairs.length; at++) if (pairs[at]! < pairs[at - 1]!) pairs[at] = pairs[at - 1]!;
}

function addBundle(row: number, width: number, steps: number, value: number): void {
  for (let room = width - 1; steps <= room; room--) {
    const candidate = table[row + room - steps]! + value;
    if (table[row + room]! < candidate) table[row + room] = candidate;
  }
}
