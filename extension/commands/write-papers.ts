import * as vscode from "vscode";
import type { PaperKind } from "../../server/protocol.ts";
import { documentAt } from "../documents.ts";
import type { Feed } from "../feed.ts";
import type { Rod } from "../preview/panel.ts";
import { buildFileFor } from "./build-file.ts";
import { baseName, folderAt, reasonOf, saved } from "./folder.ts";
import { newFileOf, paperChoices, papersFolder } from "./paper-kinds.ts";
import { papersNotice } from "./papers-notice.ts";
import { reporter } from "./plan-cuts.ts";
import { type Outcome, writeAll } from "./write-files.ts";

/** Where the server runs: a browser writes no PDF. */
export type Host = "desktop" | "browser";

/** "Scantling: Write Shop Papers": what lies on the bench, as files in a folder beside the build file. */
export function registerWritePapers(rod: Rod, feed: Feed, host: Host): vscode.Disposable {
  let last: readonly PaperKind[] = ["packet"];
  return vscode.commands.registerCommand("scantling.writePapers", async (called: unknown) => {
    const found = buildFileFor(called, vscode.l10n.t("its papers are written beside it"), rod);
    const needsSaving = vscode.l10n.t("Save the build file first: its papers are written beside it.");
    const uri = found?.scheme === "untitled" ? await saved(found, needsSaving) : found;
    if (uri === undefined) return;
    const kinds = await chooseKinds(host, last);
    if (kinds === undefined || kinds.length === 0) return;
    last = kinds;
    await writePapers(uri, kinds, feed);
  });
}

async function chooseKinds(host: Host, last: readonly PaperKind[]): Promise<readonly PaperKind[] | undefined> {
  const choices = paperChoices(vscode.l10n.t);
  const offered = choices.filter(({ pdf }) => host === "desktop" || !pdf);
  const items: vscode.QuickPickItem[] = offered.map(({ kind, label, description }) => ({
    label,
    description,
    picked: last.includes(kind),
  }));
  const missing = choices.filter((choice) => !offered.includes(choice)).map(({ label }) => label);
  if (0 < missing.length) {
    const label = vscode.l10n.t("On the desktop only, since they are PDF: {0}", missing.join("; "));
    items.push({ label, kind: vscode.QuickPickItemKind.Separator });
  }
  const title = vscode.l10n.t("Shop Papers");
  const placeHolder = vscode.l10n.t("Which papers are wanted?");
  const chosen = await vscode.window.showQuickPick(items, {
    canPickMany: true,
    ignoreFocusOut: true,
    title,
    placeHolder,
  });
  return chosen?.flatMap((item) => choices.find(({ label }) => label === item.label)?.kind ?? []);
}

async function writePapers(uri: vscode.Uri, kinds: readonly PaperKind[], feed: Feed): Promise<void> {
  const { t } = vscode.l10n;
  const folder = vscode.Uri.joinPath(uri, "..", papersFolder(baseName(uri)));
  const title = t("Shop papers of {0}", baseName(uri));
  const options = { location: vscode.ProgressLocation.Notification, cancellable: true, title };
  try {
    await documentAt(uri);
    const errors = (await feed.rod(uri.toString()))?.view.counts.errors ?? 0;
    const outcome = await vscode.window.withProgress(options, async (progress, token) => {
      const onProgress = reporter(progress);
      const made = await feed.papers(uri.toString(), kinds, { token, onProgress }).catch((error: unknown) => {
        if (token.isCancellationRequested) return undefined;
        throw error;
      });
      if (token.isCancellationRequested || made === undefined) return "none";
      await vscode.workspace.fs.createDirectory(folder);
      return writeAll(made.files.map(newFileOf), {
        ...folderAt(folder),
        isCancelled: () => token.isCancellationRequested,
      });
    });
    if (outcome === "none") void vscode.window.showInformationMessage(t("No papers were written."));
    else await notify(folder, outcome, errors);
  } catch (error) {
    void vscode.window.showErrorMessage(t("The papers could not be written: {0}", reasonOf(error)));
  }
}

async function notify(folder: vscode.Uri, outcome: Outcome, errors: number): Promise<void> {
  const { t } = vscode.l10n;
  const notice = papersNotice(outcome, baseName(folder), errors, t);
  const [open, show] = [t("Open {0}", notice.open ?? ""), t("Show in the Explorer")];
  const say = notice.failed ? vscode.window.showErrorMessage : vscode.window.showInformationMessage;
  const chosen = await say(notice.text, ...(notice.open === undefined ? [] : [open]), show);
  if (chosen === show) await vscode.commands.executeCommand("revealInExplorer", folder);
  if (chosen === open && notice.open !== undefined) await openPaper(vscode.Uri.joinPath(folder, notice.open));
}

/** With the program that the machine opens such files with, where the editor has none for them and stands on it. */
async function openPaper(file: vscode.Uri): Promise<void> {
  const isHere = file.scheme === "file" && vscode.env.remoteName === undefined;
  if (isHere && vscode.env.uiKind === vscode.UIKind.Desktop && file.path.endsWith(".pdf")) {
    await vscode.env.openExternal(file);
  } else {
    await vscode.commands.executeCommand("vscode.open", file);
  }
}
