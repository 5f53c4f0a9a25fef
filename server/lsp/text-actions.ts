import type { CodeAction, CodeActionParams } from "vscode-languageserver";
import { CodeActionKind } from "vscode-languageserver";
import type { Action } from "../../language/edit/actions/action.ts";
import { actionsAt } from "../../language/edit/actions/all.ts";
import type { Server } from "./feature.ts";
import { offsetAt, sceneAt } from "./scene.ts";
import { workspaceEdit } from "./workspace-edit.ts";

/** The kinds of change that are offered where nothing is wrong. */
export const textActionKinds: readonly CodeActionKind[] = [
  CodeActionKind.RefactorExtract,
  CodeActionKind.RefactorInline,
  CodeActionKind.RefactorRewrite,
];

/** Changes of the text that leave the furniture as it is, or add to it what an opening has not got yet. */
export async function textActions(
  server: Server,
  { textDocument, range }: CodeActionParams,
  isWanted: (kind: CodeActionKind) => boolean,
): Promise<readonly CodeAction[]> {
  if (!textActionKinds.some(isWanted)) return [];
  const scene = await sceneAt(server, textDocument.uri);
  if (scene === undefined) return [];
  const [start, end] = [offsetAt(scene.text, range.start), offsetAt(scene.text, range.end)];
  return actionsAt({ scene, start, end, textOf: server.session.textOf })
    .filter(({ kind }) => isWanted(kinds[kind]))
    .map(({ title, kind, edits }) => ({ title, kind: kinds[kind], edit: workspaceEdit(server, edits) }));
}

const kinds: Readonly<Record<Action["kind"], CodeActionKind>> = {
  extract: CodeActionKind.RefactorExtract,
  inline: CodeActionKind.RefactorInline,
  rewrite: CodeActionKind.RefactorRewrite,
};
