import * as vscode from "vscode";
import type { TextFile } from "../../server/protocol.ts";
import type { Feed } from "../feed.ts";
import { createNonce } from "../preview/page-html.ts";
import { buildFileFor } from "./build-file.ts";
import { noticeFor, openLabel, writeAll } from "./write-files.ts";

/** "Scantling: Write Cut List": what is on the rod as files beside the build file. */
export function registerWriteCutList(feed: Feed): vscode.Disposable {
  return vscode.commands.registerCommand("scantling.writeCutList", async (called: unknown) => {
    const uri = buildFileFor(called, vscode.l10n.t("the cut list is written from it and beside it"));
    if (uri !== undefined) await writeCutList(uri, feed);
  });
}

async function writeCutList(called: vscode.Uri, feed: Feed): Promise<void> {
  const uri = called.scheme === "untitled" ? await saved(called) : called;
  if (uri === undefined) return;
  let files: readonly TextFile[] | undefined;
  let errors = 0;
  try {
    await vscode.workspace.openTextDocument(uri);
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
  const outcome = await writeAll(files, {
    read: (name) => readText(vscode.Uri.joinPath(folder, name)),
    mayReplace: (name) => mayReplace(vscode.Uri.joinPath(folder, name)),
    write: (name, text) => writeWhole(folder, name, text),
  });
  const { t } = vscode.l10n;
  const notice = noticeFor(outcome, errors, t);
  const labelOf = (file: string) => openLabel(file, t);
  const show = notice.failed ? vscode.window.showErrorMessage : vscode.window.showInformationMessage;
  const chosen = await show(notice.text, ...notice.open.map(labelOf));
  const name = notice.open.find((each) => labelOf(each) === chosen);
  if (name !== undefined) await vscode.commands.executeCommand("vscode.open", vscode.Uri.joinPath(folder, name));
}

/** Where an untitled build file was saved, since its cut list is written beside it; `undefined` if it was not. */
async function saved(untitled: vscode.Uri): Promise<vscode.Uri | undefined> {
  const save = vscode.l10n.t("Save As…");
  const message = vscode.l10n.t("Save the build file first: its cut list is written beside it.");
  if ((await vscode.window.showInformationMessage(message, save)) !== save) return undefined;
  return vscode.workspace.saveAs(untitled);
}

/** `undefined` if there is no such file. */
async function readText(uri: vscode.Uri): Promise<string | undefined> {
  try {
    return new TextDecoder("utf-8", { ignoreBOM: true }).decode(await vscode.workspace.fs.readFile(uri));
  } catch (error) {
    if (error instanceof vscode.FileSystemError && error.code === "FileNotFound") return undefined;
    throw error;
  }
}

async function mayReplace(uri: vscode.Uri): Promise<boolean> {
  const open = vscode.workspace.textDocuments.find((document) => document.uri.toString() === uri.toString());
  if (open === undefined || !open.isDirty) return true;
  const name = uri.path.slice(uri.path.lastIndexOf("/") + 1);
  const detail = vscode.l10n.t(
    "If it is replaced, the file will differ from what its editor shows until that is reverted.",
  );
  const replace = vscode.l10n.t("Replace");
  const chosen = await vscode.window.showWarningMessage(
    vscode.l10n.t("{0} has unsaved edits.", name),
    { modal: true, detail },
    replace,
  );
  return chosen === replace;
}

/** Whole or not at all: a reader never finds half a file under the name. */
async function writeWhole(folder: vscode.Uri, name: string, text: string): Promise<void> {
  const temporary = vscode.Uri.joinPath(folder, `.${name}.${createNonce().slice(0, 8)}.tmp`);
  try {
    await vscode.workspace.fs.writeFile(temporary, new TextEncoder().encode(text));
    await vscode.workspace.fs.rename(temporary, vscode.Uri.joinPath(folder, name), { overwrite: true });
  } catch (error) {
    await vscode.workspace.fs.delete(temporary).then(undefined, () => undefined);
    throw error;
  }
}

function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}
