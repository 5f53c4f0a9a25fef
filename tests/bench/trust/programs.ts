import { spawn } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import esbuild, { type BuildOptions } from "esbuild";
import type { MessageConnection, PublishDiagnosticsParams } from "vscode-languageserver-protocol/node";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-languageserver-protocol/node";
import { commandLine, keepCompiled } from "../../../scripts/command-line.mjs";
import { papersApart } from "../../../scripts/papers-apart.mjs";

const root = fileURLToPath(new URL("../../..", import.meta.url));

/** A folder for what a bench makes; gone when the bench ends. */
export function benchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "scantling-trust-"));
  process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Bundles the server as it ships, minified, with what writes papers in a bundle of its own, and says where it is. */
export async function shippedServer(folder: string): Promise<string> {
  await papersIn(folder);
  return bundled("server/main.ts", join(folder, "server.cjs"), { plugins: [papersApart] });
}

/** The command line likewise, with its compiled code beside it. */
export async function shippedCommandLine(folder: string): Promise<string> {
  const { start, program } = commandLine;
  await papersIn(folder);
  await bundled(program.entry, join(folder, program.file), program.options);
  await keepCompiled(folder);
  return bundled(start.entry, join(folder, start.file), start.options);
}

async function papersIn(folder: string): Promise<void> {
  const papers = join(folder, "papers.cjs");
  if (existsSync(papers)) return;
  await bundled("server/cli/pdf/paper-files.ts", papers, {
    define: { "import.meta.url": "ownAddress" },
    banner: { js: 'const ownAddress = require("node:url").pathToFileURL(__filename).href;' },
  });
  mkdirSync(join(folder, "fonts"), { recursive: true });
  const fonts = join(root, "node_modules/@expo-google-fonts/source-sans-3");
  for (const font of ["400Regular/SourceSans3_400Regular.ttf", "600SemiBold/SourceSans3_600SemiBold.ttf"]) {
    copyFileSync(join(fonts, font), join(folder, "fonts", basename(font)));
  }
}

async function bundled(entry: string, outfile: string, options: BuildOptions): Promise<string> {
  await esbuild.build({
    absWorkingDir: root,
    entryPoints: [entry],
    outfile,
    bundle: true,
    minify: true,
    platform: "node",
    format: "cjs",
    target: "node22",
    logLevel: "error",
    ...options,
  });
  return outfile;
}

/** A language server as a process of its own, with an editor at the other end as far as a bench needs one. */
export interface Served {
  readonly connection: MessageConnection;
  open(uri: string, text: string): void;
  change(uri: string, text: string, version: number): void;
  /** Waits for the findings of this version. */
  findings(uri: string, version: number): Promise<PublishDiagnosticsParams>;
  end(): void;
}

export async function served(bundle: string, folder?: string): Promise<Served> {
  const child = spawn(process.execPath, [bundle, "--stdio"], { stdio: ["pipe", "pipe", "inherit"] });
  const connection = createMessageConnection(
    new StreamMessageReader(child.stdout),
    new StreamMessageWriter(child.stdin),
  );
  const waiting = new Map<string, (params: PublishDiagnosticsParams) => void>();
  connection.onNotification("textDocument/publishDiagnostics", (params: PublishDiagnosticsParams) => {
    const key = `${params.uri} ${params.version}`;
    waiting.get(key)?.(params);
    waiting.delete(key);
  });
  connection.onRequest("client/registerCapability", () => null);
  connection.listen();
  const workspaceFolders = folder === undefined ? [] : [{ uri: folder, name: "bench" }];
  await connection.sendRequest("initialize", { processId: null, rootUri: null, capabilities: {}, workspaceFolders });
  await connection.sendNotification("initialized", {});
  return {
    connection,
    open: (uri, text) =>
      void connection.sendNotification("textDocument/didOpen", {
        textDocument: { uri, languageId: "scantling", version: 1, text },
      }),
    change: (uri, text, version) =>
      void connection.sendNotification("textDocument/didChange", {
        textDocument: { uri, version },
        contentChanges: [{ text }],
      }),
    findings: (uri, version) => new Promise((resolve) => waiting.set(`${uri} ${version}`, resolve)),
    end: () => {
      connection.dispose();
      child.kill();
    },
  };
}
