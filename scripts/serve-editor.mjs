/**
 * Serves a real VS Code on this machine alone, with the packaged extension installed and examples/ (or the folder given) open,
 * and prints where. Ctrl+C ends it. SCANTLING_PORT sets the port; SCANTLING_VSIX takes another package than a fresh one.
 */
import { spawnSync } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { setUpEditor } from "./real-editor.mjs";
import { installExtension, startEditor } from "./run-editor.mjs";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const home = await mkdtemp(join(tmpdir(), "scantling-editor-"));
let editor;
try {
  const vsix = packaged();
  const paths = await setUpEditor();
  const extensions = join(home, "extensions");
  await installExtension(paths, { vsix, home, extensions });
  editor = await startEditor(paths, {
    folder: resolve(process.argv[2] ?? join(root, "examples")),
    home,
    extensions,
    port: Number(process.env.SCANTLING_PORT ?? 0),
    settings: { "workbench.startupEditor": "none", "security.workspace.trust.enabled": false },
  });
  console.log(`\nOpen this in a browser:\n\n  ${editor.url}\n\nCtrl+C ends it. What you change in the folder is kept.`);
  await Promise.race([editor.ended, interrupted()]);
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
} finally {
  await editor?.stop();
  await rm(home, { recursive: true, force: true, maxRetries: 5 });
}

function packaged() {
  if (process.env.SCANTLING_VSIX !== undefined) return resolve(process.env.SCANTLING_VSIX);
  const made = spawnSync(process.execPath, [join(root, "scripts", "package.mjs")], { stdio: "inherit" });
  if (made.status !== 0) throw new Error("The extension could not be packaged; what is above says why.");
  return join(root, "scantling.vsix");
}

function interrupted() {
  return new Promise((settle) => {
    for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.once(signal, settle);
  });
}
