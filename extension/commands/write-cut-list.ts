import * as vscode from "vscode";
import type { TextFile } from "../../server/protocol.ts";
import { documentAt } from "../documents.ts";
import type { Feed } from "../feed.ts";
import type { Rod } from "../preview/panel.ts";
import { buildFileFor } from "./build-file.ts";
import { folderAt, reasonOf, saved } from "./folder.ts";
import { noticeFor, openLabel, writeAll } from "./write-files.ts";

/** "Scantling: Write Cut List": what is on the rod as files beside the build file. */
export function registerWriteCutList(rod: Rod, feed: Feed): vscode.Disposable {
  return vscode.commands.registerCommand("scantling.writeCutList", async (called: unknown) => {
    const uri = buildFileFor(called, vscode.l10n.t("the cut list is written from it and beside it"), rod);
    if (uri !== undefined) await writeCutList(uri, feed);
  });
}

async function writeCutList(called: vscode.Uri, feed: Feed): Promise<void> {
  const uri = called.scheme === "untitled" ? await saved(called, NEEDS_SAVING()) : called;
  if (uri === undefined) return;
  let files: readonly TextFile[] | undefined;
  let errors = 0;
  try {
    await documentAt(uri);
    files = await feed.cutList(uri.toString());
    errors = (await feed.rod(uri.toString()))?.view.counts.errors ?? 0;
  } catch (error) {
    void vscode.window.showErrorMessage(vscode.l10n.t("The cut list could not be made: {0}", reasonOf(error)));
    return;
  }
  if (files === undefined || files.length === 0) {
    void vscode.window.showWarningMessage(vscode.l10n.t("The language server has no cut list of this file."));
    return;
  }
  const folder = vscode.Uri.joinPath(uri, "..");
  const outcome = await writeAll(files, folderAt(folder));
  const { t } = vscode.l10n;
  const notice = noticeFor(outcome, errors, t);
  const labelOf = (file: string) => openLabel(file, t);
  const show = notice.failed ? vscode.window.showErrorMessage : vscode.window.showInformationMessage;
  const chosen = await show(notice.text, ...notice.open.map(labelOf));
  const name = notice.open.find((each) => labelOf(each) === chosen);
  if (name !== undefined) await vscode.commands.executeCommand("vscode.open", vscode.Uri.joinPath(folder, name));
}

const NEEDS_SAVING = () => vscode.l10n.t("Save the build file first: its cut list is written beside it.");
