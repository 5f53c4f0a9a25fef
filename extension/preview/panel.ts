import * as vscode from "vscode";
import type { Target } from "../../language/view/types.ts";
import { baseName } from "../commands/folder.ts";
import { activeBuildFile, documentAt, isGone, movedTo, openBuildFiles } from "../documents.ts";
import type { Feed } from "../feed.ts";
import { createRodController, type RodController } from "./controller.ts";
import { type BenchPart, type Drawn, readPageMessage, readSavedState } from "./messages.ts";
import { createOneRod } from "./one-rod.ts";
import { createNonce, pageHtml } from "./page-html.ts";
import type { CursorLine } from "./rows-at.ts";
import { tellingName } from "./telling-name.ts";

/** The type under which the window remembers the panel; named in the manifest's activation events. */
export const ROD_VIEW_TYPE = "scantling.rod";

/** The one rod of the window. */
export interface Rod extends vscode.Disposable {
  /** Shows the file beside its text, in the panel there is or a new one. */
  open(uri: vscode.Uri): void;
  /** As `open`, with a part of it opened and in view. */
  openPart(uri: vscode.Uri, part: BenchPart): void;
  /** As `open`, with a drawing opened and an item of it in view, both by their ids. */
  openDrawn(uri: vscode.Uri, drawn: Drawn): void;
  /** The file on the rod while that is the active tab. */
  inFront(): vscode.Uri | undefined;
}

/** Makes the rod ready to be opened, and to come back after the window has been closed. */
export function createRod(extensionUri: vscode.Uri, feed: Feed, onTurned: vscode.Event<void>): Rod {
  const one = createOneRod(adopt);

  function adopt(panel: vscode.WebviewPanel): RodController {
    const controller = createRodController({
      request: async (uri) => ((await openable(uri)) === undefined ? undefined : feed.rod(uri)),
      requestDrawings: async (uri, id) => ((await openable(uri)) === undefined ? undefined : feed.drawings(uri, id)),
      requestBench: async (uri, order) => ((await openable(uri)) === undefined ? undefined : feed.bench(uri, order)),
      searchSeconds,
      tick: (uri, tick) => void vscode.commands.executeCommand("scantling.recordCut", vscode.Uri.parse(uri), tick),
      cannotTick: () =>
        void vscode.window.showWarningMessage(
          vscode.l10n.t("The text cannot be read to its end. Mend it first, then tick off what was cut."),
        ),
      keep: (uri, scope) => void vscode.commands.executeCommand("scantling.keepOffcuts", vscode.Uri.parse(uri), scope),
      wantsDrawings: () => setting("showDrawings"),
      post: (message) => void panel.webview.postMessage(message),
      reveal: (target) => void reveal(target, panel),
      opened: (uri) => {
        panel.title = vscode.l10n.t("Rod: {0}", tellingName(uri, openBuildFiles()));
      },
    });
    panel.onDidDispose(() => {
      controller.hidden();
      one.closed(panel);
    });
    panel.onDidChangeViewState(() => {
      if (!panel.visible) controller.hidden();
    });
    panel.webview.onDidReceiveMessage((data: unknown) => {
      const message = readPageMessage(data);
      if (message !== undefined) controller.receive(message);
    });
    panel.iconPath = vscode.Uri.joinPath(extensionUri, "extension", "icon.png");
    panel.webview.options = { enableScripts: true, localResourceRoots: [vscode.Uri.joinPath(extensionUri, "dist")] };
    panel.webview.html = htmlFor(panel.webview, extensionUri);
    controller.cursor(cursorIn(vscode.window.activeTextEditor));
    return controller;
  }

  /** A file without a name that is saved goes on under another address, in the editor it was in. */
  function goOn(): void {
    const next = activeBuildFile();
    const source = one.current()?.controller.source();
    if (next !== undefined && source !== undefined && isGone(source)) one.current()?.controller.open(next.toString());
  }

  async function lastShown(saved: unknown): Promise<string | undefined> {
    const state = readSavedState(saved);
    const uri = state === undefined ? undefined : await openable(state.uri);
    return (uri ?? activeBuildFile())?.toString();
  }

  const subscriptions = vscode.Disposable.from(
    vscode.window.registerWebviewPanelSerializer(ROD_VIEW_TYPE, {
      deserializeWebviewPanel: (panel, saved: unknown) => one.revive(panel, () => lastShown(saved)),
    }),
    vscode.window.onDidChangeActiveTextEditor((editor) => {
      if (editor?.document.languageId !== "scantling") return;
      goOn();
      if (setting("followEditor")) one.current()?.controller.consider(editor.document.uri.toString());
      one.current()?.controller.cursor(cursorIn(editor));
    }),
    vscode.window.onDidChangeTextEditorSelection(({ textEditor }) => {
      if (textEditor === vscode.window.activeTextEditor) one.current()?.controller.cursor(cursorIn(textEditor));
    }),
    vscode.workspace.onDidChangeConfiguration((event) => {
      if (!event.affectsConfiguration("scantling.rod")) return;
      one.current()?.controller.cursor(cursorIn(vscode.window.activeTextEditor));
      // The page is told on its arrival whether there are drawings.
      const shown = one.current();
      if (shown !== undefined) shown.panel.webview.html = htmlFor(shown.panel.webview, extensionUri);
    }),
    vscode.workspace.onDidCloseTextDocument(goOn),
    vscode.workspace.onDidRenameFiles(({ files }) => {
      const controller = one.current()?.controller;
      const moved = movedTo(controller?.source(), files);
      if (moved !== undefined) controller?.open(moved);
    }),
    feed.onPlanSearched((search) => one.current()?.controller.searched(search)),
    feed.onRodChanged((uri, version) => one.current()?.controller.changed(uri, version)),
    onTurned(() => one.current()?.controller.turned()),
  );

  function open(uri: vscode.Uri): RodController {
    const shown = one.current();
    // One that was just made is in front; revealed at once, it would be told that it is hidden before it is shown.
    const controller = shown?.controller ?? one.take(createPanel());
    if (shown !== undefined) shown.panel.reveal(undefined, true);
    controller.open(uri.toString());
    return controller;
  }

  return {
    open,
    openPart: (uri, part) => open(uri).openPart(part),
    openDrawn: (uri, drawn) => open(uri).openDrawn(drawn),
    inFront: () => {
      const shown = one.current();
      const source = shown?.panel.active === true ? shown.controller.source() : undefined;
      return source === undefined ? undefined : vscode.Uri.parse(source);
    },
    dispose: () => {
      subscriptions.dispose();
      one.current()?.panel.dispose();
    },
  };
}

