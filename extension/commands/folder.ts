import * as vscode from "vscode";
import { createNonce } from "../preview/page-html.ts";
import { bytesOf, type Folder } from "./write-files.ts";

/** A folder as `writeAll` wants it: asks before it replaces what has unsaved edits, and writes whole files or none. */
export function folderAt(folder: vscode.Uri): Folder {
  return {
    read: (name) => readBytes(vscode.Uri.joinPath(folder, name)),
    mayReplace: (name) => mayReplace(vscode.Uri.joinPath(folder, name)),
    write: (name, text) => writeWhole(folder, name, bytesOf(text)),
  };
}

/** Where an untitled build file was saved, since what is made of it lies beside it; `undefined` if it was not. */
export async function saved(untitled: vscode.Uri, message: string): Promise<vscode.Uri | undefined> {
  const save = vscode.l10n.t("Save As…");
  if ((await vscode.window.showInformationMessage(message, save)) !== save) return undefined;
  return vscode.workspace.saveAs(untitled);
}

export function reasonOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** The last part of an address, as people read it. */
export function baseName(uri: vscode.Uri): string {
  return uri.path.slice(uri.path.lastIndexOf("/") + 1);
}

/** `undefined` if there is no such file. */
async function readBytes(uri: vscode.Uri): Promise<Uint8Array | undefined> {
  try {
    return await vscode.workspace.fs.readFile(uri);
  } catch (error) {
    if (error instanceof vscode.FileSystemError && error.code === "FileNotFound") return undefined;
    throw error;
  }
}

async function mayReplace(uri: vscode.Uri): Promise<boolean> {
  const open = vscode.workspace.textDocuments.find((document) => document.uri.toString() === uri.toString());
  if (open === undefined || !open.isDirty) return true;
  const detail = vscode.l10n.t(
    "If it is replaced, the file will differ from what its editor shows until that is reverted.",
  );
  const replace = vscode.l10n.t("Replace");
  const chosen = await vscode.window.showWarningMessage(
    vscode.l10n.t("{0} has unsaved edits.", baseName(uri)),
    { modal: true, detail },
    replace,
  );
  return chosen === replace;
}

/** Whole or not at all: a reader never finds half a file under the name. */
async function writeWhole(folder: vscode.Uri, name: string, bytes: Uint8Array): Promise<void> {
  const temporary = vscode.Uri.joinPath(folder, `.${name}.${createNonce().slice(0, 8)}.tmp`);
  try {
    await vscode.workspace.fs.writeFile(temporary, bytes);
    await vscode.workspace.fs.rename(temporary, vscode.Uri.joinPath(folder, name), { overwrite: true });
  } catch (error) {
    await vscode.workspace.fs.delete(temporary).then(undefined, () => undefined);
    throw error;
  }
}
