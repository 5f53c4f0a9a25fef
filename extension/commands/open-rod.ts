import * as vscode from "vscode";
import type { Rod } from "../preview/panel.ts";
import { buildFileFor } from "./build-file.ts";

/** "Scantling: Open the Rod"; a lens that leads to where something is drawn names the drawing and the item of it as well. */
export function registerOpenRod(rod: Rod): vscode.Disposable {
  return vscode.commands.registerCommand("scantling.openRod", (called: unknown, drawing: unknown, item: unknown) => {
    const uri = buildFileFor(called, vscode.l10n.t("the rod shows what it makes"), rod);
    if (uri === undefined) return;
    // Menus give things of their own behind the address.
    if (typeof drawing === "string" && typeof item === "string") rod.openDrawn(uri, { drawing, item });
    else rod.open(uri);
  });
}