function createPanel(): vscode.WebviewPanel {
  const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
  return vscode.window.createWebviewPanel(ROD_VIEW_TYPE, vscode.l10n.t("Rod"), place, { enableFindWidget: true });
}

function htmlFor(webview: vscode.Webview, extensionUri: vscode.Uri): string {
  const address = (name: string) => webview.asWebviewUri(vscode.Uri.joinPath(extensionUri, "dist", name)).toString();
  return pageHtml({
    nonce: createNonce(),
    script: address("webview.js"),
    style: address("webview.css"),
    source: webview.cspSource,
  });
}

/** How long a plan is searched for at a time. */
export function searchSeconds(): number {
  return vscode.workspace.getConfiguration("scantling.plan").get("seconds", 10);
}

function setting(name: "followEditor" | "markCursor" | "showDrawings"): boolean {
  return vscode.workspace.getConfiguration("scantling.rod").get(name, true);
}

/** Where the cursor of the editor is, if it is in a build file and is to be marked on the rod. */
function cursorIn(editor: vscode.TextEditor | undefined): CursorLine | undefined {
  if (editor?.document.languageId !== "scantling" || !setting("markCursor")) return undefined;
  return { uri: editor.document.uri.toString(), line: editor.selection.active.line };
}

/**
 * Opens the document, and gives its address if it is a build file: the window closes documents that no editor shows, and
 * the server can only tell of those that are open.
 */
async function openable(uri: string): Promise<vscode.Uri | undefined> {
  try {
    const document = await documentAt(vscode.Uri.parse(uri, true));
    return document.languageId === "scantling" ? document.uri : undefined;
  } catch {
    // Moved or deleted since; the rod says so by having nothing to show.
    return undefined;
  }
}

async function reveal(target: Target, panel: vscode.WebviewPanel): Promise<void> {
  const uri = vscode.Uri.parse(target.uri);
  const selection = new vscode.Range(target.line, target.column, target.endLine, target.endColumn);
  const shown = vscode.window.visibleTextEditors.find((editor) => editor.document.uri.toString() === uri.toString());
  const viewColumn = shown?.viewColumn ?? columnBeside(panel);
  try {
    await vscode.window.showTextDocument(uri, { selection, viewColumn });
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    void vscode.window.showWarningMessage(vscode.l10n.t("{0} could not be opened: {1}", baseName(uri), reason));
  }
}

/** The column of an editor that is there already, so that the rod is not covered by the text it leads to. */
function columnBeside(panel: vscode.WebviewPanel): vscode.ViewColumn {
  const other = vscode.window.visibleTextEditors.find((editor) => editor.viewColumn !== panel.viewColumn);
  return (
    other?.viewColumn ?? (panel.viewColumn === vscode.ViewColumn.One ? vscode.ViewColumn.Beside : vscode.ViewColumn.One)
  );
}
