import * as vscode from "vscode";

/**
 * The document at an address, opened if it is not: the server can only tell of those that are. One without a name that
 * has been closed is gone; asked for, the window would make an empty one in its place and show it.
 */
export async function documentAt(uri: vscode.Uri): Promise<vscode.TextDocument> {
  const address = uri.toString();
  const open = vscode.workspace.textDocuments.find((document) => document.uri.toString() === address);
  if (open !== undefined) return open;
  if (uri.scheme === "untitled") throw new Error(vscode.l10n.t("it was closed, and has no place on disk"));
  return vscode.workspace.openTextDocument(uri);
}

/**
 * Says so where an edit of a document will be lost: the window shows it in a file that is read-only too, and then neither
 * saves it nor asks before it throws it away.
 */
export async function warnIfLost(document: vscode.TextDocument): Promise<void> {
  if (document.isDirty || document.isUntitled || (await isOnDisk(document))) return;
  const name = vscode.workspace.asRelativePath(document.uri);
  void vscode.window.showWarningMessage(
    vscode.l10n.t("{0} is read-only: what was written into it is not saved, and is gone when it is closed.", name),
  );
}

async function isOnDisk(document: vscode.TextDocument): Promise<boolean> {
  const bytes = await vscode.workspace.fs.readFile(document.uri).then(undefined, () => undefined);
  // Saved by itself meanwhile.
  return bytes !== undefined && new TextDecoder().decode(bytes) === document.getText();
}

/** Where a file is now; `undefined` if it was not moved, by itself or in a folder. */
export function movedTo(
  address: string | undefined,
  moves: readonly { readonly oldUri: vscode.Uri; readonly newUri: vscode.Uri }[],
): string | undefined {
  for (const { oldUri, newUri } of moves) {
    const old = oldUri.toString();
    if (address === old || address?.startsWith(`${old}/`) === true)
      return newUri.toString() + address.slice(old.length);
  }
  return undefined;
}

/** Whether it is a file without a name that was closed. */
export function isGone(address: string): boolean {
  return (
    address.startsWith("untitled:") && !vscode.workspace.textDocuments.some(({ uri }) => uri.toString() === address)
  );
}

/** The addresses of the build files that are open. */
export function openBuildFiles(): readonly string[] {
  const files = vscode.workspace.textDocuments.filter(({ languageId }) => languageId === "scantling");
  return files.map(({ uri }) => uri.toString());
}

export function activeBuildFile(): vscode.Uri | undefined {
  const document = vscode.window.activeTextEditor?.document;
  return document?.languageId === "scantling" ? document.uri : undefined;
}
