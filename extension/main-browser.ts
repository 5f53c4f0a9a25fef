import * as vscode from "vscode";
import { LanguageClient } from "vscode-languageclient/browser";
import { activateWith } from "./activate.ts";

/** The browser's own, in a program whose other half has no such thing. */
declare const Worker: new (script: string) => globalThis.Worker;

/** Called by a VS Code that runs in the browser alone: the server is a worker. */
export function activate(context: vscode.ExtensionContext): Promise<void> {
  const script = vscode.Uri.joinPath(context.extensionUri, "dist", "server-worker.js").toString(true);
  return activateWith(
    context,
    (options) => new LanguageClient("scantling", "Scantling", () => Promise.resolve(new Worker(script)), options),
  );
}
