import * as vscode from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { activateWith } from "./activate.ts";

/** Called by VS Code on the desktop and on a remote machine: the server is a process of its own. */
export function activate(context: vscode.ExtensionContext): Promise<void> {
  const module = vscode.Uri.joinPath(context.extensionUri, "dist", "server.cjs").fsPath;
  const server = { module, transport: TransportKind.ipc };
  const debug = { ...server, options: { execArgv: ["--nolazy", "--inspect=6019"] } };
  return activateWith(
    context,
    "desktop",
    (options) => new LanguageClient("scantling", "Scantling", { run: server, debug }, options),
  );
}
