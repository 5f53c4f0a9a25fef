import * as vscode from "vscode";
import { STARTS, type Start } from "./starts.ts";

/** "Scantling: New Build File": a build file that is whole already, untitled, to be changed into the one that is wanted. */
export function registerNewBuildFile(extensionUri: vscode.Uri): vscode.Disposable {
  return vscode.commands.registerCommand("scantling.newBuildFile", async (called: unknown) => {
    const start = STARTS.find(({ id }) => id === called) ?? (await choose());
    if (start === undefined) return;
    const file = vscode.Uri.joinPath(extensionUri, "extension", "starts", `${start.id}.scant`);
    const content = new TextDecoder().decode(await vscode.workspace.fs.readFile(file));
    const document = await vscode.workspace.openTextDocument({ language: "scantling", content });
    await vscode.window.showTextDocument(document);
  });
}

async function choose(): Promise<Start | undefined> {
  const words: Readonly<Record<Start["id"], readonly [label: string, detail: string]>> = {
    framed: [
      vscode.l10n.t("Case with a face frame and drawers"),
      vscode.l10n.t("Plywood case, solid frame, drawer boxes on side-mounted slides, in inches"),
    ],
    frameless: [
      vscode.l10n.t("Frameless case"),
      vscode.l10n.t("Panels, full-overlay fronts, a door and shelves, in millimetres"),
    ],
    openings: [
      vscode.l10n.t("Openings that stand already"),
      vscode.l10n.t("Drawers for openings as measured on site, each in three places"),
    ],
  };
  const items = STARTS.map((start) => ({ start, label: words[start.id][0], detail: words[start.id][1] }));
  const placeHolder = vscode.l10n.t("What is to be built?");
  return (await vscode.window.showQuickPick(items, { placeHolder, matchOnDetail: true }))?.start;
}
