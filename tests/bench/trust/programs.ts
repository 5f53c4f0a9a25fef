import { spawn } from "node:child_process";
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import esbuild from "esbuild";
import type { MessageConnection, PublishDiagnosticsParams } from "vscode-languageserver-protocol/node";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-languageserver-protocol/node";
import { papersApart } from "../../../scripts/papers-apart.mjs";
import { smallProtocol } from "../../../scripts/small-protocol.mjs";

const root = fileURLToPath(new URL("../../..", import.meta.url));

/** A folder for what a bench makes; gone when the bench ends. */
export function benchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "scantling-trust-"));
  process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Bundles a program as it ships, minified, with what writes papers in a bundle of its own, and says where it is. */
export async function shipped(entry: string, folder: string): Promise<string> {
  const papers = join(folder, "papers.cjs");
  if (!existsSync(papers)) {
    await bundled("server/cli/pdf/paper-files.ts", papers);
    mkdirSync(join(folder, "fonts"), { recursive: true });
    const fonts = join(root, "node_modules/@expo-google-fonts/source-sans-3");
    for (const font of ["400Regular/SourceSans3_400Regular.ttf", "600SemiBold/SourceSans3_600SemiBold.ttf"]) {
      copyFileSync(join(fonts, font), join(folder, "fonts", basename(font)));
    }
  }
  const out = join(folder, entry.replaceAll("/", "-").replace(/\.ts$/, ".cjs"));
  await bundled(entry, out);
  return out;
}

async function bundled(entry: string, out: string): Promise<void> {
  await esbuild.build({
    absWorkingDir: root,
    entryPoints: [entry],
    outfile: out,
    bundle: true,
    minify: true,
    platform: "node",
    format: "cjs",
    target: "node22",
    define: { "import.meta.url": "ownAddress" },
    banner: { js: 'const ownAddress = require("node:url").pathToFileURL(__filename).href;' },
    logLevel: "error",
    // As esbuild.mjs does it.
    plugins: entry === "server/cli/main.ts" ? [papersApart, smallProtocol] : [papersApart],
  });
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
