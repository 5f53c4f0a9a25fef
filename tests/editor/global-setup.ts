import { spawnSync } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import type { TestProject } from "vitest/node";
import { type EditorPaths, setUpEditor } from "../../scripts/real-editor.mjs";
import { installExtension } from "../../scripts/run-editor.mjs";
import { outFolder } from "./out-folder.ts";

declare module "vitest" {
  export interface ProvidedContext {
    readonly editorPaths: EditorPaths;
    /** A folder with the packaged extension installed, which each session copies. */
    readonly installedExtensions: string;
  }
}

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Prepares the editor and installs the package once; SCANTLING_VSIX tests another package than a fresh one. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  await rm(outFolder, { recursive: true, force: true });
  const vsix = packaged();
  const editorPaths = await setUpEditor();
  const home = await mkdtemp(join(tmpdir(), "scantling-install-"));
  const installedExtensions = join(home, "extensions");
  await installExtension(editorPaths, { vsix, home, extensions: installedExtensions });
  project.provide("editorPaths", editorPaths);
  project.provide("installedExtensions", installedExtensions);
  return () => rm(home, { recursive: true, force: true, maxRetries: 5 });
}

function packaged(): string {
  const given = process.env.SCANTLING_VSIX;
  if (given !== undefined) return resolve(given);
  const made = spawnSync(process.execPath, [join(root, "scripts", "package.mjs")], { stdio: "inherit" });
  if (made.status !== 0) throw new Error("The extension could not be packaged; what is above says why.");
  return join(root, "scantling.vsix");
}
