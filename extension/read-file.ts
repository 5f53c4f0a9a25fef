import * as vscode from "vscode";
import type { BaseLanguageClient, Disposable } from "vscode-languageclient";
import { type FileParams, type ReadFileResult, readFile } from "../server/protocol.ts";
import { mayRead } from "./used-files.ts";

/** A build file bigger than this is no build file. */
const MAX_BYTES = 4 * 1024 * 1024;

/**
 * Answers the server, which has no file system of its own: the text of a build file in an opened folder, or beside a
 * build file that is open without one; `null` for every other.
 */
export function answerReadFile(client: BaseLanguageClient): Disposable {
  return client.onRequest(readFile, async (params: FileParams): Promise<ReadFileResult> => {
    try {
      const uri = vscode.Uri.parse(params.uri, true);
      if (!mayRead(uri, readableFolders())) return null;
      if (MAX_BYTES < (await vscode.workspace.fs.stat(uri)).size) return null;
      return { text: new TextDecoder().decode(await vscode.workspace.fs.readFile(uri)) };
    } catch {
      // No such file, or no address at all: to the server both mean that there is nothing to read.
      return null;
    }
  });
}

/** The folders whose build files may be looked at: those opened, and those of build files that are open without one. */
export function readableFolders(): readonly vscode.Uri[] {
  const opened = vscode.workspace.workspaceFolders ?? [];
  const alone = vscode.workspace.textDocuments.filter(
    (document) =>
      document.languageId === "scantling" && vscode.workspace.getWorkspaceFolder(document.uri) === undefined,
  );
  return [...opened.map((folder) => folder.uri), ...alone.map((document) => vscode.Uri.joinPath(document.uri, ".."))];
}
