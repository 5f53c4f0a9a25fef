import * as vscode from "vscode";
import { freeName, STARTS, type Start } from "./starts.ts";

/** "Scantling: New Build File": a build file that is whole already, unsaved, to be changed into the one that is wanted. */
export function registerNewBuildFile(extensionUri: vscode.Uri): vscode.Disposable {
  return vscode.commands.registerCommand("scantling.newBuildFile", async (called: unknown) => {
    const start = STARTS.find(({ id }) => id === called) ?? (await choose());
    if (start === undefined) return;
    const file = vscode.Uri.joinPath(extensionUri, "extension", "starts", `${start.id}.scant`);
    const content = new TextDecoder().decode(await vscode.workspace.fs.readFile(file));
    await vscode.window.showTextDocument(await unsaved(start, content));
  });
}

/** With a name to be saved under in the folder, where one is open: the window would call it by its first line, quotes and all. */
async function unsaved(start: Start, content: string): Promise<vscode.TextDocument> {
  const folder = folderForNew();
  if (folder === undefined) return vscode.workspace.openTextDocument({ language: "scantling", content });
  const at = (name: string) => vscode.Uri.joinPath(folder, name);
  const name = await freeName(start.file, (each) => isTaken(at(each)));
  const document = await vscode.workspace.openTextDocument(at(name).with({ scheme: "untitled" }));
  const edit = new vscode.WorkspaceEdit();
  edit.insert(document.uri, new vscode.Position(0, 0), content);
  await vscode.workspace.applyEdit(edit);
  return document;
}

/** The folder that is worked in, or the first; none where files do not lie on a disk. */
function folderForNew(): vscode.Uri | undefined {
  const active = vscode.window.activeTextEditor?.document.uri;
  const own = active === undefined ? undefined : vscode.workspace.getWorkspaceFolder(active);
  const folder = (own ?? vscode.workspace.workspaceFolders?.[0])?.uri;
  return folder?.scheme === "file" ? folder : undefined;
}

async function isTaken(uri: vscode.Uri): Promise<boolean> {
  const address = uri.with({ scheme: "untitled" }).toString();
  if (vscode.workspace.textDocuments.some((document) => document.uri.toString() === address)) return true;
  return vscode.workspace.fs.stat(uri).then(
    () => true,
    () => false,
  );
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
