// Makes a bare clone ready: installs the packages of the lock file when they are not there yet.
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const npm = process.platform === "win32" ? "npm.cmd" : "npm";

if (!installed()) {
  console.log("The packages are not installed yet: npm ci");
  const run = spawnSync(npm, ["ci", "--no-audit", "--no-fund"], { cwd: root, stdio: "inherit" });
  process.exit(run.status ?? 1);
}

/** Whether the installed tree is the lock file's: npm notes what it installed in a hidden lock file of its own. */
function installed() {
  const noted = join(root, "node_modules", ".package-lock.json");
  if (!existsSync(noted) || !existsSync(join(root, "node_modules", "node", "bin"))) return false;
  const wanted = JSON.parse(readFileSync(join(root, "package-lock.json"), "utf8")).packages;
  const there = JSON.parse(readFileSync(noted, "utf8")).packages;
  return Object.entries(wanted).every(
    ([path, entry]) => path === "" || entry.optional === true || there[path]?.version === entry.version,
  );
}
