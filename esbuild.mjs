/**
 * Builds everything that ships, one esbuild call per target, and then checks from what esbuild says it put in that each
 * bundle can work where it is going to run. `--minify` for the package, `--watch` while working.
 */
import { existsSync } from "node:fs";
import { chmod, copyFile, mkdir, rm, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import esbuild from "esbuild";
import { bundleFaults } from "./scripts/bundle-faults.mjs";
import { commandLine, keepCompiled } from "./scripts/command-line.mjs";
import { papersApart } from "./scripts/papers-apart.mjs";

const root = dirname(fileURLToPath(import.meta.url));
const minify = process.argv.includes("--minify");
const watch = process.argv.includes("--watch");

// .cjs because the package is "type": "module", and an ESM bundle of the server dies on its first dynamic require.
const forNode = { platform: "node", format: "cjs", target: "node22" };
// The web extension host loads a CommonJS module; a worker and a page run a plain script.
const forBrowser = { platform: "browser", format: "iife", target: "es2022" };
const forWebHost = { platform: "browser", format: "cjs", target: "es2022" };

/** A CommonJS bundle has no import.meta; some packages find their own files by it. */
const ownAddress = 'const ownAddress = require("node:url").pathToFileURL(__filename).href;';

const targets = [
  { entry: "extension/main.ts", out: "dist/extension.cjs", external: ["vscode"], speaksProtocol: true, ...forNode },
  { entry: "server/main.ts", out: "dist/server.cjs", speaksProtocol: true, ...forNode },
  { entry: "server/main-browser.ts", out: "dist/server-worker.js", speaksProtocol: true, ...forBrowser },
  {
    entry: "extension/main-browser.ts",
    out: "dist/extension-web.cjs",
    external: ["vscode"],
    speaksProtocol: true,
    ...forWebHost,
  },
  { entry: "extension/preview/webview/main.ts", out: "dist/webview.js", isWebview: true, ...forBrowser },
  {
    entry: commandLine.start.entry,
    out: `dist/${commandLine.start.file}`,
    banner: "#!/usr/bin/env node",
    runs: true,
    ...commandLine.start.options,
    ...forNode,
  },
  {
    entry: commandLine.program.entry,
    out: `dist/${commandLine.program.file}`,
    ...commandLine.program.options,
    ...forNode,
  },
  {
    entry: "server/cli/pdf/paper-files.ts",
    out: "dist/papers.cjs",
    banner: ownAddress,
    define: { "import.meta.url": "ownAddress" },
    ...forNode,
  },
];

/** The typeface that papers are set in, beside the bundle that embeds it, with its licence. */
const fonts = {
  "400Regular/SourceSans3_400Regular.ttf": "SourceSans3_400Regular.ttf",
  "600SemiBold/SourceSans3_600SemiBold.ttf": "SourceSans3_600SemiBold.ttf",
  LICENSE_FONT: "LICENSE_FONT",
};

await rm(join(root, "dist"), { recursive: true, force: true });
await mkdir(join(root, "dist/meta"), { recursive: true });
const missing = targets.filter((target) => !existsSync(join(root, target.entry)));
for (const target of missing) console.error(`NOT BUILT: ${target.out}: its entry ${target.entry} does not exist.`);
if (0 < missing.length) process.exit(1);

await mkdir(join(root, "dist/fonts"), { recursive: true });
for (const [from, to] of Object.entries(fonts)) {
  await copyFile(join(root, "node_modules/@expo-google-fonts/source-sans-3", from), join(root, "dist/fonts", to));
}

for (const target of targets) {
  const context = await esbuild.context(options(target));
  if (watch) {
    await context.watch();
  } else {
    // esbuild prints what is wrong itself.
    await context.rebuild().catch(() => {
      process.exitCode = 1;
    });
    await context.dispose();
  }
}
// While working it would be out of date with every change.
if (!watch && process.exitCode === undefined) await keepForEachNode();

/** The Node that builds, and the one that npm was started with: a command from a shell runs by the latter. */
async function keepForEachNode() {
  const dist = join(root, "dist");
  await keepCompiled(dist);
  const { npm_node_execpath: ofShell = process.execPath } = process.env;
  // That one may be too old for the program.
  if (ofShell !== process.execPath) await keepCompiled(dist, ofShell).catch(({ message }) => console.log(message));
}

function options(target) {
  const { entry, out, external = [], banner, define = {}, supported = {}, plugins = [papersApart] } = target;
  const { platform, format, target: language } = target;
  return {
    absWorkingDir: root,
    entryPoints: [entry],
    outfile: out,
    bundle: true,
    platform,
    format,
    target: language,
    external,
    banner: banner === undefined ? {} : { js: banner },
    define,
    supported,
    minify,
    sourcemap: minify ? false : "linked",
    metafile: true,
    logLevel: "warning",
    plugins: [...plugins, reportAndCheck(target)],
  };
}

/** After each build of the target: writes its metafile, says its size, and turns every fault into a failed build. */
function reportAndCheck(target) {
  return {
    name: "report-and-check",
    setup(build) {
      build.onEnd(async ({ metafile, errors }) => {
        if (0 < errors.length || metafile === undefined) return undefined;
        const name = target.out.replace(/^dist\//, "").replace(/\.c?js$/, "");
        await writeFile(join(root, "dist/meta", `${name}.json`), JSON.stringify(metafile));
        if (target.runs === true) await chmod(join(root, target.out), 0o755);
        for (const [file, { bytes }] of Object.entries(metafile.outputs)) {
          if (!file.endsWith(".map")) console.log(`${file.padEnd(24)} ${(bytes / 1024).toFixed(0).padStart(6)} kB`);
        }
        return { errors: bundleFaults(metafile, target).map((text) => ({ text: `${target.out}: ${text}` })) };
      });
    },
  };
}
