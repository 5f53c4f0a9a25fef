import { spawnSync } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { setUpEditor } from "../../scripts/real-editor.mjs";
import { installExtension } from "../../scripts/run-editor.mjs";
import type { Prepared } from "./session.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));

/**
 * Sets up the editor and installs the package, once for all sessions; SCANTLING_VSIX takes another package than a fresh
 * one. `clear` removes what was installed.
 */
export async function prepare(): Promise<Prepared & { readonly clear: () => Promise<void> }> {
  const vsix = packaged();
  const editorPaths = await setUpEditor();
  const home = await mkdtemp(join(tmpdir(), "scantling-install-"));
  const installedExtensions = join(home, "extensions");
  await installExtension(editorPaths, { vsix, home, extensions: installedExtensions });
  return { editorPaths, installedExtensions, clear: () => rm(home, { recursive: true, force: true, maxRetries: 5 }) };
}

function packaged(): string {
  const given = process.env.SCANTLING_VSIX;
  if (given !== undefined) return resolve(given);
  const made = spawnSync(process.execPath, [join(root, "scripts", "package.mjs")], { stdio: "inherit" });
  if (made.status !== 0) throw new Error("The extension could not be packaged; what is above says why.");
  return join(root, "scantling.vsix");
}
