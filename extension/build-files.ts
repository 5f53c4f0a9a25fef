import * as vscode from "vscode";
import type { BaseLanguageClient, Disposable } from "vscode-languageclient";
import { type BuildFilesResult, buildFiles } from "../server/protocol.ts";
import { filesBelow, type Tree } from "./walk.ts";

/** More than any folder of build files holds. */
const MOST = 2000;

/** Tells the server which build files there are: a name is changed in those too that no editor shows. */
export function answerBuildFiles(client: BaseLanguageClient): Disposable {
  return client.onRequest(buildFiles, async (token: vscode.CancellationToken): Promise<BuildFilesResult> => {
    const folders = vscode.workspace.workspaceFolders ?? [];
    const found = await Promise.all(folders.map((folder) => buildFilesIn(folder, "**/*.scant", MOST, token)));
    return { uris: found.flat().map((uri) => uri.toString()) };
  });
}

/**
 * The build files of a folder that a glob fits, at most so many. Not every file system can be searched, such as one that
 * lives in a browser: there the folder is walked through.
 */
export async function buildFilesIn(
  folder: vscode.WorkspaceFolder,
  pattern: string,
  most: number,
  token: vscode.CancellationToken,
): Promise<readonly vscode.Uri[]> {
  const among = new vscode.RelativePattern(folder, pattern);
  const found = await searched(among, folder.uri.scheme, most, token);
  if (found !== undefined) return found.filter(({ path }) => path.endsWith(".scant"));
  const walked = await filesBelow(folder.uri, ".scant", most, treeOf(token));
  return walked.filter((uri) => fits(among, uri));
}

/** A search of a file system that nothing can search is not refused: it waits for what could. */
const PATIENCE_MS = 1000;
const unsearchable = new Set<string>();

/** `undefined` where nothing can search folders of the kind. */
async function searched(
  among: vscode.RelativePattern,
  scheme: string,
  most: number,
  token: vscode.CancellationToken,
): Promise<readonly vscode.Uri[] | undefined> {
  if (scheme === "file") return vscode.workspace.findFiles(among, undefined, most, token);
  if (unsearchable.has(scheme)) return undefined;
  const given = new vscode.CancellationTokenSource();
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<undefined>((resolve) => {
    timer = setTimeout(() => resolve(undefined), PATIENCE_MS);
  });
  const found = await Promise.race([vscode.workspace.findFiles(among, undefined, most, given.token), late]);
  clearTimeout(timer);
  given.cancel();
  if (found === undefined) unsearchable.add(scheme);
  return found === undefined || found.length === 0 ? undefined : found;
}

function treeOf(token: vscode.CancellationToken): Tree<vscode.Uri> {
  return {
    entries: async (folder) =>
      (await vscode.workspace.fs.readDirectory(folder)).map(([name, type]) => [name, kindOf(type)]),
    below: (folder, name) => vscode.Uri.joinPath(folder, name),
    isCancelled: () => token.isCancellationRequested,
  };
}

function kindOf(type: vscode.FileType): "file" | "folder" | "other" {
  if (type === vscode.FileType.Directory) return "folder";
  return (type & vscode.FileType.File) === 0 ? "other" : "file";
}

/** Whether a glob fits an address: the window matches globs for documents only, and looks at nothing else of one. */
function fits(pattern: vscode.RelativePattern, uri: vscode.Uri): boolean {
  return 0 < vscode.languages.match({ pattern }, { uri, languageId: "scantling" } as vscode.TextDocument);
}
