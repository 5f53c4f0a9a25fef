import { expect, test } from "vitest";
import { bundleFaults } from "../../scripts/bundle-faults.mjs";

const rpc = "node_modules/vscode-jsonrpc/lib/common/ral.js";
const protocol = "node_modules/vscode-languageserver-protocol/lib/common/api.js";

function contents(inputs: Readonly<Record<string, readonly string[]>>, outputs: readonly string[] = []) {
  return {
    inputs: Object.fromEntries(
      Object.entries(inputs).map(([file, paths]) => [file, { imports: paths.map((path) => ({ path })) }]),
    ),
    outputs: Object.fromEntries(outputs.map((file) => [file, {}])),
  };
}

const server = { out: "dist/server.cjs", platform: "node", speaksProtocol: true } as const;
const worker = { out: "dist/server-worker.js", platform: "browser", speaksProtocol: true } as const;
const page = { out: "dist/webview.js", platform: "browser", isWebview: true } as const;

test("one copy of each protocol package is fine, and so is Node in a bundle for Node", () => {
  expect(bundleFaults(contents({ [rpc]: [], [protocol]: ["node:net"] }), server)).toEqual([]);
});

test("a second copy is a fault, and so is none in a bundle that speaks the protocol", () => {
  const nested = `node_modules/langium/${rpc}`;
  expect(bundleFaults(contents({ [rpc]: [], [nested]: [], [protocol]: [] }), server)).toEqual([
    "2 copies of vscode-jsonrpc: node_modules/vscode-jsonrpc, node_modules/langium/node_modules/vscode-jsonrpc",
  ]);
  expect(bundleFaults(contents({ [rpc]: [] }), server)).toEqual([
    "no copy of vscode-languageserver-protocol, which it speaks by",
  ]);
});

test("Node's modules are a fault in a worker, under either name", () => {
  const faults = bundleFaults(contents({ [rpc]: ["node:fs"], [protocol]: ["path"] }), worker);
  expect(faults).toEqual([`${rpc} imports Node's node:fs`, `${protocol} imports Node's path`]);
});

test("the page has its style sheet and nothing of the language or the protocol", () => {
  const both = ["dist/webview.js", "dist/webview.css"];
  expect(bundleFaults(contents({ "extension/preview/webview/main.ts": [] }, both), page)).toEqual([]);
  expect(bundleFaults(contents({ "node_modules/langium/lib/index.js": [] }, both), page)).toEqual([
    "node_modules/langium/lib/index.js is in the page",
  ]);
  expect(bundleFaults(contents({}, ["dist/webview.js"]), page)).toEqual([
    "no dist/webview.css: the page's entry imports no style sheet",
  ]);
});
