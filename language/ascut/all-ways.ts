import { type CutUp, fillingsOver } from "../plan/pack/fillings.ts";
import { type Giver, holdsTwo, isIn, lying, single, type Task, type Way, wishOf, worthOf } from "./givers.ts";

/** Sets of fillings that are looked at. */
const mostNodes = 30_000;

/** The best of all ways that could be better than one that is known; nothing where the turns do not last for all of them. */
export function allWays(task: Task, start: Way, mosts: readonly number[], known: number): Way | undefined {
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
  readonly filling: CutUp;
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
  const given: (CutUp | undefined)[] = givers.map(() => undefined);
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
  const take = ({ counts }: CutUp, times: 1 | -1): void => {
    counts.forEach((count, kind) => {
      rest[kind]! -= times * count;
    });
  };
  visit(0, 0, 0n);
  return nodes < mostNodes ? best : undefined;
}
