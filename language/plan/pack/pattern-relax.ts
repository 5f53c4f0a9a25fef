import { coverProgram } from "./cover-lp.ts";
import type { Demand } from "./demands.ts";
import { type Filling, pricePatterns } from "./pattern-price.ts";
import { fits, type Kind, type Sheet } from "./pattern-values.ts";
import { leaf } from "./tree.ts";

/** A sheet that patterns may be for, and what one costs; costs are of the size of 1, and nought where it is paid for. */
export type Sold = Sheet & { readonly cost: number };

/** Kinds of blanks and the sheets they are to be cut from. */
export type Task = { readonly kinds: readonly Kind[]; readonly sheets: readonly Sold[] };

/** A way to fill one sheet, which is named by its number among those of the task. */
export type Pattern = Filling & { readonly sheet: number };

/** A pattern relaxation solved: what it costs in fractions of sheets, and what is used of which patterns. */
export type Relaxed = {
  readonly value: number;
  /** Whether it was priced to its end: no plan costs less than `value`, but for rounding. */
  readonly complete: boolean;
  /** What any plan must carry, by the number of the sheet in the task; undefined when that was not looked at. */
  readonly proof: Demand | undefined;
  readonly used: readonly { readonly pattern: Pattern; readonly amount: number }[];
  /** The patterns that a plan of this cost can hold, going by their reduced costs; the closest first. */
  readonly near: (cost: number) => Pattern[];
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
/** What a blank costs that goes on no sheet of which there is no end, until patterns are found that hold it. */
const DEAR = 10;

/**
 * The pattern relaxation of Gilmore and Gomory 1965 by column generation, over sheets of one or several sizes, their costs
 * and how many there are of each (`have`), with each kind in a pattern no more often than wanted. Begins with the patterns
 * of `pool` that hold no more than `demand`, the first ones first, and is not priced on once it costs no more than `enough`.
 * Yields after each short piece of work.
 */
export function* relaxPatterns(
  { kinds, sheets }: Task,
  demand: readonly number[],
  have: readonly number[],
  pool: readonly Pattern[],
  enough = 0,
): Generator<undefined, Relaxed> {
  const rows = demand.flatMap((count, kind) => (0 < count ? [kind] : []));
  const wanted = rows.reduce((sum, kind) => sum + demand[kind]!, 0);
  // A row for each kind, and behind them one for each sheet of which there may be too few.
  const scarce = sheets.flatMap((_, sheet) => (have[sheet]! < wanted ? [sheet] : []));
  const endless = sheets.map((_, sheet) => wanted <= have[sheet]!);
  const columns: (Pattern | undefined)[] = rows.map((kind) => alone(kinds, kind, sheets, endless));
  const rowOf = new Int32Array(kinds.length);
  rows.forEach((kind, row) => {
    rowOf[kind] = row;
  });
  const rowOfSheet = sheets.map((_, sheet) => (endless[sheet]! ? -1 : rows.length + scarce.indexOf(sheet)));
  const program = coverProgram(
    [...rows.map((kind) => demand[kind]!), ...scarce.map((sheet) => have[sheet]!)],
    [...columns.map((pattern) => (pattern === undefined ? DEAR : sheets[pattern.sheet]!.cost)), ...scarce.map(() => 0)],
  );
  const worth = new Float64Array(kinds.length);
  /** What a sheet counts for now: its cost, and more where others would make better use of it. */
  const price = new Float64Array(sheets.length);
  const usable = fitting(pool, demand, have);
  yield;
  let proof: Demand | undefined;
  let isPricedOut = false;
  yield* optimise(usable.slice(0, 2 * rows.length));
  for (let pricing = 0; pricing < MOST_PRICINGS; pricing++) {
    yield* optimise(usable);
    for (const kind of rows) if (worth[kind]! <= NOTHING) worth[kind] = 0;
    if (total() <= enough) break;
    const { patterns, complete, most } = yield* priced(pricing);
    if (patterns.length === 0) {
      isPricedOut = complete;
      proof = { need: coveredWorth(), carries: sheets.map((_, at) => Math.max(price[at]! + ENOUGH, most[at]!)) };
      break;
    }
    usable.push(...varied(patterns, kinds.length));
  }
  const amounts = program.amounts();
  const used = columns.flatMap((pattern, row) =>
    pattern === undefined || amounts[row]! <= ENOUGH ? [] : [{ pattern, amount: amounts[row]! }],
  );
  return { value: total(), complete: isPricedOut, proof, used, near };

  /** The patterns that gain on the first sheet that has any, beginning with another one each time; else the most on each. */
  function* priced(turn: number): Generator<undefined, { patterns: Pattern[]; complete: boolean; most: number[] }> {
    const most = sheets.map(() => 0);
    let complete = true;
    for (let step = 0; step < sheets.length; step++) {
      const sheet = (turn + step) % sheets.length;
      if (have[sheet]! < 1) continue;
      const found = yield* pricePatterns(kinds, demand, worth, sheets[sheet]!, price[sheet]! + ENOUGH);
      if (!found.complete) complete = false;
      const patterns = found.patterns.map((one) => ({ ...one, sheet }));
      if (patterns.length !== 0) return { patterns, complete, most };
      most[sheet] = found.most;
    }
    return { patterns: [], complete, most };
  }

  /** Pivots until none of these patterns gains anything. */
  function* optimise(among: readonly Pattern[]): Generator<undefined, void> {
    for (;;) {
      value();
      let best = ENOUGH;
      for (const pattern of among) best = Math.max(best, gain(pattern));
      const close = best <= ENOUGH ? [] : among.filter((pattern) => best * NEARLY_BEST <= gain(pattern));
      yield;
      if (close.length === 0 && !loosened()) return;
      for (let entering = dearest(close); entering !== undefined; entering = dearest(close)) {
        const held = entering.kinds.map((kind) => rowOf[kind]!);
        if (!endless[entering.sheet]!) held.push(rowOfSheet[entering.sheet]!);
        const left = program.enter(
          held,
          held.map(() => 1),
          sheets[entering.sheet]!.cost,
        );
        if (left === undefined) return;
        columns[left] = entering;
        value();
        yield;
      }
    }
  }

  /** Lets go of the row that is held the most against its will, a kind covered or a sheet used up; false where there is none. */
  function loosened(): boolean {
    let row = -1;
    let worst = ENOUGH;
    program.duals.forEach((dual, at) => {
      const against = at < rows.length ? -dual : dual;
      if (against <= worst) return;
      worst = against;
      row = at;
    });
    if (row < 0) return false;
    const left = row < rows.length ? program.release(row) : program.enter([row], [1], 0);
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
    for (let at = 0; at < sheets.length; at++) {
      price[at] = sheets[at]!.cost - (endless[at]! ? 0 : Math.min(0, program.duals[rowOfSheet[at]!]!));
    }
  }

  function coveredWorth(): number {
    return rows.reduce((sum, kind) => sum + worth[kind]! * demand[kind]!, 0);
  }

  function total(): number {
    return scarce.reduce((sum, at) => sum - (price[at]! - sheets[at]!.cost) * have[at]!, coveredWorth());
  }

  function gain({ kinds: held, sheet }: Pattern): number {
    let sum = -price[sheet]!;
    for (let at = 0; at < held.length; at++) sum += worth[held[at]!]!;
    return sum;
  }

  function near(cost: number): Pattern[] {
    const gap = Math.max(cost - total(), LEAST_NEAR) + ENOUGH;
    const close = usable.flatMap((pattern) => (-gap <= gain(pattern) ? [{ pattern, gain: gain(pattern) }] : []));
    return close.sort((a, b) => b.gain - a.gain).map(({ pattern }) => pattern);
  }
}

/** One blank by itself on the cheapest sheet that it fits, of those of which there is no end; undefined where it fits none. */
function alone(
  kinds: readonly Kind[],
  kind: number,
  sheets: readonly Sold[],
  endless: readonly boolean[],
): Pattern | undefined {
  let sheet = -1;
  sheets.forEach((one, at) => {
    if (endless[at]! && fits(kinds[kind]!, one) && (sheet < 0 || one.cost < sheets[sheet]!.cost)) sheet = at;
  });
  const on = sheets[sheet];
  if (on === undefined) return undefined;
  const { w, h } = kinds[kind]!;
  const lies = w <= on.w && h <= on.h;
  return { tree: () => (lies ? leaf(kind, w, h) : leaf(kind, h, w)), kinds: [kind], sheet };
}

function fitting(pool: readonly Pattern[], demand: readonly number[], have: readonly number[]): Pattern[] {
  const count = new Int32Array(demand.length);
  return pool.filter(({ kinds, sheet }) => {
    let fit = 1 <= have[sheet]!;
    for (const kind of kinds) if (demand[kind]! < ++count[kind]!) fit = false;
    for (const kind of kinds) count[kind] = 0;
    return fit;
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
