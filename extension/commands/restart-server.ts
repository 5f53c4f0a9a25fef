import * as vscode from "vscode";

/** "Scantling: Restart the Language Server". */
export function registerRestartServer(restart: () => Promise<void>): vscode.Disposable {
  return vscode.commands.registerCommand("scantling.restartServer", async () => {
    try {
      await restart();
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      void vscode.window.showErrorMessage(vscode.l10n.t("The language server did not start again: {0}", reason));
    }
  });
}
