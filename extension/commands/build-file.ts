import * as vscode from "vscode";
import type { Rod } from "../preview/panel.ts";

/**
 * The build file a command is for: the one it was called with, that of the active editor, or, where the active tab is none
 * of text, the one on the rod if that is looked at, the one in view, or the last one opened. When there is none, says so
 * to the user and returns `undefined`.
 */
export function buildFileFor(called: unknown, purpose: string, rod: Rod): vscode.Uri | undefined {
  if (called instanceof vscode.Uri) return called;
  // A lens of the language server names the file by its address.
  if (typeof called === "string" && /^[a-z][a-z0-9+.-]*:/i.test(called)) return vscode.Uri.parse(called);
  const { activeTextEditor, visibleTextEditors } = vscode.window;
  const document = activeTextEditor?.document;
  if (document?.languageId === "scantling") return document.uri;
  const onRod = rod.inFront();
  if (onRod !== undefined) return onRod;
  const behind =
    activeTextEditor === undefined ? [...visibleTextEditors.map((editor) => editor.document), ...inTabs()] : [];
  const found = behind.find(({ languageId }) => languageId === "scantling");
  if (found !== undefined) return found.uri;
  void vscode.window.showInformationMessage(vscode.l10n.t("Open a build file (*.scant) first: {0}.", purpose));
  return undefined;
}

/** The open documents that have a tab, the last one opened first. */
function inTabs(): readonly vscode.TextDocument[] {
  const tabs = vscode.window.tabGroups.all.flatMap((group) => group.tabs).reverse();
  const addresses = tabs.flatMap(({ input }) => (input instanceof vscode.TabInputText ? [input.uri.toString()] : []));
  return addresses.flatMap((address) =>
    vscode.workspace.textDocuments.filter((document) => document.uri.toString() === address),
  );
}
