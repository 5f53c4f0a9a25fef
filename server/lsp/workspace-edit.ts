import type { TextEdit, WorkspaceEdit } from "vscode-languageserver";
import type { Edit } from "../../language/core/finding.ts";
import type { Server } from "./feature.ts";
import { rangeOf } from "./places.ts";

/** Edits of open files name the version they are for, so that the editor refuses them on any other text. */
export function workspaceEdit({ session, client }: Server, edits: readonly Edit[]): WorkspaceEdit {
  const changes = [...new Set(edits.map((edit) => edit.span.uri))].map((uri) => ({
    uri: session.addressOf(uri),
    version: session.file(uri)?.version ?? null,
    edits: edits.filter((edit) => edit.span.uri === uri).map(textEdit),
  }));
  if (client().versionedEdits) {
    return {
      documentChanges: changes.map(({ uri, version, edits: own }) => ({ textDocument: { uri, version }, edits: own })),
    };
  }
  return { changes: Object.fromEntries(changes.map((change) => [change.uri, change.edits])) };
}

/** Has the editor make these edits, under a name that its undo shows; says why it did not, where it did not. */
export async function unwritten(server: Server, label: string, edits: readonly Edit[]): Promise<string | undefined> {
  const done = await server.connection.workspace.applyEdit({ label, edit: workspaceEdit(server, edits) });
  if (done.applied) return undefined;
  return `the editor did not write it${done.failureReason === undefined ? "" : `: ${done.failureReason}`}`;
}

/** One edit in the protocol's words. */
export function textEdit({ span, text }: Edit): TextEdit {
  return { range: rangeOf(span), newText: text };
}
