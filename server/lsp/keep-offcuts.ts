import { keptOffcutsIn } from "../../language/edit/kept-offcuts.ts";
import type { KeepOffcutsParams, KeepOffcutsResult } from "../protocol.ts";
import { keepOffcuts as keepOffcutsRequest } from "../protocol.ts";
import { canonical } from "../uris.ts";
import type { Feature, Server } from "./feature.ts";
import { unwritten } from "./workspace-edit.ts";

/** Writes the offcuts that the plan of a file leaves over into a file, in place of those of an earlier plan of it. */
export const keepOffcuts: Feature = {
  capabilities: {},
  register(server) {
    server.connection.onRequest(keepOffcutsRequest, (params: KeepOffcutsParams) => keep(server, params));
  },
};

async function keep(server: Server, params: KeepOffcutsParams): Promise<KeepOffcutsResult> {
  const build = await server.session.settled(params.uri);
  const into = canonical(String(params.into));
  const target = await server.session.current(into);
  if (build === undefined || target === undefined) return null;
  const lines = (Array.isArray(params.lines) ? params.lines : []).filter((line) => typeof line === "string");
  const { leavesAs, brokenDown } = build;
  const { edits, added, takenOut, held, stay } = keptOffcutsIn(target.text, target.uri, leavesAs, lines, brokenDown);
  const counts = { added, takenOut, held, stay };
  if (edits.length === 0) return counts;
  const problem = await unwritten(server, "Keep the offcuts", edits);
  return problem === undefined ? counts : { added: 0, takenOut: 0, held, stay, problem };
}
