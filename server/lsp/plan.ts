import type { CancellationToken } from "vscode-languageserver";
import { LSPErrorCodes, ResponseError } from "vscode-languageserver";
import type { JobPlan } from "../job-plans.ts";
import { scopeOf } from "../job-plans.ts";
import { searchInSlices } from "../plan-search.ts";
import type { PlanParams, PlanResult } from "../protocol.ts";
import { plan as planRequest } from "../protocol.ts";
import type { Feature, Server } from "./feature.ts";
import { progressOn } from "./progress.ts";

/** No search goes on longer than this, whatever is asked. */
const mostSeconds = 600;

/** Works out the cutting plan of a file in slices: it can be watched and stopped, and nothing else waits for it. */
export const plan: Feature = {
  capabilities: {},
  register(server) {
    server.connection.onRequest(planRequest, (params: PlanParams, token) => planOf(server, params, token));
  },
};

async function planOf(server: Server, params: PlanParams, token: CancellationToken): Promise<PlanResult> {
  const build = await server.session.settled(params.uri);
  if (build === undefined) return null;
  const scope = scopeOf(build, params.scope);
  const job = server.plans.of(build, scope);
  const finished = await searchInSlices(job, {
    seconds: secondsIn(params.seconds),
    isCancelled: () => token.isCancellationRequested,
    onSlice: teller(server, job, params.workDoneToken),
  });
  if (token.isCancellationRequested && !params.keepBest)
    throw new ResponseError(LSPErrorCodes.RequestCancelled, "The plan was called off.");
  const made = job.plan();
  const uris = build.designs.map(({ uri }) => server.session.addressOf(uri));
  const told = build.asCut().isBegun ? { scope } : {};
  return { document: build.planDocument(made), text: build.planText(made), finished, uris, ...told };
}

/** Seconds as they were asked for, within what is allowed; what makes no sense is no time. */
export function secondsIn(asked: unknown): number {
  return Math.min(mostSeconds, Math.max(0, Number(asked) || 0));
}

function teller(
  { connection }: Server,
  job: JobPlan,
  progress: PlanParams["workDoneToken"],
): (percent: number) => void {
  const say = progressOn(connection, progress);
  let version = job.version();
  return (percent) => {
    const better = version < job.version();
    version = job.version();
    say(percent, better ? "a better plan was found" : undefined);
  };
}
