import * as vscode from "vscode";
import { BrowserMessageReader, BrowserMessageWriter, LanguageClient } from "vscode-languageclient/browser";
import { activateWith } from "./activate.ts";

/** The browser's own, in a program whose other half has no such thing. */
declare const Worker: new (script: string) => globalThis.Worker & { terminate(): void };

/** Called by a VS Code that runs in the browser alone: the server is a worker. */
export function activate(context: vscode.ExtensionContext): Promise<void> {
  const script = vscode.Uri.joinPath(context.extensionUri, "dist", "server-worker.js").toString(true);
  let running: InstanceType<typeof Worker> | undefined;
  context.subscriptions.push({ dispose: () => running?.terminate() });
  // Not the worker itself: what the editor's host hands out as one is not an instance of what it calls `Worker`, by
  // which the client would know it.
  const start = async () => {
    running?.terminate();
    running = new Worker(script);
    return { reader: new BrowserMessageReader(running), writer: new BrowserMessageWriter(running) };
  };
  return activateWith(context, "browser", (options) => new LanguageClient("scantling", "Scantling", start, options));
}
