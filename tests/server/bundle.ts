import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import esbuild from "esbuild";
import { afterAll, beforeAll } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));

/** Builds an entry as it ships, once for a test file; call the result inside a test to get the bundle's path. */
export function useBundle(entry: string, platform: "node" | "browser" = "node"): () => string {
  let folder: string | undefined;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "scantling-bundle-"));
    await esbuild.build({
      absWorkingDir: root,
      entryPoints: [entry],
      outfile: join(folder, "bundle.cjs"),
      bundle: true,
      platform,
      format: platform === "node" ? "cjs" : "iife",
      target: platform === "node" ? "node22" : "es2022",
      logLevel: "silent",
    });
  }, 60_000);
  afterAll(async () => {
    if (folder !== undefined) await rm(folder, { recursive: true, force: true });
  });
  return () => {
    if (folder === undefined) throw new Error("The bundle exists only while a test runs.");
    return join(folder, "bundle.cjs");
  };
}
