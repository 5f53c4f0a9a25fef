import { benchSections } from "../../language/papers/bench/bench.ts";
import { paperDesk } from "../../language/papers/desk.ts";
import type { Build } from "../../language/service.ts";
import type { JobPlan } from "../job-plans.ts";
import { scopeOf } from "../job-plans.ts";
import { searchInSlices } from "../plan-search.ts";
import type { BenchAnswer, BenchParams, BenchResult, PlanSearchedParams, SearchState } from "../protocol.ts";
import { bench as benchRequest, planSearched } from "../protocol.ts";
import type { Feature, Server } from "./feature.ts";
import { secondsIn } from "./plan.ts";
import { tell } from "./tell.ts";

/** Milliseconds between two words of how the search is getting on. */
const apart = 400;

/** One search at a time, the one that the rod shows. */
interface Search {
  readonly uri: string;
  readonly key: string;
  /** Seconds that may be spent on it in all. */
  seconds: number;
  isOver: boolean;
}

/**
 * Gives the parts of the rod that are open. While the plan is among them it is searched for behind everything else, and
 * the editor is told now and then how that gets on; it asks again when there is something better to show.
 */
export const bench: Feature = {
  capabilities: {},
  register(server) {
    let running: Search | undefined;
    const stop = (): void => {
      if (running !== undefined) running.isOver = true;
      running = undefined;
    };
    server.connection.onRequest(benchRequest, async (params: BenchParams): Promise<BenchResult> => {
      const build = await server.session.settled(params.uri);
      if (build === undefined) return null;
      const wantsPlan = params.parts.includes("plan") || params.parts.includes("buying");
      const scope = scopeOf(build, params.scope);
      const job = wantsPlan ? server.plans.of(build, scope) : undefined;
      const seconds = secondsIn(params.seconds);
      if (job === undefined || job.isFinished() || seconds <= job.spent.seconds) stop();
      else if (running?.isOver === false && running.key === job.key && running.uri === build.uri)
        running.seconds = seconds;
      else {
        stop();
        running = { uri: build.uri, key: job.key, seconds, isOver: false };
        const own = running;
        search(server, job, own).catch((error: unknown) => {
          own.isOver = true;
          const why = error instanceof Error ? error.stack : String(error);
          tell(() => server.connection.console.error(`The search for a cutting plan failed.\n${why}`));
        });
      }
      return answer(build, job, { ...params, scope }, stateOf(job, running));
    });
    server.session.onClosed((file) => {
      if (running?.uri === file.uri) stop();
    });
  },
};

function answer(
  build: Build,
  job: JobPlan | undefined,
  { parts, sheet, scope }: BenchParams,
  search: SearchState,
): BenchAnswer {
  const desk = paperDesk(build, job?.plan());
  const order = { parts, sheet, left: scope === "left" ? build.left() : undefined };
  return { sections: benchSections(desk, order), search, ...(build.asCut().isBegun ? { scope } : {}) };
}

function stateOf(job: JobPlan | undefined, running: Search | undefined): SearchState {
  if (job === undefined || job.isFinished()) return { state: "finished", percent: 100 };
  if (running === undefined || running.isOver) return { state: "halted", percent: 100 };
  return { state: "searching", percent: percentOf(job, running) };
}

function percentOf(job: JobPlan, { seconds }: Search): number {
  return Math.min(100, Math.floor((100 * job.spent.seconds) / Math.max(seconds, 0.001)));
}

async function search({ connection, session }: Server, job: JobPlan, own: Search): Promise<void> {
  let [version, told] = [job.version(), performance.now()];
  const say = (state: SearchState["state"]): void => {
    const better = version < job.version();
    [version, told] = [job.version(), performance.now()];
    const params: PlanSearchedParams = { uri: session.addressOf(own.uri), state, percent: percentOf(job, own), better };
    tell(() => connection.sendNotification(planSearched, params));
  };
  // What the answer says is said there; the search begins behind it.
  await new Promise((go) => setTimeout(go, 0));
  const isFinished = await searchInSlices(job, {
    seconds: Number.MAX_SAFE_INTEGER / 1000,
    isCancelled: () => own.isOver || own.seconds <= job.spent.seconds,
    onSlice: () => {
      if (apart <= performance.now() - told) say("searching");
    },
  });
  if (own.isOver) return;
  own.isOver = true;
  say(isFinished ? "finished" : "halted");
}
