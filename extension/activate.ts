import * as vscode from "vscode";
import { type BaseLanguageClient, type LanguageClientOptions, State } from "vscode-languageclient";
import type { StartOptions } from "../server/protocol.ts";
import { answerBuildFiles } from "./build-files.ts";
import { registerKeepOffcuts } from "./commands/keep-offcuts.ts";
import { registerNewBuildFile } from "./commands/new-build-file.ts";
import { registerOpenRod } from "./commands/open-rod.ts";
import { registerPlanCuts } from "./commands/plan-cuts.ts";
import { registerRecordCut } from "./commands/record-cut.ts";
import { registerReportProblem } from "./commands/report-problem.ts";
import { restart } from "./commands/restart.ts";
import { registerRestartServer } from "./commands/restart-server.ts";
import { registerWriteCutList } from "./commands/write-cut-list.ts";
import { type Host, registerWritePapers } from "./commands/write-papers.ts";
import { createContexts } from "./contexts.ts";
import { createFeed } from "./feed.ts";
import { createLog, type Log } from "./log.ts";
import { withoutOldVersions } from "./old-versions.ts";
import { createRod } from "./preview/panel.ts";
import { answerReadFile } from "./read-file.ts";
import { createStatus } from "./status.ts";
import { registerCheckTask } from "./tasks/check-task.ts";
import { registerTools } from "./tools/register.ts";

/** Runs the server the way a host can; called once. */
export type CreateClient = (options: LanguageClientOptions) => BaseLanguageClient;

/** All of the extension but the way its server is run; resolves once the server answers or has failed to. */
export async function activateWith(
  context: vscode.ExtensionContext,
  host: Host,
  createClient: CreateClient,
): Promise<void> {
  const log = createLog();
  const client = createClient(clientOptions(context, log));
  /** The server answers again, or does not any more. */
  const turned = new vscode.EventEmitter<void>();
  const feed = createFeed(client, vscode.l10n.t);
  const rod = createRod(context.extensionUri, feed, turned.event);
  context.subscriptions.push(
    log,
    turned,
    createContexts(),
    answerBuildFiles(client),
    answerReadFile(client),
    client.onDidChangeState(({ newState }) => {
      if (newState === State.Running || newState === State.Stopped) turned.fire();
    }),
    rod,
    createStatus(feed, turned.event),
    registerOpenRod(rod),
    registerWriteCutList(rod, feed),
    registerPlanCuts(rod, feed),
    registerKeepOffcuts(rod, feed),
    registerRecordCut(rod, feed),
    registerWritePapers(rod, feed, host),
    registerNewBuildFile(context.extensionUri),
    registerReportProblem({
      version: String(context.extension.packageJSON.version),
      troubles: log.troubles,
      server: () => (client.isRunning() ? "running" : "not running"),
    }),
    registerCheckTask(feed),
    registerTools(feed),
    registerRestartServer(() => restart(client)),
    { dispose: () => client.dispose() },
  );
  try {
    await client.start();
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    log.channel.error(error instanceof Error ? error : reason);
    void vscode.window.showErrorMessage(vscode.l10n.t("The language server of Scantling did not start: {0}", reason));
  }
}

/** Comings and goings, and not the changes between. */
const WITHOUT_CHANGES = [false, true, false] as const;

function clientOptions(context: vscode.ExtensionContext, log: Log): LanguageClientOptions {
  // Build files the server has watched by itself. Of a folder that comes or goes as a whole nothing is said but its name.
  const comesAndGoes = vscode.workspace.createFileSystemWatcher("**/*", ...WITHOUT_CHANGES);
  context.subscriptions.push(comesAndGoes);
  const pages = vscode.Uri.joinPath(context.extensionUri, "docs", "findings").toString();
  const start: StartOptions = { findingPages: `${pages}/` };
  return {
    documentSelector: [{ language: "scantling" }],
    middleware: withoutOldVersions((scheme) => vscode.workspace.fs.isWritableFileSystem(scheme) !== undefined),
    synchronize: { fileEvents: comesAndGoes, configurationSection: "scantling" },
    outputChannel: log.channel,
    initializationOptions: start,
  };
}
