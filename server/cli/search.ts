import type { Stepwise } from "../../language/core/stepwise.ts";
import type { CutPlan, Planning } from "../../language/plan/cut-plan.ts";
import { inTurns } from "../in-turns.ts";
import type { Io } from "./io.ts";

/** Rounds of search when no time is given: the same on every machine, so the same file gives the same plan. */
export const usualSteps = 12_000;

/** More rounds than any search comes to within the time that may be asked for. */
const unlimitedSteps = 1_000_000_000;

/** Rounds between two looks at the clock. */
const stretch = 16;

/** Searches for so many seconds, or for the usual rounds; `undefined` once the user has stopped it. */
export function searched(
  planning: Planning,
  seconds: number | undefined,
  { io, isStopped }: { readonly io: Pick<Io, "progress">; readonly isStopped: () => boolean },
): Promise<CutPlan | undefined> {
  const work = seconds === undefined ? roundsOf(planning, usualSteps) : secondsOf(planning, seconds);
  return inTurns(work, { onStep: (what) => io.progress(what), isCancelled: isStopped });
}

function* roundsOf(planning: Planning, steps: number): Stepwise<CutPlan> {
  for (let spent = 0; spent < steps; spent += stretch) {
    if (planning.advance(Math.min(stretch, steps - spent))) break;
    yield share(spent / steps);
  }
  return planning.plan();
}

function* secondsOf(planning: Planning, seconds: number): Stepwise<CutPlan> {
  const began = performance.now();
  const end = began + 1000 * seconds;
  for (let spent = 0; spent < unlimitedSteps && performance.now() <= end; spent += stretch) {
    if (planning.advance(stretch)) break;
    yield share((performance.now() - began) / (end - began));
  }
  return planning.plan();
}

function share(part: number): string {
  return `cutting plan, ${Math.min(100, Math.floor(100 * part))} %`;
}
