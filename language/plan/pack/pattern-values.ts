import { type Marks, marksAlong } from "./pattern-marks.ts";

/** The most that may still be gained around a box in a corner of a sheet: at least what any cutting can gain there. */
export type Around = (w: number, h: number) => number;

/** A kind of blank: all that are of one size, and of one mind about being turned. */
export type Kind = { readonly w: number; readonly h: number; readonly turns: boolean };

/** The sheet that patterns are for. */
export type Sheet = { readonly w: number; readonly h: number };

/** Whether a blank of a kind goes on a sheet at all. */
export function fits({ w, h, turns }: Kind, sheet: Sheet): boolean {
  return (w <= sheet.w && h <= sheet.h) || (turns && h <= sheet.w && w <= sheet.h);
}

/** Marks along each side of a sheet, and the most where there are few along the other side. */
const MARKS = 100;
const MOST_MARKS = 300;
const SHARES = 1_000;

/**
 * Bounds what kinds of the given worth can add to a box: as if each kind were there without end, by dynamic programming
 * between marks (Gilmore and Gomory 1966 for boxes, Viswanathan and Bagchi 1993 for what lies around one), and by area as
 * if blanks could be divided, each no more often than it is wanted. Yields after each short piece of work.
 */
export function* valuesAround(
  kinds: readonly Kind[],
  demand: readonly number[],
  worth: Float64Array,
  sheet: Sheet,
): Generator<undefined, Around> {
  const [across, up] = marksOn(kinds, demand, worth, sheet);
  const step = up.last + 1;
  const inside = new Float64Array((across.last + 1) * step);
  const put = (w: number, h: number, value: number): void => {
    if (sheet.w < w || sheet.h < h) return;
    const at = across.at(w) * step + up.at(h);
    if (inside[at]! < value) inside[at] = value;
  };
  kinds.forEach(({ w, h, turns }, kind) => {
    if (demand[kind]! < 1) return;
    put(w, h, worth[kind]!);
    if (turns) put(h, w, worth[kind]!);
  });
  for (let x = 1; x <= across.last; x++) {
    fillInside(inside, x, across, up);
    yield;
  }
  const around = new Float64Array((across.last + 1) * step);
  for (let x = across.last; 0 <= x; x--) {
    fillAround(around, inside, x, across, up);
    yield;
  }
  const area = sheet.w * sheet.h;
  const divided = byArea(kinds, demand, worth, sheet);
  return (w, h) => {
    const byMarks = around[across.at(w) * step + up.at(h)]!;
    const byShare = divided[Math.ceil((1 - (w * h) / area) * SHARES - 1e-9)]!;
    return Math.min(byMarks, byShare);
  };
}

/** Marks at all sums where these are few; the fewer there are along one side, the more there may be along the other. */
function marksOn(
  kinds: readonly Kind[],
  demand: readonly number[],
  worth: Float64Array,
  sheet: Sheet,
): readonly [Marks, Marks] {
  const there = kinds.flatMap((kind, at) =>
    0 < demand[at]! && 0 < worth[at]! && fits(kind, sheet) ? [{ ...kind, times: demand[at]! }] : [],
  );
  const lying = there.flatMap(({ w, h, turns, times }) => {
    const upright = { w: { length: w, times }, h: { length: h, times } };
    return turns && w !== h ? [upright, { w: upright.h, h: upright.w }] : [upright];
  });
  const wide = lying.map((one) => one.w);
  const high = lying.map((one) => one.h);
  const across = marksAlong(sheet.w, wide, MARKS);
  const up = marksAlong(sheet.h, high, mostBeside(across));
  return [across.last < MARKS ? across : marksAlong(sheet.w, wide, mostBeside(up)), up];
}

function mostBeside({ last }: Marks): number {
  return Math.max(MARKS, Math.min(MOST_MARKS, Math.floor((MARKS * MARKS) / Math.max(1, last))));
}

/** What boxes of one width hold at most, the lower ones first: all that is in one, or what is in two that it is cut into. */
function fillInside(inside: Float64Array, x: number, across: Marks, up: Marks): void {
  const { even: isEvenX, minus: minusX, last: lastX, first: firstX } = across;
  const { even: isEvenY, minus: minusY, last: lastY, first: firstY, half: halfY } = up;
  const step = lastY + 1;
  const base = x * step;
  const halfX = across.half[x]!;
  for (let y = 1; y <= lastY; y++) {
    let most = Math.max(inside[base + y]!, inside[base - step + y]!, inside[base + y - 1]!);
    for (let left = firstX; left <= halfX; left++) {
      const right = isEvenX ? x - left : minusX[x * (lastX + 1) + left]!;
      const sum = inside[left * step + y]! + inside[right * step + y]!;
      if (most < sum) most = sum;
    }
    const half = halfY[y]!;
    for (let below = firstY; below <= half; below++) {
      const above = isEvenY ? y - below : minusY[y * step + below]!;
      const sum = inside[base + below]! + inside[base + above]!;
      if (most < sum) most = sum;
    }
    inside[base + y] = most;
  }
}

/** What comes around boxes of one width at most, the higher ones first: a box beside or above, and what comes around both. */
function fillAround(around: Float64Array, inside: Float64Array, x: number, across: Marks, up: Marks): void {
  const { even: isEvenX, plus: plusX, last: lastX, first: firstX } = across;
  const { even: isEvenY, plus: plusY, last: lastY, first: firstY } = up;
  const step = lastY + 1;
  const base = x * step;
  for (let y = lastY; 0 <= y; y--) {
    let most = Math.max(x < lastX ? around[base + step + y]! : 0, y < lastY ? around[base + y + 1]! : 0);
    for (let more = firstX; x + more <= lastX; more++) {
      const both = isEvenX ? x + more : plusX[x * (lastX + 1) + more]!;
      const sum = both < 0 ? 0 : inside[more * step + y]! + around[both * step + y]!;
      if (most < sum) most = sum;
    }
    for (let more = firstY; y + more <= lastY; more++) {
      const both = isEvenY ? y + more : plusY[y * step + more]!;
      const sum = both < 0 ? 0 : inside[base + more]! + around[base + both]!;
      if (most < sum) most = sum;
    }
    around[base + y] = most;
  }
}

/** The most worth that fits each share of a sheet's area when blanks may be divided. */
function byArea(kinds: readonly Kind[], demand: readonly number[], worth: Float64Array, sheet: Sheet) {
  const area = sheet.w * sheet.h;
  const most = new Float64Array(SHARES + 1);
  const density = kinds.map(({ w, h }, kind) => worth[kind]! / (w * h));
  const order = kinds
    .map((_, kind) => kind)
    .filter((kind) => 0 < demand[kind]! && 0 < worth[kind]! && fits(kinds[kind]!, sheet));
  order.sort((a, b) => density[b]! - density[a]!);
  let at = 0;
  let used = 0;
  let sum = 0;
  for (let share = 0; share <= SHARES; share++) {
    const room = (share * area) / SHARES;
    for (; at < order.length; at++) {
      const kind = order[at]!;
      const size = kinds[kind]!.w * kinds[kind]!.h * demand[kind]!;
      if (room < used + size) break;
      used += size;
      sum += worth[kind]! * demand[kind]!;
    }
    most[share] = sum + (at < order.length ? (room - used) * density[order[at]!]! : 0);
  }
  return most;
}
