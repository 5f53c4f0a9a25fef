import * as vscode from "vscode";
import { openBuildFiles } from "./documents.ts";

/** Tells the window what there is, so that its menus offer only what can be done. */
export function createContexts(): vscode.Disposable {
  let last: boolean | undefined;
  const tell = () => {
    const now = 0 < openBuildFiles().length;
    if (now !== last) set("scantling.hasBuildFile", now);
    last = now;
  };
  set("scantling.isRunning", "yes");
  tell();
  return vscode.Disposable.from(
    vscode.workspace.onDidOpenTextDocument(tell),
    vscode.workspace.onDidCloseTextDocument(tell),
  );
}

function set(key: string, value: boolean | "yes"): void {
  void vscode.commands.executeCommand("setContext", key, value);
}
