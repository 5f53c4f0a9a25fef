import { cutList, markedParts } from "../language/plan/cut-list.ts";
import type { CutPlan, PlanSearch } from "../language/plan/cut-plan.ts";
import { planKey, startSearch, unsizedIn } from "../language/plan/cut-plan.ts";
import { stockProblems } from "../language/plan/problems.ts";
import type { Build } from "../language/service.ts";
import type { ToPlan } from "../language/view/left.ts";
import type { PlanScope } from "./protocol.ts";

/** The search for the plan of a file, carried on from build to build while parts and stock are the same. */
export interface JobPlan {
  readonly key: string;
  /** The best plan so far, with the parts of the build that it was asked for. */
  plan(): CutPlan;
  /** Searches for so many rounds; true when nothing is left to find, then and ever after. */
  advance(rounds: number): boolean;
  readonly isFinished: () => boolean;
  version(): number;
  /** Seconds of search that have been spent on it. */
  readonly spent: { seconds: number };
}

/** The plans of the files that were lately asked for. */
export interface JobPlans {
  /**
   * The search for what a build cuts, in all or what is left of it: the one under way where nothing that it rests on has
   * changed, else a new one.
   */
  of(build: Build, scope: PlanScope): JobPlan;
}

/** Which plan is meant: what is asked for, or else what is left to cut; the whole job while nothing is recorded as cut. */
export function scopeOf(build: Build, asked: unknown): PlanScope {
  return asked === "whole" || !build.asCut().isBegun ? "whole" : "left";
}

/** Searches that are kept: each holds its whole state in memory. */
const most = 4;

interface Kept {
  readonly key: string;
  readonly search: PlanSearch;
  readonly spent: { seconds: number };
  isFinished: boolean;
}

export function createJobPlans(): JobPlans {
  const kept = new Map<string, Kept>();
  return {
    of(build, scope) {
      const { context, model, rows } = scope === "left" ? build.left().toPlan() : wholeOf(build);
      const name = `${scope} ${build.uri}`;
      const problems = stockProblems(context, model, rows);
      const key = planKey(problems);
      const last = kept.get(name);
      const job: Kept =
        last?.key === key
          ? last
          : { key, search: startSearch(problems), spent: { seconds: 0 }, isFinished: problems.length === 0 };
      kept.delete(name);
      kept.set(name, job);
      for (const old of [...kept.keys()].slice(0, Math.max(0, kept.size - most))) kept.delete(old);
      return {
        key,
        spent: job.spent,
        plan: () => ({ stocks: job.search.found(context, problems), unsized: unsizedIn(problems, rows) }),
        advance: (rounds) => {
          job.isFinished ||= job.search.advance(rounds);
          return job.isFinished;
        },
        isFinished: () => job.isFinished,
        version: () => job.search.version(),
      };
    },
  };
}

function wholeOf(build: Build): ToPlan {
  const { context, model } = build.derivation;
  return { context, model, rows: markedParts(cutList(model)) };
}
