import type { ChildProcess } from "node:child_process";
import { spawn } from "node:child_process";
import { PassThrough } from "node:stream";
import { onTestFinished } from "vitest";
import { createConnection } from "vscode-languageserver/node";
import type { Diagnostic, MessageConnection, PublishDiagnosticsParams } from "vscode-languageserver-protocol/node";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-languageserver-protocol/node";
import { callOff } from "../../server/call-off.ts";
import type { Host } from "../../server/connection.ts";
import { serve } from "../../server/connection.ts";
import type { RodChangedParams, StartOptions } from "../../server/protocol.ts";

/** An editor at the other end of the server's connection, as far as tests need one. */
export interface Editor {
  readonly connection: MessageConnection;
  /** Everything published, in order. */
  readonly published: readonly PublishDiagnosticsParams[];
  /** Every change of a rod, in order. */
  readonly rods: readonly RodChangedParams[];
  /** Requests the server made to register something, by method. */
  readonly registered: readonly string[];
  open(uri: string, text: string, version?: number): void;
  /** Replaces the whole text. */
  change(uri: string, text: string, version: number): void;
  close(uri: string): void;
  /** What was last published of a file, once it is of this version; fails after fifteen seconds. */
  diagnosticsOf(uri: string, version: number): Promise<readonly Diagnostic[]>;
  /** Waits until the condition holds; fails after fifteen seconds. */
  until(what: string, holds: () => boolean): Promise<void>;
}

export interface EditorOptions {
  readonly folders?: readonly string[];
  readonly capabilities?: object;
  readonly options?: StartOptions;
  /** Answers `scantling/readFile`; the request is unknown to the editor if left out. */
  readonly readFile?: (uri: string) => string | null;
  /** Answers `scantling/buildFiles`; the request is unknown to the editor if left out. */
  readonly buildFiles?: () => readonly string[];
  /** Answers what the settings of a section are. */
  readonly settings?: () => object;
}

/** Starts a server within this process. */
export async function inProcess(host: Host, options: EditorOptions = {}): Promise<Editor> {
  const toServer = new PassThrough();
  const toEditor = new PassThrough();
  const server = createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(toEditor), callOff);
  serve(server, host);
  const connection = createMessageConnection(new StreamMessageReader(toEditor), new StreamMessageWriter(toServer));
  onTestFinished(() => {
    connection.dispose();
    server.dispose();
  });
  return start(connection, options);
}

/** Starts a server's bundle as a process of its own, spoken to over standard input and output. */
export async function inBundle(
  bundle: string,
  options: EditorOptions = {},
): Promise<Editor & { process: ChildProcess }> {
  const child = spawn(process.execPath, [bundle, "--stdio"], { stdio: ["pipe", "pipe", "inherit"] });
  const connection = createMessageConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  onTestFinished(() => {
    connection.dispose();
    child.kill();
  });
  return { ...(await start(connection, options)), process: child };
}

/** Makes the connection an editor and starts the server at its other end. */
export async function start(connection: MessageConnection, options: EditorOptions): Promise<Editor> {
  const published: PublishDiagnosticsParams[] = [];
  const rods: RodChangedParams[] = [];
  const registered: string[] = [];
  connection.onNotification("textDocument/publishDiagnostics", (params: PublishDiagnosticsParams) => {
    published.push(params);
  });
  connection.onNotification("scantling/rodChanged", (params: RodChangedParams) => {
    rods.push(params);
  });
  connection.onRequest("client/registerCapability", (params: { registrations: { method: string }[] }) => {
    registered.push(...params.registrations.map((each) => each.method));
    return null;
  });
  const { readFile, buildFiles, settings } = options;
  if (settings !== undefined) connection.onRequest("workspace/configuration", () => [settings()]);
  if (buildFiles !== undefined) connection.onRequest("scantling/buildFiles", () => ({ uris: buildFiles() }));
  if (readFile !== undefined) {
    connection.onRequest("scantling/readFile", ({ uri }: { uri: string }) => {
      const text = readFile(uri);
      return text === null ? null : { text };
    });
  }
  connection.listen();
  await connection.sendRequest("initialize", {
    processId: null,
    rootUri: null,
    capabilities: options.capabilities ?? {
      workspace: { workspaceEdit: { documentChanges: true } },
      textDocument: { publishDiagnostics: { relatedInformation: true } },
    },
    workspaceFolders: (options.folders ?? []).map((uri) => ({ uri, name: "folder" })),
    initializationOptions: options.options,
  });
  await connection.sendNotification("initialized", {});

  const until = async (what: string, holds: () => boolean): Promise<void> => {
    const last = Date.now() + 15_000;
    while (!holds()) {
      if (last < Date.now()) throw new Error(`waited in vain for ${what}`);
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  };
  const lastOf = (uri: string): PublishDiagnosticsParams | undefined => published.findLast((each) => each.uri === uri);
  return {
    connection,
    published,
    rods,
    registered,
    until,
    open: (uri, text, version = 1) =>
      void connection.sendNotification("textDocument/didOpen", {
        textDocument: { uri, languageId: "scantling", version, text },
      }),
    change: (uri, text, version) =>
      void connection.sendNotification("textDocument/didChange", {
        textDocument: { uri, version },
        contentChanges: [{ text }],
      }),
    close: (uri) => void connection.sendNotification("textDocument/didClose", { textDocument: { uri } }),
    async diagnosticsOf(uri, version) {
      await until(`version ${version} of ${uri}`, () => lastOf(uri)?.version === version);
      return lastOf(uri)?.diagnostics ?? [];
    },
  };
}
