import * as vscode from "vscode";
import type { PlanDocument } from "../../language/view/types.ts";
import type { PlanResult } from "../../server/protocol.ts";
import { documentAt } from "../documents.ts";
import type { Feed } from "../feed.ts";
import { type Rod, searchSeconds } from "../preview/panel.ts";
import type { Translate } from "../translate.ts";
import { buildFileFor } from "./build-file.ts";
import { baseName, reasonOf } from "./folder.ts";

/** "Scantling: Plan the Cuts": opens the rod at the cutting plan and searches for a better one. */
export function registerPlanCuts(rod: Rod, feed: Feed): vscode.Disposable {
  return vscode.commands.registerCommand("scantling.planCuts", async (called: unknown) => {
    const uri = buildFileFor(called, vscode.l10n.t("the plan says how its parts are cut"), rod);
    if (uri === undefined) return;
    rod.openPart(uri, "plan");
    await planCuts(uri, feed);
  });
}

async function planCuts(uri: vscode.Uri, feed: Feed): Promise<void> {
  const title = vscode.l10n.t("Planning the cuts of {0}", baseName(uri));
  const options = { location: vscode.ProgressLocation.Notification, cancellable: true, title };
  try {
    await documentAt(uri);
    const made = await vscode.window.withProgress(options, (progress, token) =>
      feed.plan(
        uri.toString(),
        { seconds: searchSeconds(), scope: undefined },
        { token, onProgress: reporter(progress) },
      ),
    );
    if (made === undefined) {
      void vscode.window.showWarningMessage(vscode.l10n.t("The language server has no plan of this file."));
      return;
    }
    await offer(uri, made);
  } catch (error) {
    void vscode.window.showErrorMessage(vscode.l10n.t("The cuts could not be planned: {0}", reasonOf(error)));
  }
}

/** Progress in steps, as the window takes it, of progress in all. */
export function reporter(
  progress: vscode.Progress<{ message?: string; increment?: number }>,
): (percent: number, message: string | undefined) => void {
  let last = 0;
  return (percent, message) => {
    progress.report({ increment: Math.max(0, percent - last), ...(message === undefined ? {} : { message }) });
    last = Math.max(last, percent);
  };
}

async function offer(uri: vscode.Uri, { document, scope }: NonNullable<PlanResult>): Promise<void> {
  const { t } = vscode.l10n;
  const said = planSentence(document, t);
  const keep = t("Keep the Offcuts…");
  const papers = t("Write Shop Papers…");
  const buttons = [...(document.keep.length === 0 ? [] : [keep]), papers];
  const chosen = await vscode.window.showInformationMessage(
    scope === "left" ? t("For what is left to cut: {0}", said) : said,
    ...buttons,
  );
  if (chosen === keep) await vscode.commands.executeCommand("scantling.keepOffcuts", uri, scope);
  if (chosen === papers) await vscode.commands.executeCommand("scantling.writePapers", uri);
}

/** What a plan comes to, in a sentence or two. */
export function planSentence({ stocks, unsized }: PlanDocument, t: Translate): string {
  const said = stocks.map(({ stock, used, kind, proven, lowerBound }) => {
    const count = counted(used, kind, t);
    if (!proven && used <= lowerBound) return t("{0}: {1}, not proven to be the cheapest", stock, count);
    if (!proven) return t("{0}: {1}, at least {2}", stock, count, lowerBound);
    return kind === "sheet" && used <= lowerBound
      ? t("{0}: {1}, no fewer is possible", stock, count)
      : t("{0}: {1}, no cheaper purchase is possible", stock, count);
  });
  const left = stocks.filter(({ unplaced }) => 0 < unplaced.length).map(({ stock }) => stock);
  const sentences = [
    ...(said.length === 0 ? [t("There is nothing to lay out: no stock has a size, or there are no parts.")] : []),
    ...(said.length === 0 ? [] : [`${said.join("; ")}.`]),
    ...(left.length === 0 ? [] : [t("Not everything has a place: {0}.", left.join(", "))]),
    ...(unsized.length === 0 || said.length === 0 ? [] : [t("No size is stated of {0}.", unsized.join(", "))]),
  ];
  return sentences.join(" ");
}

function counted(used: number, kind: "sheet" | "board", t: Translate): string {
  if (kind === "sheet") return used === 1 ? t("1 sheet") : t("{0} sheets", used);
  return used === 1 ? t("1 board") : t("{0} boards", used);
}
