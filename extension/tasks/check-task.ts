import * as vscode from "vscode";
import type { ListFinding } from "../../language/view/types.ts";
import { buildFilesIn } from "../build-files.ts";
import { documentAt } from "../documents.ts";
import type { Feed } from "../feed.ts";
import { findingLine, onceEach, summaryLine } from "./lines.ts";

const TYPE = "scantling";
const MOST_FILES = 500;

/** A task as `tasks.json` has it; the manifest's definition says the same. */
interface CheckDefinition extends vscode.TaskDefinition {
  readonly task: "check";
  /** A glob of build files in the folder; all of them if left out. */
  readonly files?: string;
}

/**
 * The task "scantling: check": the build files of a folder, checked by the language server, also those that no editor has
 * open. It runs in every kind of window; `scantling check` on the command line does the same outside of one.
 */
export function registerCheckTask(feed: Feed): vscode.Disposable {
  return vscode.tasks.registerTaskProvider(TYPE, {
    provideTasks: () =>
      (vscode.workspace.workspaceFolders ?? []).map((folder) => taskFor({ type: TYPE, task: "check" }, folder, feed)),
    resolveTask: (task) => {
      const { definition, scope } = task;
      if (definition["task"] !== "check") return undefined;
      const folder = typeof scope === "object" ? scope : vscode.workspace.workspaceFolders?.[0];
      return folder === undefined ? undefined : taskFor(definition as CheckDefinition, folder, feed);
    },
  });
}

function taskFor(definition: CheckDefinition, folder: vscode.WorkspaceFolder, feed: Feed): vscode.Task {
  const run = new vscode.CustomExecution(async () => checkTerminal(definition, folder, feed));
  const task = new vscode.Task(definition, folder, "check", TYPE, run, "$scantling");
  task.group = vscode.TaskGroup.Test;
  task.detail = vscode.l10n.t("Checks the build files of the folder");
  return task;
}

function checkTerminal(definition: CheckDefinition, folder: vscode.WorkspaceFolder, feed: Feed): vscode.Pseudoterminal {
  const writes = new vscode.EventEmitter<string>();
  const ends = new vscode.EventEmitter<number>();
  const token = new vscode.CancellationTokenSource();
  const print = (line: string) => writes.fire(`${line}\r\n`);
  return {
    onDidWrite: writes.event,
    onDidClose: ends.event,
    open: () => {
      check(definition.files ?? "**/*.scant", folder, feed, print, token.token).then(
        (errors) => ends.fire(errors === 0 ? 0 : 1),
        (error: unknown) => {
          print(error instanceof Error ? error.message : String(error));
          ends.fire(2);
        },
      );
    },
    close: () => {
      token.cancel();
      token.dispose();
      writes.dispose();
      ends.dispose();
    },
  };
}

/** Prints the findings and returns the number of errors. */
async function check(
  pattern: string,
  folder: vscode.WorkspaceFolder,
  feed: Feed,
  print: (line: string) => void,
  token: vscode.CancellationToken,
): Promise<number> {
  const found = await buildFilesIn(folder, pattern, MOST_FILES, token);
  const files = [...found].sort((a, b) => a.path.localeCompare(b.path));
  const findings: ListFinding[] = [];
  for (const uri of files) {
    if (token.isCancellationRequested) return 0;
    await documentAt(uri);
    findings.push(...((await feed.list(uri.toString()))?.findings ?? []));
  }
  const once = onceEach(findings);
  for (const finding of once) print(findingLine(finding, labelIn));
  print(summaryLine(files.length, once));
  return once.filter(({ severity }) => severity === "error").length;
}

function labelIn(uri: string): string {
  return vscode.workspace.asRelativePath(vscode.Uri.parse(uri), false);
}
