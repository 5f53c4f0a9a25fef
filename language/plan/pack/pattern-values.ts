/** The most that may still be gained around a box in a corner of a sheet: at least what any cutting can gain there. */
export type Around = (w: number, h: number) => number;

/** A kind of blank: all that are of one size, and of one mind about being turned. */
export type Kind = { readonly w: number; readonly h: number; readonly turns: boolean };

/** The sheet all patterns are for. */
export type Sheet = { readonly w: number; readonly h: number };

/** Cells of the grid along each side of a sheet; sizes are rounded down to it, so that the bound stays one. */
const GRID = 100;
const SHARES = 1_000;

/**
 * Bounds what kinds of the given worth can add to a box: as if each kind were there without end, by dynamic programming
 * over a grid (Gilmore and Gomory 1966 for boxes, Viswanathan and Bagchi 1993 for what lies around one), and by area as
 * if blanks could be divided, each no more often than it is wanted. Yields after each short piece of work.
 */
export function* valuesAround(
  kinds: readonly Kind[],
  demand: readonly number[],
  worth: Float64Array,
  sheet: Sheet,
): Generator<undefined, Around> {
  const nx = Math.min(GRID, sheet.w);
  const ny = Math.min(GRID, sheet.h);
  const step = ny + 1;
  const inside = new Float64Array((nx + 1) * step);
  const put = (w: number, h: number, value: number): void => {
    if (sheet.w < w || sheet.h < h) return;
    const at = cell(w, h);
    if (inside[at]! < value) inside[at] = value;
  };
  const cell = (w: number, h: number): number => Math.floor((w * nx) / sheet.w) * step + Math.floor((h * ny) / sheet.h);
  kinds.forEach(({ w, h, turns }, kind) => {
    if (demand[kind]! < 1) return;
    put(w, h, worth[kind]!);
    if (turns) put(h, w, worth[kind]!);
  });
  for (let x = 1; x <= nx; x++) {
    const base = x * step;
    for (let y = 1; y <= ny; y++) {
      let most = Math.max(inside[base + y]!, inside[base - step + y]!, inside[base + y - 1]!);
      for (let left = 1; 2 * left <= x; left++) {
        const sum = inside[left * step + y]! + inside[base - left * step + y]!;
        if (most < sum) most = sum;
      }
      for (let below = 1; 2 * below <= y; below++) {
        const sum = inside[base + below]! + inside[base + y - below]!;
        if (most < sum) most = sum;
      }
      inside[base + y] = most;
    }
    yield;
  }
  const around = new Float64Array((nx + 1) * step);
  for (let x = nx; 0 <= x; x--) {
    const base = x * step;
    for (let y = ny; 0 <= y; y--) {
      let most = 0;
      for (let more = 1; x + more <= nx; more++) {
        const sum = inside[more * step + y]! + around[base + more * step + y]!;
        if (most < sum) most = sum;
      }
      for (let more = 1; y + more <= ny; more++) {
        const sum = inside[base + more]! + around[base + y + more]!;
        if (most < sum) most = sum;
      }
      around[base + y] = most;
    }
    yield;
  }
  const area = sheet.w * sheet.h;
  const divided = byArea(kinds, demand, worth, area);
  return (w, h) => {
    const byCells = around[cell(w, h)]!;
    const byShare = divided[Math.ceil((1 - (w * h) / area) * SHARES - 1e-9)]!;
    return Math.min(byCells, byShare);
  };
}

/** The most worth that fits each share of a sheet's area when blanks may be divided. */
function byArea(kinds: readonly Kind[], demand: readonly number[], worth: Float64Array, area: number) {
  const most = new Float64Array(SHARES + 1);
  const density = kinds.map(({ w, h }, kind) => worth[kind]! / (w * h));
  const order = kinds.map((_, kind) => kind).filter((kind) => 0 < demand[kind]! && 0 < worth[kind]!);
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
