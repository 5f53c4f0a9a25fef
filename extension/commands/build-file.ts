import * as vscode from "vscode";

/**
 * The build file a command is for: the one it was called with, or that of the active editor. When there is neither,
 * says so to the user and returns `undefined`.
 */
export function buildFileFor(called: unknown, purpose: string): vscode.Uri | undefined {
  if (called instanceof vscode.Uri) return called;
  const document = vscode.window.activeTextEditor?.document;
  if (document?.languageId === "scantling") return document.uri;
  void vscode.window.showInformationMessage(`Open a build file (*.scant) first: ${purpose}.`);
  return undefined;
}
