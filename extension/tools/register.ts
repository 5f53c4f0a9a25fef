import * as vscode from "vscode";
import type { ListDocument } from "../../language/view/types.ts";
import { documentAt } from "../documents.ts";
import type { Feed } from "../feed.ts";
import { readableFolders } from "../read-file.ts";
import { mayRead } from "../used-files.ts";
import { checkText, partsText } from "./texts.ts";

/** What a tool may be asked with; the manifest's schemas say the same. */
interface ToolInput {
  readonly file?: string;
}

/** The tools that a language model in the editor may use. They read build files and change nothing. */
export function registerTools(feed: Feed): vscode.Disposable {
  // Forks of the editor may come without this part.
  if (vscode.lm?.registerTool === undefined) return new vscode.Disposable(() => undefined);
  return vscode.Disposable.from(
    vscode.lm.registerTool<ToolInput>(
      "scantling_check",
      tool(feed, vscode.l10n.t("Checking the build file"), checkText),
    ),
    vscode.lm.registerTool<ToolInput>("scantling_list", tool(feed, vscode.l10n.t("Listing the parts"), partsText)),
  );
}

function tool(
  feed: Feed,
  invocationMessage: string,
  say: (name: string, list: ListDocument) => string,
): vscode.LanguageModelTool<ToolInput> {
  return {
    prepareInvocation: () => ({ invocationMessage }),
    invoke: async ({ input }) => {
      const text = await answer(feed, input.file, say);
      return new vscode.LanguageModelToolResult([new vscode.LanguageModelTextPart(text)]);
    },
  };
}

async function answer(feed: Feed, file: string | undefined, say: (name: string, list: ListDocument) => string) {
  const uri = await findBuildFile(file);
  if (uri === undefined) {
    return file === undefined
      ? "No build file (*.scant) is open in the editor: name one by its path in the opened folder."
      : `There is no build file "${file}" in the opened folders.`;
  }
  await documentAt(uri);
  const list = await feed.list(uri.toString());
  const name = vscode.workspace.asRelativePath(uri);
  return list === undefined ? `The language server knows nothing of ${name}.` : say(name, list);
}

/** The build file of a path in the opened folders, or the one in the active editor; `undefined` if there is none. */
async function findBuildFile(file: string | undefined): Promise<vscode.Uri | undefined> {
  if (file === undefined || file === "") {
    const document = vscode.window.activeTextEditor?.document;
    return document?.languageId === "scantling" ? document.uri : undefined;
  }
  const open = vscode.workspace.textDocuments.find(
    ({ uri, languageId }) => languageId === "scantling" && (uri.toString() === file || uri.path === file),
  );
  if (open !== undefined) return open.uri;
  const folders = readableFolders();
  const places = [...folders.map((folder) => vscode.Uri.joinPath(folder, file)), ...absolute(file, folders)];
  for (const uri of places) if (mayRead(uri, folders) && (await exists(uri))) return uri;
  return undefined;
}

/** The path as it would be in the folders' own file systems, if it is one from their root. */
function absolute(file: string, folders: readonly vscode.Uri[]): readonly vscode.Uri[] {
  return file.startsWith("/") ? folders.map((folder) => folder.with({ path: file })) : [];
}

async function exists(uri: vscode.Uri): Promise<boolean> {
  return vscode.workspace.fs.stat(uri).then(
    () => true,
    () => false,
  );
}
