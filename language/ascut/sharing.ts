import { type CutUp, fillingsOver, quickFilling } from "../plan/pack/fillings.ts";
import { allWays } from "./all-ways.ts";
import { type Giver, holdsTwo, isIn, lying, single, type Task, type Way, wayOf, wishOf, worthOf } from "./givers.ts";
import { bestMatching } from "./matching.ts";

/** What each giver is cut into. */
export interface Shared {
  readonly given: readonly (CutUp | undefined)[];
  /** The area of what is given, and the most that any other way could give: the same where that is proven. */
  readonly area: number;
  readonly most: number;
}

/** Turns of the search for fillings in all: a file is judged at every key. */
const turnsInAll = 8000;

/**
 * Cuts pieces into parts so that what is given is worth the most. One part from each is assigned exactly; several from
 * each are first given piece by piece, then all ways are gone through that could be better, while the turns last. Never
 * worse than one part from each, and the best of all where `area` meets `most`.
 */
export function shareOut(givers: readonly Giver[], demand: readonly number[], areas: readonly number[]): Shared {
  const task: Task = { givers, demand, areas, purse: { left: turnsInAll } };
  const least = oneEach(task);
  const areaOf = ({ given }: Way): number => given.reduce((sum, one) => sum + (one?.area ?? 0), 0);
  // What is too large for every piece is no one's to give.
  const some = demand.map((count, kind) => (givers.some((giver) => lying(giver, kind) !== undefined) ? count : 0));
  const all = some.reduce((sum, count, kind) => sum + count * areas[kind]!, 0);
  if (givers.every((giver) => !holdsTwo(giver, demand))) {
    const area = areaOf(least);
    return { given: least.given, area, most: area };
  }
  const alone = new Map([...new Set(givers)].map((giver) => [giver, fullestOf(task, giver, demand)]));
  const fullest = givers.map((giver) => alone.get(giver)!);
  const start = better(least, pieceByPiece(task, fullest));
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

interface Fullest {
  readonly filling: CutUp | undefined;
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
