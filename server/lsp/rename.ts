import type { Range, RenameParams, TextDocumentPositionParams, WorkspaceEdit } from "vscode-languageserver";
import { ErrorCodes, ResponseError } from "vscode-languageserver";
import { renamed } from "../../language/edit/rename.ts";
import type { Feature, Server } from "./feature.ts";
import { buildsWith, nameAt } from "./names.ts";
import { rangeOf } from "./places.ts";
import { workspaceEdit } from "./workspace-edit.ts";

/** Changes a name wherever it stands, in every file of the open folders. */
export const rename: Feature = {
  capabilities: { renameProvider: { prepareProvider: true } },
  register(server) {
    server.connection.onPrepareRename((params) => prepare(server, params));
    server.connection.onRenameRequest((params) => edits(server, params));
  },
};

async function prepare(
  server: Server,
  at: TextDocumentPositionParams,
): Promise<{ range: Range; placeholder: string } | null> {
  const found = await nameAt(server, at);
  return found === undefined ? null : { range: rangeOf(found.name.span), placeholder: found.name.text };
}

async function edits(server: Server, params: RenameParams): Promise<WorkspaceEdit | null> {
  const found = await nameAt(server, params);
  if (found === undefined) return null;
  const builds = await buildsWith(server, found);
  const renaming = renamed({ builds, textOf: server.session.textOf }, found.name, params.newName);
  if ("refused" in renaming) throw new ResponseError(ErrorCodes.InvalidRequest, renaming.refused);
  return workspaceEdit(server, renaming.edits);
}
