import * as vscode from "vscode";
import type { PlanScope } from "../../server/protocol.ts";
import { documentAt, warnIfLost } from "../documents.ts";
import type { Feed } from "../feed.ts";
import { isPlanScope } from "../preview/bench-messages.ts";
import type { Rod } from "../preview/panel.ts";
import { buildFileFor } from "./build-file.ts";
import { reasonOf } from "./folder.ts";
import { keptNotice } from "./kept-notice.ts";

/** "Scantling: Keep the Offcuts": writes what the plan leaves over into the build file, or into one that it uses. */
export function registerKeepOffcuts(rod: Rod, feed: Feed): vscode.Disposable {
  return vscode.commands.registerCommand("scantling.keepOffcuts", async (called: unknown, scope: unknown) => {
    const uri = buildFileFor(called, vscode.l10n.t("its plan says what is left over"), rod);
    if (uri === undefined) return;
    try {
      await keep(uri, isPlanScope(scope) ? scope : undefined, feed);
    } catch (error) {
      void vscode.window.showErrorMessage(vscode.l10n.t("The offcuts could not be kept: {0}", reasonOf(error)));
    }
  });
}

async function keep(uri: vscode.Uri, scope: PlanScope | undefined, feed: Feed): Promise<void> {
  await documentAt(uri);
  const plan = await feed.plan(uri.toString(), { seconds: 0, scope });
  const lines = plan?.document.keep ?? [];
  if (plan === undefined || lines.length === 0) {
    void vscode.window.showInformationMessage(
      vscode.l10n.t("The plan leaves no offcut of a new sheet or board that is worth keeping."),
    );
    return;
  }
  const chosen = await chooseLines(lines);
  if (chosen === undefined || chosen.length === 0) return;
  const target = await chooseFile(plan.uris);
  if (target === undefined) return;
  const document = await documentAt(target);
  const { text, failed } = keptNotice(
    await feed.keepOffcuts(uri.toString(), { into: target.toString(), lines: chosen }),
    vscode.l10n.t,
  );
  if (failed) throw new Error(text);
  await warnIfLost(document);
  const end = document.lineAt(document.lineCount - 1).range.end;
  await vscode.window.showTextDocument(document, { selection: new vscode.Range(end, end), preview: false });
  void vscode.window.showInformationMessage(text);
}

async function chooseLines(lines: readonly string[]): Promise<readonly string[] | undefined> {
  const title = vscode.l10n.t("Offcuts Worth Keeping");
  const placeHolder = vscode.l10n.t("Write them down once they are cut: from then on every plan counts them as stock.");
  const items = lines.map((label) => ({ label, picked: true }));
  const chosen = await vscode.window.showQuickPick(items, {
    canPickMany: true,
    ignoreFocusOut: true,
    title,
    placeHolder,
  });
  return chosen?.map(({ label }) => label);
}

/** Where they are written: the build file, or the rack or another file that it uses. */
async function chooseFile(uris: readonly string[]): Promise<vscode.Uri | undefined> {
  const files = uris.map((each) => vscode.Uri.parse(each));
  if (files.length < 2) return files[0];
  const title = vscode.l10n.t("Where Are They Kept?");
  const items = files.map((uri) => ({ label: vscode.workspace.asRelativePath(uri), uri }));
  return (await vscode.window.showQuickPick(items, { title }))?.uri;
}
