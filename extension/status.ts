import * as vscode from "vscode";
import type { Feed } from "./feed.ts";
import { oneAtATime } from "./preview/one-at-a-time.ts";
import { statusOf } from "./status-text.ts";

const SEVERITIES = {
  good: vscode.LanguageStatusSeverity.Information,
  warning: vscode.LanguageStatusSeverity.Warning,
  error: vscode.LanguageStatusSeverity.Error,
} as const;

/** The language status of the active build file: findings, pieces, reading; it opens the rod. */
export function createStatus(feed: Feed, onTurned: vscode.Event<void>): vscode.Disposable {
  const item = vscode.languages.createLanguageStatusItem("scantling.status", { language: "scantling" });
  item.name = "Scantling";
  item.text = vscode.l10n.t("Not checked yet");
  item.command = { command: "scantling.openRod", title: vscode.l10n.t("Open the Rod") };
  const show = oneAtATime(async () => {
    const uri = activeBuildFile();
    if (uri === undefined) return;
    try {
      const answer = await feed.rod(uri);
      if (answer === undefined || uri !== activeBuildFile()) return;
      const { text, detail, grade } = statusOf(answer.view, vscode.l10n.t);
      Object.assign(item, { text, detail, severity: SEVERITIES[grade], busy: false });
    } catch {
      const text = vscode.l10n.t("The language server is not answering");
      Object.assign(item, { text, detail: undefined, severity: SEVERITIES.error, busy: false });
    }
  });
  return vscode.Disposable.from(
    item,
    feed.onRodChanged((uri) => {
      if (uri === activeBuildFile()) show();
    }),
    onTurned(show),
    vscode.window.onDidChangeActiveTextEditor(show),
  );
}

function activeBuildFile(): string | undefined {
  const document = vscode.window.activeTextEditor?.document;
  return document?.languageId === "scantling" ? document.uri.toString() : undefined;
}
