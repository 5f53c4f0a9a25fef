/** Builds everything minified and packs it as scantling.vsix, and checks that all the manifest points at is inside. */
import { spawnSync } from "node:child_process";
import { readFile } from "node:fs/promises";
import { dirname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { createVSIX, listFiles, PackageManager } from "@vscode/vsce";

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const packagePath = join(root, "scantling.vsix");

const built = spawnSync(process.execPath, [join(root, "esbuild.mjs"), "--minify"], { stdio: "inherit" });
if (built.status !== 0) process.exit(1);

const manifest = JSON.parse(await readFile(join(root, "package.json"), "utf8"));
const inside = new Set(
  (await listFiles({ cwd: root, packageManager: PackageManager.None })).map((file) => normalize(file)),
);
const absent = [...pathsIn(manifest)].filter((path) => !inside.has(path));
if (0 < absent.length) {
  console.error(
    `package.json points at files that .vscodeignore leaves out or that do not exist: ${absent.join(", ")}`,
  );
  process.exit(1);
}
// The bundles hold every dependency, so vsce must look for none; nor is there a home on the web to point links at.
await createVSIX({
  cwd: root,
  packagePath,
  dependencies: false,
  allowMissingRepository: true,
  rewriteRelativeLinks: false,
});

/** Every path inside the package that the manifest's entry points and contributions name. */
function pathsIn({ main, browser, icon, contributes = {} }) {
  const found = [main, browser, icon, ...stringsIn(contributes).filter((text) => /^\.\.?\//.test(text))];
  return new Set(found.filter((path) => path !== undefined).map((path) => normalize(path)));
}

function stringsIn(value) {
  if (typeof value === "string") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(stringsIn) : [];
}
