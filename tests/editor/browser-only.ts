import { readFile } from "node:fs/promises";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { dirname, extname, join, normalize, sep } from "node:path";

/** A VS Code that has no machine behind it: everything runs in the browser, and only files are fetched. */
export interface BrowserOnly {
  readonly url: string;
  readonly stop: () => Promise<void>;
}

export interface BrowserOnlyOptions {
  /** code-server's entry, whose workbench is served. */
  readonly entry: string;
  /** Folders of unpacked extensions, by the name under which they are fetched. */
  readonly extensions: Readonly<Record<string, string>>;
  /** The address of the folder that is open, in a file system that one of the extensions provides. */
  readonly folderUri: { readonly scheme: string; readonly authority: string; readonly path: string };
  readonly settings: Readonly<Record<string, unknown>>;
}

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".cjs": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".md": "text/markdown; charset=utf-8",
  ".ttf": "font/ttf",
  ".wasm": "application/wasm",
};

/** What ties code-server's workbench to the machine it is served from, and what stands there in a VS Code without one. */
const TIES: readonly (readonly [tied: RegExp, free: string])[] = [
  [/,remoteAuthority:location\.host\}/g, "}"],
  [
    /(get userRoamingDataHome\(\)\{return )\w+\((\w+)\.file\(this\.userDataPath\)\.with\(\{scheme:\w+\.vscodeRemote\}\),"User"\)/g,
    '$1$2.from({scheme:"vscode-userdata",path:"/User"})',
  ],
];

/** Serves the workbench with the extensions on a free loopback port. Rejects when the workbench is not as it was. */
export async function serveBrowserOnly(options: BrowserOnlyOptions): Promise<BrowserOnly> {
  const workbench = join(dirname(options.entry), "..", "..", "lib", "vscode");
  const script = await readFile(join(workbench, "out", "vs", "code", "browser", "workbench", "workbench.js"), "utf8");
  const untied = TIES.reduce((text, [tied, free]) => replacedOnce(text, tied, free), script);
  const server = createServer((request, response) => {
    answer(request, response).catch((error: unknown) => {
      response.writeHead(404).end(String(error));
    });
  });
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const { port } = server.address() as AddressInfo;
  const origin = `http://127.0.0.1:${port}`;
  const page = await pageFor(workbench, origin, options);

  async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
    const path = decodeURIComponent(new URL(request.url ?? "/", origin).pathname);
    const headers = { "access-control-allow-origin": "*" };
    if (path === "/") {
      response.writeHead(200, { "content-type": "text/html" }).end(page);
    } else if (path.endsWith("/workbench/workbench.js")) {
      response.writeHead(200, { ...headers, "content-type": "text/javascript" }).end(untied);
    } else {
      const body = await readFile(fileFor(path, workbench, options));
      response.writeHead(200, { ...headers, "content-type": TYPES[extname(path)] ?? "application/octet-stream" });
      response.end(body);
    }
  }
  return { url: `${origin}/`, stop: () => stop(server) };
}

function replacedOnce(text: string, tied: RegExp, free: string): string {
  const found = text.match(tied)?.length ?? 0;
  if (found !== 1) throw new Error(`The workbench of this code-server is not as it was: ${found} times ${tied}`);
  return text.replace(tied, free);
}

/** Throws for what is not below one of the folders that are served. */
function fileFor(path: string, workbench: string, { extensions }: BrowserOnlyOptions): string {
  const [, first = "", second = "", ...rest] = path.split("/");
  const folder = first === "static" ? workbench : first === "extensions" ? extensions[second] : undefined;
  if (folder === undefined) throw new Error(`Nothing is served at ${path}`);
  const file = normalize(join(folder, first === "static" ? join(second, ...rest) : join(...rest)));
  if (!file.startsWith(`${normalize(folder)}${sep}`)) throw new Error(`${path} leads out of its folder`);
  return file;
}

async function pageFor(workbench: string, origin: string, options: BrowserOnlyOptions): Promise<string> {
  const { hostname, port } = new URL(origin);
  const product = JSON.parse(await readFile(join(workbench, "product.json"), "utf8"));
  const webviews = `${origin}/static/out/vs/workbench/contrib/webview/browser/pre/`;
  const configuration = {
    folderUri: options.folderUri,
    additionalBuiltinExtensions: Object.keys(options.extensions).map((name) => ({
      scheme: "http",
      authority: `${hostname}:${port}`,
      path: `/extensions/${name}`,
    })),
    configurationDefaults: options.settings,
    productConfiguration: {
      ...product,
      extensionsGallery: undefined,
      webviewContentExternalBaseUrlTemplate: webviews,
    },
    userDataPath: "/user",
    isEnabledFileDownloads: true,
    isEnabledFileUploads: true,
    isEnabledCoderGettingStarted: false,
  };
  const template = await readFile(
    join(workbench, "out", "vs", "code", "browser", "workbench", "workbench.html"),
    "utf8",
  );
  const values: Readonly<Record<string, string>> = {
    WORKBENCH_WEB_CONFIGURATION: escaped(JSON.stringify(configuration)),
    WORKBENCH_AUTH_SESSION: "",
    WORKBENCH_WEB_BASE_URL: "/static",
    WORKBENCH_NLS_FALLBACK_URL: "/static/out/nls.messages.js",
    WORKBENCH_NLS_URL: "",
    WORKBENCH_SCRIPT_NONCE: "",
    BASE: "",
    VS_BASE: "",
  };
  return template.replace(/\{\{(\w+)\}\}/g, (_, name: string) => values[name] ?? "");
}

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll('"', "&quot;");
}

async function stop(server: Server): Promise<void> {
  server.closeAllConnections();
  await new Promise<void>((closed) => server.close(() => closed()));
}
