import * as vscode from "vscode";
import type { Rod } from "../preview/panel.ts";
import { buildFileFor } from "./build-file.ts";

/** "Scantling: Open the Rod". */
export function registerOpenRod(rod: Rod): vscode.Disposable {
  return vscode.commands.registerCommand("scantling.openRod", (called: unknown) => {
    const uri = buildFileFor(called, vscode.l10n.t("the rod shows what it makes"));
    if (uri !== undefined) rod.open(uri);
  });
}
