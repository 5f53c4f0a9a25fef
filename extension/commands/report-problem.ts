import * as vscode from "vscode";
import type { Troubles } from "../troubles.ts";
import { reportText } from "./report-text.ts";

/** What the report asks of the rest of the extension. */
export interface ReportSource {
  readonly version: string;
  readonly troubles: Troubles;
  /** How the server runs and whether it does. */
  server(): string;
}

/** "Scantling: Report a Problem": an untitled document for the user to complete; nothing is sent. */
export function registerReportProblem(source: ReportSource): vscode.Disposable {
  return vscode.commands.registerCommand("scantling.reportProblem", async () => {
    const { env, workspace, version } = vscode;
    const content = reportText({
      version: source.version,
      editor: env.appName,
      editorVersion: version,
      host: `${env.appHost}, ${env.uiKind === vscode.UIKind.Web ? "in a browser" : "in a window"}`,
      platform:
        typeof process === "undefined" ? "browser" : `${process.platform} ${process.arch}, node ${process.version}`,
      language: env.language,
      remote: env.remoteName,
      server: source.server(),
      openBuildFiles: workspace.textDocuments.filter((document) => document.languageId === "scantling").length,
      settings: changedSettings(),
      troubles: source.troubles.list(),
    });
    const document = await workspace.openTextDocument({ language: "markdown", content });
    await vscode.window.showTextDocument(document);
  });
}

const SETTINGS = [
  ...["inlayHints.boxSizes", "inlayHints.shares", "inlayHints.slides", "inlayHints.openings"],
  ...["rod.followEditor", "rod.markCursor", "rod.showDrawings", "plan.seconds", "trace.server"],
];

function changedSettings(): readonly string[] {
  const configuration = vscode.workspace.getConfiguration("scantling");
  return SETTINGS.flatMap((name) => {
    const now = configuration.get(name);
    return now === configuration.inspect(name)?.defaultValue ? [] : [`scantling.${name}: ${JSON.stringify(now)}`];
  });
}
