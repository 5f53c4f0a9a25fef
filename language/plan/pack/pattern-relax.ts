import { coverProgram } from "./cover-lp.ts";
import { type Pattern, pricePatterns } from "./pattern-price.ts";
import type { Kind, Sheet } from "./pattern-values.ts";
import { leaf } from "./tree.ts";

/** Kinds of blanks and the sheet they are to be cut from. */
export type Task = { readonly kinds: readonly Kind[]; readonly sheet: Sheet };

/** A pattern relaxation solved: how many sheets it takes in fractions, and what is used of which patterns. */
export type Relaxed = {
  readonly value: number;
  /** Sheets that are needed for certain; nought when pricing was cut short. */
  readonly least: number;
  readonly used: readonly { readonly pattern: Pattern; readonly amount: number }[];
  /** The patterns that a plan of so many sheets can hold, going by their reduced costs; the closest first. */
  readonly near: (sheets: number) => Pattern[];
};

const ENOUGH = 1e-6;
/** A dual below this is rounding, and would only swell the patterns with kinds that are worth nothing. */
const NOTHING = 1e-7;
/** Of what pricing finds, so many patterns are taken at once, and no more with any kind once it is in so many. */
const MOST_TAKEN = 200;
const MOST_OF_KIND = 8;
const MOST_PRICINGS = 60;
/** Patterns that gain at least so much of what the best one gains are brought in before all are looked at again. */
const NEARLY_BEST = 0.4;
/** Patterns at least so close to coming in are kept, be the relaxation ever so tight: else the next begins with too few. */
const LEAST_NEAR = 0.2;

/**
 * The pattern relaxation of Gilmore and Gomory 1965 for one kind of sheet, by column generation, with each kind in a
 * pattern no more often than wanted. Begins with the patterns of `pool` that hold no more than `demand`, the first ones
 * first, and is not priced on once it takes no more than `enough`. Yields after each short piece of work.
 */
export function* relaxPatterns(
  { kinds, sheet }: Task,
  demand: readonly number[],
  pool: readonly Pattern[],
  enough = 0,
): Generator<undefined, Relaxed> {
  const rows = demand.flatMap((count, kind) => (0 < count ? [kind] : []));
  const columns: (Pattern | undefined)[] = rows.map((kind) => alone(kinds, kind, sheet));
  const rowOf = new Int32Array(kinds.length);
  rows.forEach((kind, row) => {
    rowOf[kind] = row;
  });
  const program = coverProgram(
    rows.map((kind) => demand[kind]!),
    rows.map(() => 1),
  );
  const worth = new Float64Array(kinds.length);
  const usable = fitting(pool, demand);
  yield;
  let least = 0;
  yield* optimise(usable.slice(0, 2 * rows.length));
  for (let pricing = 0; pricing < MOST_PRICINGS; pricing++) {
    yield* optimise(usable);
    for (const kind of rows) if (worth[kind]! <= NOTHING) worth[kind] = 0;
    if (total() <= enough) break;
    const { patterns, complete } = yield* pricePatterns(kinds, demand, worth, sheet, 1 + ENOUGH);
    if (patterns.length === 0) {
      if (complete) least = Math.ceil(total() / (1 + ENOUGH) - ENOUGH);
      break;
    }
    usable.push(...varied(patterns, kinds.length));
  }
  const amounts = program.amounts();
  const used = columns.flatMap((pattern, row) =>
    pattern === undefined || amounts[row]! <= ENOUGH ? [] : [{ pattern, amount: amounts[row]! }],
  );
  return { value: total(), least, used, near };

  /** Pivots until none of these patterns gains anything. */
  function* optimise(among: readonly Pattern[]): Generator<undefined, void> {
    for (;;) {
      value();
      let best = ENOUGH;
      for (const pattern of among) best = Math.max(best, gain(pattern));
      const close = best <= ENOUGH ? [] : among.filter((pattern) => best * NEARLY_BEST <= gain(pattern));
      yield;
      if (close.length === 0 && !covered()) return;
      for (let entering = dearest(close); entering !== undefined; entering = dearest(close)) {
        const held = entering.kinds.map((kind) => rowOf[kind]!);
        const left = program.enter(
          held,
          held.map(() => 1),
          1,
        );
        if (left === undefined) return;
        columns[left] = entering;
        value();
        yield;
      }
    }
  }

  /** Lets go of a row with a negative dual; false where there is none. */
  function covered(): boolean {
    let row = -1;
    let worst = -ENOUGH;
    program.duals.forEach((dual, at) => {
      if (worst <= dual) return;
      worst = dual;
      row = at;
    });
    const left = row < 0 ? undefined : program.release(row);
    if (left !== undefined) columns[left] = undefined;
    return left !== undefined;
  }

  function dearest(among: readonly Pattern[]): Pattern | undefined {
    let most = ENOUGH;
    let found: Pattern | undefined;
    for (const pattern of among) {
      const now = gain(pattern);
      if (now <= most) continue;
      most = now;
      found = pattern;
    }
    return found;
  }

  function value(): void {
    for (let row = 0; row < rows.length; row++) worth[rows[row]!] = program.duals[row]!;
  }

  function total(): number {
    return rows.reduce((sum, kind) => sum + worth[kind]! * demand[kind]!, 0);
  }

  function gain({ kinds: held }: Pattern): number {
    let sum = -1;
    for (let at = 0; at < held.length; at++) sum += worth[held[at]!]!;
    return sum;
  }

  function near(sheets: number): Pattern[] {
    const gap = Math.max(sheets - total(), LEAST_NEAR) + ENOUGH;
    const close = usable.flatMap((pattern) => (-gap <= gain(pattern) ? [{ pattern, gain: gain(pattern) }] : []));
    return close.sort((a, b) => b.gain - a.gain).map(({ pattern }) => pattern);
  }
}

/** One blank on a sheet by itself. */
function alone(kinds: readonly Kind[], kind: number, sheet: Sheet): Pattern {
  const { w, h } = kinds[kind]!;
  const lies = w <= sheet.w && h <= sheet.h;
  return { tree: () => (lies ? leaf(kind, w, h) : leaf(kind, h, w)), kinds: [kind] };
}

function fitting(pool: readonly Pattern[], demand: readonly number[]): Pattern[] {
  const count = new Int32Array(demand.length);
  return pool.filter(({ kinds }) => {
    let fits = true;
    for (const kind of kinds) if (demand[kind]! < ++count[kind]!) fits = false;
    for (const kind of kinds) count[kind] = 0;
    return fits;
  });
}

/** The first patterns, but each with a kind that few of those before it hold. */
function varied(patterns: readonly Pattern[], kinds: number): Pattern[] {
  const uses = new Int32Array(kinds);
  const taken: Pattern[] = [];
  for (const pattern of patterns) {
    if (pattern.kinds.every((kind) => MOST_OF_KIND <= uses[kind]!)) continue;
    for (const kind of pattern.kinds) uses[kind]!++;
    taken.push(pattern);
    if (MOST_TAKEN <= taken.length) break;
  }
  return taken;
}
