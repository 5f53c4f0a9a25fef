import { builtinModules } from "node:module";

/** Two copies of either talk past each other: a cancelled token throws "No runtime abstraction layer installed". */
const SINGLE_PACKAGES = ["vscode-jsonrpc", "vscode-languageserver-protocol"];

/**
 * Says what keeps a bundle from working where it is going to run, as sentences; none when it is fine.
 * `metafile` is esbuild's; a target has `platform`, and may have `speaksProtocol`, `isWebview`, `external`, `out`.
 */
export function bundleFaults(metafile, target) {
  return [
    ...SINGLE_PACKAGES.flatMap((name) => copyFaults(metafile, target, name)),
    ...(target.platform === "browser" ? nodeFaults(metafile) : []),
    ...(target.isWebview === true ? webviewFaults(metafile, target) : []),
  ];
}

function copyFaults(metafile, target, name) {
  const folder = new RegExp(`^(.*node_modules/${name})/`);
  const copies = new Set(Object.keys(metafile.inputs).flatMap((file) => folder.exec(file)?.[1] ?? []));
  if (1 < copies.size) return [`${copies.size} copies of ${name}: ${[...copies].join(", ")}`];
  if (copies.size === 0 && target.speaksProtocol === true) return [`no copy of ${name}, which it speaks by`];
  return [];
}

function nodeFaults(metafile) {
  const faults = [];
  for (const [file, input] of Object.entries(metafile.inputs)) {
    for (const { path } of input.imports) {
      if (path.startsWith("node:") || builtinModules.includes(path)) faults.push(`${file} imports Node's ${path}`);
    }
  }
  return faults;
}

function webviewFaults(metafile, target) {
  const foreign = /(^|\/)node_modules\/(langium|chevrotain|@chevrotain\/[^/]+|vscode-[^/]+)\//;
  const faults = Object.keys(metafile.inputs)
    .filter((file) => foreign.test(file))
    .map((file) => `${file} is in the page`);
  const style = target.out.replace(/\.js$/, ".css");
  if (metafile.outputs[style] === undefined) faults.push(`no ${style}: the page's entry imports no style sheet`);
  return faults;
}
