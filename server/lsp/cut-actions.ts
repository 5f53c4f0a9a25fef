import type { CodeAction, CodeActionParams } from "vscode-languageserver";
import { CodeActionKind } from "vscode-languageserver";
import type { Server } from "./feature.ts";
import { offsetAt } from "./scene.ts";
import { workspaceEdit } from "./workspace-edit.ts";

/** Of a kind of its own, so that it can be asked for by keys alone. */
export const cutActionKind: CodeActionKind = `${CodeActionKind.Refactor}.cut`;

/** Writes down what was cut of the parts that the word at the place stands for. The file is checked already. */
export async function cutActions(
  server: Server,
  { textDocument, range }: CodeActionParams,
  isWanted: (kind: CodeActionKind) => boolean,
): Promise<readonly CodeAction[]> {
  if (!isWanted(cutActionKind)) return [];
  const build = await server.session.settled(textDocument.uri);
  const text = build === undefined ? undefined : server.session.textOf(build.uri);
  if (build === undefined || text === undefined) return [];
  return build
    .cutActions(offsetAt(text, range.start), offsetAt(text, range.end))
    .map(({ title, edits }) => ({ title, kind: cutActionKind, edit: workspaceEdit(server, edits) }));
}
