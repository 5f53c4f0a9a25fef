import { rm } from "node:fs/promises";
import type { TestProject } from "vitest/node";
import type { EditorPaths } from "../../scripts/real-editor.mjs";
import { outFolder } from "./out-folder.ts";
import { prepare } from "./prepare.ts";

declare module "vitest" {
  export interface ProvidedContext {
    readonly editorPaths: EditorPaths;
    readonly installedExtensions: string;
  }
}

/** Prepares the editor and the package once for all files. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  await rm(outFolder, { recursive: true, force: true });
  const { editorPaths, installedExtensions, clear } = await prepare();
  project.provide("editorPaths", editorPaths);
  project.provide("installedExtensions", installedExtensions);
  return clear;
}
