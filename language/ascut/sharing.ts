import { type Filling, fillingsOver, type Purse, quickFilling } from "../plan/pack/fillings.ts";
import type { Kind } from "../plan/pack/pattern-values.ts";
import { leaf } from "../plan/pack/tree.ts";
import { bestMatching } from "./matching.ts";

/** A piece of wood that parts may be cut from. Sizes are whole numbers, each grown by one kerf. */
export interface Giver {
  readonly w: number;
  readonly h: number;
  /** How each kind of part lies in it; nothing where none may be cut from it. */
  readonly kinds: readonly (Kind | undefined)[];
  /** Whether it may become several parts; else one at most. */
  readonly isSure: boolean;
  /** What each kind is worth, cut from it, and what it costs that it is touched at all: more area is always worth more. */
  readonly gains: readonly bigint[];
  readonly cost: bigint;
}

/** What each giver is cut into. */
export interface Shared {
  readonly given: readonly (Filling | undefined)[];
  /** The area of what is given, and the most that any other way could give: the same where that is proven. */
  readonly area: number;
  readonly most: number;
}

/** Turns of the search for fillings in all, and sets of fillings that are looked at: a file is judged at every key. */
const turnsInAll = 4000;
const mostNodes = 30_000;

interface Task {
  readonly givers: readonly Giver[];
  readonly demand: readonly number[];
  readonly areas: readonly number[];
  readonly purse: Purse;
}

/** Fillings by giver, with what they are worth in all. */
interface Way {
  readonly given: readonly (Filling | undefined)[];
  readonly worth: bigint;
}

/**
 * Cuts pieces into parts so that what is given is worth the most. One part from each is assigned exactly; several from
 * each are first given piece by piece, then all ways are gone through that could be better, while the turns last. Never
 * worse than one part from each, and the best of all where `area` meets `most`.
 */
export function shareOut(givers: readonly Giver[], demand: readonly number[], areas: readonly number[]): Shared {
  const task: Task = { givers, demand, areas, purse: { left: turnsInAll } };
  const single = oneEach(task);
  const areaOf = ({ given }: Way): number => given.reduce((sum, one) => sum + (one?.area ?? 0), 0);
  // What is too large for every piece is no one's to give.
  const some = demand.map((count, kind) => (givers.some((giver) => lying(giver, kind) !== undefined) ? count : 0));
  const all = some.reduce((sum, count, kind) => sum + count * areas[kind]!, 0);
  if (givers.every((giver) => !holdsTwo(giver, demand))) {
    const area = areaOf(single);
    return { given: single.given, area, most: area };
  }
  const alone = new Map([...new Set(givers)].map((giver) => [giver, fullestOf(task, giver, demand)]));
  const fullest = givers.map((giver) => alone.get(giver)!);
  const start = better(single, pieceByPiece(task, fullest));
  const mosts = fullest.map(({ most }) => most);
  const bound = Math.min(
    all,
    mosts.reduce((sum, one) => sum + one, 0),
  );
  const found = allWays(task, start, mosts, areaOf(start));
  const best = better(start, found ?? start);
  const area = areaOf(best);
  return { given: best.given, area, most: found === undefined ? Math.max(area, bound) : area };
}

function better(a: Way, b: Way): Way {
  return a.worth < b.worth ? b : a;
}

function wayOf({ givers }: Task, given: readonly (Filling | undefined)[]): Way {
  return { given, worth: givers.reduce((sum, giver, at) => sum + worthOf(giver, given[at]), 0n) };
}

function worthOf({ gains, cost }: Giver, filling: Filling | undefined): bigint {
  if (filling === undefined) return 0n;
  return filling.counts.reduce((sum, count, kind) => sum + BigInt(count) * gains[kind]!, -cost);
}

/** Exactly, with one part at most from each. */
function oneEach(task: Task): Way {
  const { givers, demand } = task;
  const columns = demand.flatMap((count, kind) => Array.from({ length: Math.min(count, givers.length) }, () => kind));
  const given = bestMatching(givers.length, columns.length, (row, column) => {
    const [giver, kind] = [givers[row]!, columns[column]!];
    return lying(giver, kind) === undefined ? undefined : giver.gains[kind]! - giver.cost;
  });
  return wayOf(
    task,
    givers.map((giver, row) => {
      const kind = columns[given[row] ?? -1];
      return kind === undefined ? undefined : single(task, giver, kind);
    }),
  );
}

function single({ demand, areas }: Task, giver: Giver, kind: number): Filling {
  const { w, h } = lying(giver, kind)!;
  return { tree: leaf(kind, w, h), counts: demand.map((_, at) => (at === kind ? 1 : 0)), area: areas[kind]! };
}

/** A part's size as it can lie in a piece. */
function lying(giver: Giver, kind: number): { readonly w: number; readonly h: number } | undefined {
  const own = giver.kinds[kind];
  if (own === undefined) return undefined;
  const { w, h, turns } = own;
  if (w <= giver.w && h <= giver.h) return { w, h };
  return turns && h <= giver.w && w <= giver.h ? { w: h, h: w } : undefined;
}

/** Whether any two parts go into a piece side by side or one above the other. */
function holdsTwo(giver: Giver, demand: readonly number[]): boolean {
  if (!giver.isSure) return false;
  const fitting = giver.kinds.flatMap((own, kind) =>
    own !== undefined && 0 < demand[kind]! && lying(giver, kind) !== undefined
      ? [{ own, more: 1 < demand[kind]! }]
      : [],
  );
  const sides = ({ w, h, turns }: Kind, of: "w" | "h"): number => (turns ? Math.min(w, h) : of === "w" ? w : h);
  return (["w", "h"] as const).some((of) => {
    const least = fitting.flatMap(({ own, more }) => (more ? [sides(own, of), sides(own, of)] : [sides(own, of)]));
    const [first, second] = least.sort((a, b) => a - b);
    return first !== undefined && second !== undefined && first + second <= giver[of];
  });
}

