import type { Connection, InitializeParams, ServerCapabilities } from "vscode-languageserver";
import { DidChangeWatchedFilesNotification, TextDocumentSyncKind, TextDocuments } from "vscode-languageserver";
import { TextDocument } from "vscode-languageserver-textdocument";
import { createJobPlans } from "./job-plans.ts";
import type { ClientFacts, PdfPapers, Server } from "./lsp/feature.ts";
import { features } from "./lsp/features.ts";
import { createProblems } from "./lsp/problems.ts";
import { rodNotifier } from "./lsp/rod.ts";
import { tell } from "./lsp/tell.ts";
import { createPreviewFeed } from "./preview-feed.ts";
import type { FileParams, ReadFileResult, StartOptions } from "./protocol.ts";
import { readFile } from "./protocol.ts";
import type { OpenFile, Session } from "./session.ts";
import { createSession } from "./session.ts";
import { canonical } from "./uris.ts";

/** What the machine that the server runs on can do for it. */
export interface Host {
  /**
   * The text of a `file:` address on this machine; `undefined` if there is none inside `root`, itself an address.
   * Without it, and for all other kinds of address, the editor is asked.
   */
  readonly readDisk?: (uri: string, root: string) => Promise<string | undefined>;
  /** Writes papers as PDF, of those kinds that are; without it there are none. */
  readonly pdfPapers?: PdfPapers;
}

/** Serves one editor over a connection until that ends. */
export function serve(connection: Connection, host: Host): void {
  let client = clientFacts({ capabilities: {} });
  const session = createSession({
    read: (uri, root) =>
      host.readDisk !== undefined && uri.startsWith("file:") ? host.readDisk(uri, root) : askEditor(connection, uri),
    fault: (what, error) =>
      tell(() => connection.console.error(`${what}\n${error instanceof Error ? error.stack : error}`)),
  });
  const feed = createPreviewFeed(rodNotifier({ connection, session }));
  const server: Server = {
    connection,
    session,
    problems: createProblems(),
    feed,
    plans: createJobPlans(),
    pdfPapers: host.pdfPapers,
    client: () => client,
  };

  connection.onInitialize((params) => {
    client = clientFacts(params);
    session.setFolders(foldersOf(params));
    return { capabilities: capabilities(), serverInfo: { name: "scantling" } };
  });
  connection.onInitialized(() => {
    if (client.watchesOnRequest) void watchBuildFiles(connection);
    if (client.hasFolders) followFolders(connection, session);
  });
  followDocuments(connection, session);
  connection.onDidChangeWatchedFiles(({ changes }) => session.changedOnDisk(changes.map((change) => change.uri)));
  for (const feature of features) feature.register(server);
  connection.listen();
}

function capabilities(): ServerCapabilities {
  const own: ServerCapabilities = {
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
    workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
  };
  const all = [own, ...features.map((feature) => feature.capabilities)];
  return Object.assign({}, ...all, { workspace: Object.assign({}, ...all.map(({ workspace }) => workspace ?? {})) });
}

function clientFacts({ capabilities: { workspace, textDocument }, initializationOptions }: ClientSays): ClientFacts {
  const { findingPages } = (initializationOptions ?? {}) as StartOptions;
  return {
    versionedEdits: workspace?.workspaceEdit?.documentChanges === true,
    relatedInformation: textDocument?.publishDiagnostics?.relatedInformation === true,
    hasFolders: workspace?.workspaceFolders === true,
    watchesOnRequest: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    hasConfiguration: workspace?.configuration === true,
    refreshes: {
      hints: workspace?.inlayHint?.refreshSupport === true,
      lenses: workspace?.codeLens?.refreshSupport === true,
      tokens: workspace?.semanticTokens?.refreshSupport === true,
    },
    snippets: textDocument?.completion?.completionItem?.snippetSupport === true,
    findingPages: typeof findingPages === "string" ? findingPages : undefined,
  };
}

type ClientSays = Pick<InitializeParams, "capabilities" | "initializationOptions">;

function foldersOf({ workspaceFolders, rootUri }: InitializeParams): readonly string[] {
  if (workspaceFolders !== undefined && workspaceFolders !== null) return workspaceFolders.map((folder) => folder.uri);
  return rootUri === null ? [] : [rootUri];
}

async function watchBuildFiles(connection: Connection): Promise<void> {
  try {
    await connection.client.register(DidChangeWatchedFilesNotification.type, {
      watchers: [{ globPattern: "**/*.scant" }],
    });
  } catch (error) {
    tell(() => connection.console.warn(`Files that change on disk will not be noticed: ${error}`));
  }
}

function followFolders(connection: Connection, session: Session): void {
  connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) => {
    const gone = new Set(removed.map((folder) => canonical(folder.uri)));
    const now = new Set([...session.folders(), ...added.map((folder) => canonical(folder.uri))]);
    session.setFolders([...now].filter((folder) => !gone.has(folder)));
  });
}

function followDocuments(connection: Connection, session: Session): void {
  const documents = new TextDocuments(TextDocument);
  const opened = new Set<string>();
  documents.onDidChangeContent(({ document }) => {
    const isNew = !opened.has(document.uri);
    opened.add(document.uri);
    const file = openFile(document);
    if (isNew) session.open(file);
    else session.change(file);
  });
  documents.onDidClose(({ document }) => {
    opened.delete(document.uri);
    session.close(canonical(document.uri));
  });
  documents.listen(connection);
}

function openFile(document: TextDocument): OpenFile {
  const { uri, version } = document;
  return { uri: canonical(uri), clientUri: uri, version, text: document.getText() };
}

/** How long the editor may take to read a file before there seems to be none. */
const patience = 10_000;

async function askEditor(connection: Connection, uri: string): Promise<string | undefined> {
  const params: FileParams = { uri };
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<null>((resolve) => {
    timer = setTimeout(() => resolve(null), patience);
  });
  try {
    const answer = await Promise.race([connection.sendRequest<ReadFileResult>(readFile, params), late]);
    return typeof answer?.text === "string" ? answer.text : undefined;
  } catch {
    // An editor that does not know the request has no such file.
    return undefined;
  } finally {
    clearTimeout(timer);
  }
}
