import * as vscode from "vscode";
import type { CutTick } from "../../server/protocol.ts";
import { documentAt, warnIfLost } from "../documents.ts";
import type { Feed } from "../feed.ts";
import type { Rod } from "../preview/panel.ts";
import { buildFileFor } from "./build-file.ts";
import { reasonOf } from "./folder.ts";
import { recordedNotice } from "./recorded-notice.ts";

/** "Scantling: Record What Was Cut": asks for a line as it is typed on a phone, or takes the tick it is called with. */
export function registerRecordCut(rod: Rod, feed: Feed): vscode.Disposable {
  const command = vscode.commands.registerCommand("scantling.recordCut", async (called: unknown, what: unknown) => {
    const uri = buildFileFor(called, vscode.l10n.t("what was cut is written into it"), rod);
    if (uri === undefined) return;
    try {
      await (isTick(what) ? recordTick(uri, what, feed) : recordLine(uri, feed));
    } catch (error) {
      void vscode.window.showErrorMessage(vscode.l10n.t("What was cut could not be recorded: {0}", reasonOf(error)));
    }
  });
  return vscode.Disposable.from(command, offerInCutBlocks());
}

async function recordTick(uri: vscode.Uri, tick: CutTick, feed: Feed): Promise<void> {
  const document = await documentAt(uri);
  const answer = await feed.recordCut(uri.toString(), { ticks: [tick] });
  // What went well is seen at once, in the row.
  if (answer === undefined || 0 < answer.problems.length) tell(answer);
  if (answer !== undefined && 0 < answer.understood.length) await warnIfLost(document);
}

async function recordLine(uri: vscode.Uri, feed: Feed): Promise<void> {
  const line = await vscode.window.showInputBox({
    title: vscode.l10n.t("Record What Was Cut"),
    prompt: vscode.l10n.t("How many, which part, and what the tape says if it is not the size on the list"),
    placeHolder: "2 side plan-1; 1 rail inks 15 11/16; spoiled stile rollers",
    ignoreFocusOut: true,
  });
  if (line === undefined || line.trim() === "") return;
  const document = await documentAt(uri);
  const answer = await feed.recordCut(uri.toString(), { line });
  tell(answer);
  if (answer !== undefined && 0 < answer.understood.length) await warnIfLost(document);
}

function tell(answer: Parameters<typeof recordedNotice>[0]): void {
  const { text, failed } = recordedNotice(answer, vscode.l10n.t);
  if (failed) void vscode.window.showWarningMessage(text);
  else void vscode.window.showInformationMessage(text);
}

function isTick(what: unknown): what is CutTick {
  const { part, count } = (what ?? {}) as Partial<CutTick>;
  return typeof part === "string" && typeof count === "number";
}

/** In a `cut` block the command is among the quick actions too, since what was measured has to be asked for. */
function offerInCutBlocks(): vscode.Disposable {
  const kind = vscode.CodeActionKind.Refactor.append("cut");
  const title = vscode.l10n.t("Record What Was Cut…");
  const provider: vscode.CodeActionProvider = {
    provideCodeActions: (document, range) => {
      if (!isInCutBlock(document.getText(), document.offsetAt(range.start))) return [];
      const action = new vscode.CodeAction(title, kind);
      action.command = { command: "scantling.recordCut", title, arguments: [document.uri] };
      return [action];
    },
  };
  return vscode.languages.registerCodeActionsProvider("scantling", provider, { providedCodeActionKinds: [kind] });
}

/** Whether the last bracket that is open at the offset is that of a `cut` block, or the word stands there. */
function isInCutBlock(text: string, offset: number): boolean {
  const line = text.slice(text.lastIndexOf("\n", offset - 1) + 1);
  if (/^[ \t]*cut\s*\{/.test(line)) return true;
  const before = text.slice(0, offset);
  return /(^|\n)[ \t]*cut\s*\{[^{}]*$/.test(before);
}