interface Fullest {
  readonly filling: Filling | undefined;
  /** The most area that any filling has. */
  readonly most: number;
}

/** What a piece gives when it alone is cut. */
function fullestOf(task: Task, giver: Giver, demand: readonly number[]): Fullest {
  const { areas, purse } = task;
  const fits = demand.map((count, kind) => (lying(giver, kind) === undefined ? 0 : count));
  const singles = fits.flatMap((count, kind) => (count === 0 ? [] : [single(task, giver, kind)]));
  const [one] = singles.sort((a, b) => b.area - a.area);
  if (one === undefined || !holdsTwo(giver, demand)) return { filling: one, most: one?.area ?? 0 };
  const wish = wishOf(task, giver, fits);
  const quick = quickFilling(wish) ?? one;
  const all = fits.reduce((sum, count, kind) => sum + count * areas[kind]!, 0);
  if (quick.area === all) return { filling: quick, most: all };
  const over = fillingsOver(wish, quick.area, purse);
  const filling = over?.[0] ?? quick;
  return { filling, most: over === undefined ? Math.min(all, giver.w * giver.h) : filling.area };
}

function wishOf({ areas }: Task, { w, h, kinds }: Giver, demand: readonly number[]) {
  const none = { w: w + 1, h: h + 1, turns: false };
  return { kinds: kinds.map((kind) => kind ?? none), demand, areas, sheet: { w, h } };
}

/** The pieces one after the other, in their order, each as full as what is left to cut lets it be. */
function pieceByPiece(task: Task, alone: readonly Fullest[]): Way {
  const rest = [...task.demand];
  const given = task.givers.map((giver, at) => {
    const first = alone[at]!.filling;
    const filling = first === undefined || isIn(first, rest) ? first : fullestOf(task, giver, rest).filling;
    if (filling === undefined || worthOf(giver, filling) <= 0n) return undefined;
    filling.counts.forEach((count, kind) => {
      rest[kind]! -= count;
    });
    return filling;
  });
  return wayOf(task, given);
}

function isIn({ counts }: Filling, demand: readonly number[]): boolean {
  return counts.every((count, kind) => count <= demand[kind]!);
}

/** The best of all ways that could be better than one that is known; nothing where the turns do not last for all of them. */
function allWays(task: Task, start: Way, mosts: readonly number[], known: number): Way | undefined {
  const sum = mosts.reduce((all, most) => all + most, 0);
  const choices = new Map<Giver, readonly Choice[]>();
  for (const [at, giver] of task.givers.entries()) {
    if (choices.has(giver)) continue;
    // What a piece must give at least, where all others give their most.
    const own = choicesOf(task, giver, known - (sum - mosts[at]!) - 0.5);
    if (own === undefined) return undefined;
    choices.set(giver, own);
  }
  return bestOf(
    task,
    task.givers.map((giver) => choices.get(giver)!),
    start,
  );
}

interface Choice {
  readonly filling: Filling;
  readonly worth: bigint;
}

function choicesOf(task: Task, giver: Giver, least: number): readonly Choice[] | undefined {
  const fits = task.demand.map((count, kind) => (lying(giver, kind) === undefined ? 0 : count));
  const fillings = holdsTwo(giver, task.demand)
    ? fillingsOver(wishOf(task, giver, fits), least, task.purse)
    : fits.flatMap((count, kind) => (count === 0 ? [] : [single(task, giver, kind)]));
  return fillings
    ?.map((filling) => ({ filling, worth: worthOf(giver, filling) }))
    .sort((a, b) => (a.worth < b.worth ? 1 : b.worth < a.worth ? -1 : 0));
}

/** Goes through all ways of giving each piece one of its fillings, or none, depth first; alike pieces in one order only. */
function bestOf(task: Task, choices: readonly (readonly Choice[])[], start: Way): Way | undefined {
  const { givers, demand } = task;
  const rest = [...demand];
  const given: (Filling | undefined)[] = givers.map(() => undefined);
  const highest = choices.map(([first]) => (first === undefined || first.worth < 0n ? 0n : first.worth));
  const after = highest.map((_, at) => highest.slice(at).reduce((sum, one) => sum + one, 0n));
  let best = start;
  let nodes = 0;
  const visit = (at: number, from: number, worth: bigint): void => {
    if (best.worth < worth) best = { given: [...given], worth };
    if (at === givers.length || mostNodes <= nodes++ || worth + after[at]! <= best.worth) return;
    const own = choices[at]!;
    const isAlike = givers[at + 1] === givers[at];
    for (let index = from; index < own.length; index++) {
      const choice = own[index]!;
      if (worth + choice.worth + (after[at + 1] ?? 0n) <= best.worth) break;
      if (!isIn(choice.filling, rest)) continue;
      take(choice.filling, 1);
      given[at] = choice.filling;
      visit(at + 1, isAlike ? index : 0, worth + choice.worth);
      given[at] = undefined;
      take(choice.filling, -1);
    }
    visit(at + 1, isAlike ? own.length : 0, worth);
  };
  const take = ({ counts }: Filling, times: 1 | -1): void => {
    counts.forEach((count, kind) => {
      rest[kind]! -= times * count;
    });
  };
  visit(0, 0, 0n);
  return nodes < mostNodes ? best : undefined;
}
