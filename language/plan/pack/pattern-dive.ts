import { type Pattern, type Relaxed, relaxPatterns, type Task } from "./pattern-relax.ts";
import type { Random } from "./random.ts";

const WHOLE = 0.999;
/** What the share of a sheet that a pattern fills counts for beside its amount: full ones first leave room for the rest. */
const FILLED = 3;
/** Fixings that may fail in all, and from one step before that step is given up as well. */
const MOST_FAILS = 10;
const FAILS_EACH = 2;
/** A relaxation that leaves so much of a sheet is good enough to go on from before it is priced to its end. */
const SPARE = 0.02;
/** A relaxation whose pricing was cut short may be so much too high. */
const HOPE = 0.05;
/** Guards sums of costs. */
const SPECK = 1e-6;

/** What a dive is after: all that is wanted, for this cost at most, from so many of each sheet. */
export type Aim = { readonly demand: readonly number[]; readonly have: readonly number[]; readonly cost: number };

/**
 * Rounds a relaxation to whole sheets: fixes a pattern that is used much and full, more or less by chance (`noise`),
 * relaxes the rest anew, and takes another one where the rest costs too much (diving with column generation;
 * Sadykov and others 2019). Answers the most patterns that were fixed at once. Yields after each short piece of work.
 */
export function* dive(
  task: Task,
  { demand, have, cost }: Aim,
  root: Relaxed,
  noise: number,
  random: Random,
): Generator<undefined, readonly Pattern[]> {
  let level: Level | undefined = {
    above: undefined,
    fixed: [],
    rest: { demand, have, cost },
    now: root,
    used: root.used,
    fails: 0,
  };
  let deepest = level;
  for (let fails = 0; level !== undefined && fails < MOST_FAILS; ) {
    const { fixed, rest, now, used }: Level = level;
    if (deepest.fixed.length < fixed.length) deepest = level;
    const whole = used.filter(({ amount }) => WHOLE < amount).map(({ pattern }) => pattern);
    const next = whole.length !== 0 ? whole : mostPromising(task, used, noise, random);
    if (next.length === 0 || FAILS_EACH < level.fails) {
      level = level.above;
      continue;
    }
    const after = without(task, rest, next);
    if (after.demand.every((count) => count === 0) || !canGoOn(task, after))
      return [...fixed, ...affordable(task, rest, next)];
    const relaxed: Relaxed = yield* relaxPatterns(
      task,
      after.demand,
      after.have,
      now.near(rest.cost),
      after.cost - SPARE,
    );
    // What fails here is not tried again, nor is what led here once this level is given up.
    level.used = whole.length !== 0 ? [] : used.filter(({ pattern }) => pattern !== next[0]);
    if (after.cost + (relaxed.complete ? SPECK : HOPE) < relaxed.value) {
      level.fails++;
      fails++;
      continue;
    }
    level = { above: level, fixed: [...fixed, ...next], rest: after, now: relaxed, used: relaxed.used, fails: 0 };
  }
  return deepest.fixed;
}

/** A step of a dive: what is fixed, what is still wanted, and what may be fixed next. */
type Level = {
  readonly above: Level | undefined;
  readonly fixed: readonly Pattern[];
  readonly rest: Aim;
  readonly now: Relaxed;
  used: Relaxed["used"];
  fails: number;
};

/** Whether what is left of cost and sheets is still one sheet. */
function canGoOn({ sheets }: Task, { have, cost }: Aim): boolean {
  return sheets.some((sheet, at) => 1 <= have[at]! && sheet.cost <= cost + SPECK);
}

/** The first of some patterns, as far as cost and sheets go. */
function affordable(task: Task, aim: Aim, patterns: readonly Pattern[]): Pattern[] {
  const taken: Pattern[] = [];
  for (const pattern of patterns) {
    const { cost, have } = without(task, aim, [...taken, pattern]);
    if (-SPECK <= cost && 0 <= have[pattern.sheet]!) taken.push(pattern);
  }
  return taken;
}

function mostPromising({ kinds, sheets }: Task, used: Relaxed["used"], noise: number, random: Random): Pattern[] {
  let most = 0;
  let found: Pattern | undefined;
  for (const { pattern, amount } of used) {
    const sheet = sheets[pattern.sheet]!;
    const area = pattern.kinds.reduce((sum, kind) => sum + kinds[kind]!.w * kinds[kind]!.h, 0);
    const key = amount + (FILLED * area) / (sheet.w * sheet.h) + noise * random.unit();
    if (key <= most) continue;
    most = key;
    found = pattern;
  }
  return found === undefined ? [] : [found];
}

function without({ sheets }: Task, { demand, have, cost }: Aim, patterns: readonly Pattern[]): Aim {
  const rest = demand.slice();
  const left = have.slice();
  let less = cost;
  for (const { kinds, sheet } of patterns) {
    for (const kind of kinds) if (0 < rest[kind]!) rest[kind]!--;
    left[sheet]!--;
    less -= sheets[sheet]!.cost;
  }
  return { demand: rest, have: left, cost: less };
}
