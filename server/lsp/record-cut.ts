import type { Build } from "../../language/service.ts";
import type { CutTick, RecordCutParams, RecordCutResult } from "../protocol.ts";
import { recordCut as recordCutRequest } from "../protocol.ts";
import type { Feature, Server } from "./feature.ts";
import { unwritten } from "./workspace-edit.ts";

/** Writes down in a file what was cut: by the rows that were ticked, or by a line as it is typed. */
export const recordCut: Feature = {
  capabilities: {},
  register(server) {
    server.connection.onRequest(recordCutRequest, (params: RecordCutParams) => record(server, params));
  },
};

async function record(server: Server, params: RecordCutParams): Promise<RecordCutResult> {
  const build = await server.session.settled(params.uri);
  if (build === undefined) return null;
  const { edits, understood, problems } = read(build, params);
  if (edits.length === 0) return { understood: [], problems };
  const problem = await unwritten(server, "Record what was cut", edits);
  return problem === undefined ? { understood, problems } : { understood: [], problems: [problem, ...problems] };
}

function read(build: Build, { line, ticks }: RecordCutParams): ReturnType<Build["readCuts"]> {
  if (typeof line === "string") return build.readCuts(line);
  const asked = (Array.isArray(ticks) ? ticks : []).filter(
    (tick) => typeof tick?.part === "string" && typeof tick.count === "number",
  );
  if (asked.length === 0) return { edits: [], understood: [], problems: ["nothing was ticked"] };
  if (asked.some((tick) => isMoved(build, tick)))
    return { edits: [], understood: [], problems: ["the list has changed meanwhile: look again, then tick"] };
  const recording = build.recordEdit(...asked);
  if ("refused" in recording) return { edits: [], understood: [], problems: [recording.refused] };
  return { edits: recording.edits, understood: asked.map(({ part, count }) => `${count} × ${part}`), problems: [] };
}

/** Whether the mark stands on another row than the one that was shown. */
function isMoved(build: Build, { part, row }: CutTick): boolean {
  if (row === undefined) return false;
  return !build.rod().batches.some(({ rows }) => rows.some(({ mark, id }) => mark === part && id === row));
}
