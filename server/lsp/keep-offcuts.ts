import { keptOffcutsIn } from "../../language/edit/kept-offcuts.ts";
import type { KeepOffcutsParams, KeepOffcutsResult } from "../protocol.ts";
import { keepOffcuts as keepOffcutsRequest } from "../protocol.ts";
import { canonical } from "../uris.ts";
import type { Feature, Server } from "./feature.ts";
import { workspaceEdit } from "./workspace-edit.ts";

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
  const label = "Keep the offcuts";
  const done = await server.connection.workspace.applyEdit({ label, edit: workspaceEdit(server, edits) });
  if (done.applied) return counts;
  const reason = done.failureReason === undefined ? "" : `: ${done.failureReason}`;
  return { added: 0, takenOut: 0, held, stay, problem: `the editor did not write it${reason}` };
}
