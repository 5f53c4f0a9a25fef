import * as vscode from "vscode";
import { type BaseLanguageClient, type LanguageClientOptions, State } from "vscode-languageclient";
import { registerOpenRod } from "./commands/open-rod.ts";
import { registerRestartServer } from "./commands/restart-server.ts";
import { registerWriteCutList } from "./commands/write-cut-list.ts";
import { createFeed } from "./feed.ts";
import { createRod } from "./preview/panel.ts";
import { answerReadFile } from "./read-file.ts";

/** What both hosts tell their client. */
export function clientOptions(context: vscode.ExtensionContext): LanguageClientOptions {
  const watcher = vscode.workspace.createFileSystemWatcher("**/*.scant");
  context.subscriptions.push(watcher);
  return { documentSelector: [{ language: "scantling" }], synchronize: { fileEvents: watcher } };
}

/** All of the extension but the way its server is run; resolves once the server answers or has failed to. */
export async function activateWith(context: vscode.ExtensionContext, client: BaseLanguageClient): Promise<void> {
  const restarted = new vscode.EventEmitter<void>();
  const feed = createFeed(client);
  const rod = createRod(context.extensionUri, feed, restarted.event);
  context.subscriptions.push(
    restarted,
    answerReadFile(client),
    client.onDidChangeState(({ newState }) => {
      if (newState === State.Running) restarted.fire();
    }),
    rod,
    registerOpenRod(rod),
    registerWriteCutList(feed),
    registerRestartServer(async () => {
      if (client.needsStop()) await client.stop();
      await client.start();
    }),
    { dispose: () => client.dispose() },
  );
  try {
    await client.start();
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    void vscode.window.showErrorMessage(`The language server of Scantling did not start: ${reason}`);
  }
}
