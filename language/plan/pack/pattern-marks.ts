/**
 * The marks along one side of a sheet between which cuts are looked at: all sums of the lengths that may lie there, or, where
 * these are too many, marks at equal distances, to which lengths are rounded down. Mark 0 is the edge.
 */
export type Marks = {
  /** The number of the last mark that lies within the sheet. */
  readonly last: number;
  /** The last mark not beyond a length from the edge. */
  readonly at: (length: number) => number;
  /** The first mark, besides the edge, at which anything that lies there may end. */
  readonly first: number;
  /** For each mark, the last one of which no less is left of it than it is long itself. */
  readonly half: Int32Array;
  /** Whether the marks stand at equal distances: their numbers then add up and differ as their lengths do. */
  readonly even: boolean;
  /** The mark at what is left of one mark's length without another's, by `from * (last + 1) + without`; none where they are even. */
  readonly minus: Int32Array;
  /** The mark at the sum of two marks' lengths, likewise; below nought where no pieces that lie there add up to that. */
  readonly plus: Int32Array;
};

/** A length that may lie along the side, so many times. */
export type Lying = { readonly length: number; readonly times: number };

/** Marks for a side, so many at most; at sums of lengths if they are no more than that. */
export function marksAlong(side: number, lying: readonly Lying[], most: number): Marks {
  const sums = sumsOf(side, lying, most);
  // Where every length is a mark of its own anyway, equal distances say the same, and are quicker to reckon with.
  if (sums !== undefined && (most < side || 2 * sums.length < side)) return atSums(sums);
  const shortest = lying.reduce((least, { length }) => Math.min(least, length), side);
  return atEqualDistances(side, most, shortest);
}

function sumsOf(side: number, lying: readonly Lying[], most: number): readonly number[] | undefined {
  const sums = new Set([0]);
  for (const { length, times } of lying) {
    let added = [...sums];
    for (let time = 0; time < times && added.length !== 0; time++) {
      added = added.map((sum) => sum + length).filter((sum) => sum <= side && !sums.has(sum));
      for (const sum of added) sums.add(sum);
      if (most < sums.size - 1) return undefined;
    }
  }
  return [...sums].sort((a, b) => a - b);
}

function atSums(sums: readonly number[]): Marks {
  const at = (length: number): number => {
    let [low, high] = [0, sums.length - 1];
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (sums[middle]! <= length) low = middle;
      else high = middle - 1;
    }
    return low;
  };
  const step = sums.length;
  const minus = new Int32Array(step * step);
  const plus = new Int32Array(step * step);
  const half = new Int32Array(step);
  for (let a = 0; a < step; a++) {
    for (let b = 0; b < step; b++) {
      const left = b <= a ? at(sums[a]! - sums[b]!) : 0;
      minus[a * step + b] = left;
      if (b <= left) half[a] = b;
      const sum = sums[a]! + sums[b]!;
      plus[a * step + b] = sums[at(sum)] === sum ? at(sum) : -1;
    }
  }
  return { last: step - 1, at, first: 1, half, even: false, minus, plus };
}

function atEqualDistances(side: number, most: number, shortest: number): Marks {
  const last = Math.min(most, side);
  const at = (length: number): number => Math.floor((length * last) / side);
  const half = Int32Array.from({ length: last + 1 }, (_, mark) => mark >> 1);
  const none = new Int32Array(0);
  return { last, at, first: Math.max(1, at(shortest)), half, even: true, minus: none, plus: none };
}
