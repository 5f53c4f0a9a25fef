import type { CancellationToken } from "vscode-languageserver";
import { ResponseError, WorkDoneProgress } from "vscode-languageserver";
import type { Planning } from "../../language/service.ts";
import type { PlanParams, PlanResult } from "../protocol.ts";
import { plan as planRequest } from "../protocol.ts";
import type { Feature, Server } from "./feature.ts";

/** Milliseconds of search between two looks at what else has come in: typing must not feel it. */
const slice = 12;

/** Rounds between two looks at the clock. */
const stretch = 16;

/** No search goes on longer than this, whatever is asked. */
const mostSeconds = 600;

/** What a request that was called off answers with, by the protocol. */
const requestCancelled = -32800;

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
  const planning = build.startPlan();
  const seconds = Math.min(mostSeconds, Math.max(0, Number(params.seconds) || 0));
  const proven = await search(server, planning, seconds, params.workDoneToken, token);
  if (token.isCancellationRequested && !params.keepBest)
    throw new ResponseError(requestCancelled, "The plan was called off.");
  const made = planning.plan();
  return { document: build.planDocument(made), text: build.planText(made), finished: proven };
}

async function search(
  { connection }: Server,
  planning: Planning,
  seconds: number,
  progress: PlanParams["workDoneToken"],
  token: CancellationToken,
): Promise<boolean> {
  const began = performance.now();
  const end = began + 1000 * seconds;
  let version = planning.version();
  for (;;) {
    const pause = performance.now() + slice;
    while (performance.now() < pause) if (planning.advance(stretch)) return true;
    if (token.isCancellationRequested || end <= performance.now()) return false;
    if (progress !== undefined) {
      const better = version < planning.version();
      version = planning.version();
      const percentage = Math.floor((100 * (performance.now() - began)) / (end - began));
      connection.sendProgress(WorkDoneProgress.type, progress, {
        kind: "report",
        percentage,
        ...(better ? { message: "a better plan was found" } : {}),
      });
    }
    await new Promise((go) => setTimeout(go, 0));
  }
}
