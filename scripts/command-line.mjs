/** How the command line is made of its parts; for the build and for what tries it as it ships. */
import { spawnSync } from "node:child_process";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import esbuild from "esbuild";
import { papersApart } from "./papers-apart.mjs";
import { smallProtocol } from "./small-protocol.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Node begins with `start`, which runs `program`: from its compiled code, if that is kept beside it. */
export const commandLine = {
  start: { entry: "server/cli/start.ts", file: "scantling.cjs", options: {} },
  program: {
    entry: "server/cli/main.ts",
    file: "command-line.cjs",
    // Run as a script, it has no import() of its own.
    options: { plugins: [papersApart, smallProtocol], supported: { "dynamic-import": false } },
  },
};

/**
 * Runs the program of a folder over the examples with a Node, and keeps what it was compiled to beside it. Throws when
 * the program cannot be run.
 */
export async function keepCompiled(folder, node = process.execPath) {
  const { outputFiles } = await esbuild.build({
    absWorkingDir: root,
    entryPoints: ["server/cli/keep-compiled.ts"],
    bundle: true,
    write: false,
    platform: "node",
    format: "cjs",
    target: "node22",
  });
  const examples = readdirSync(join(root, "examples")).filter((name) => name.endsWith(".scant"));
  const { status, error, stderr } = spawnSync(node, ["-", folder, "check", ...examples], {
    cwd: join(root, "examples"),
    input: outputFiles[0].text,
    stdio: ["pipe", "ignore", "pipe"],
  });
  if (status !== 0) throw new Error(`the command line's compiled code could not be kept: ${error ?? stderr}`);
}
