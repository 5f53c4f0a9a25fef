import type { RenameFilesParams, WorkspaceEdit } from "vscode-languageserver";
import { usesAfter } from "../../language/edit/uses.ts";
import { canonical } from "../uris.ts";
import { buildFilesKnown } from "./build-files.ts";
import type { Feature, Server } from "./feature.ts";
import { workspaceEdit } from "./workspace-edit.ts";

const filters = [
  { pattern: { glob: "**/*.scant", matches: "file" as const } },
  { pattern: { glob: "**/*", matches: "folder" as const } },
];

/** Lets every `use` find its file again when files or folders get other names. */
export const renameFiles: Feature = {
  capabilities: { workspace: { fileOperations: { willRename: { filters } } } },
  register(server) {
    server.connection.workspace.onWillRenameFiles((params) => edits(server, params));
  },
};

async function edits(server: Server, { files }: RenameFilesParams): Promise<WorkspaceEdit | null> {
  await buildFilesKnown(server);
  const moves = files.map(({ oldUri, newUri }) => ({ from: canonical(oldUri), to: canonical(newUri) }));
  const all = usesAfter(server.session.known(), moves, server.session.rootOf);
  return all.length === 0 ? null : workspaceEdit(server, all);
}
