/**
 * Sets up a real VS Code for trying and testing the extension: code-server, the Node it wants, and Chromium.
 * Everything comes from the npm registry and the distribution's own packages, and is kept in a cache outside the
 * checkout. Run it on its own to prepare a machine, or import `setUpEditor`.
 */
import { spawn } from "node:child_process";
import { createWriteStream, existsSync } from "node:fs";
import { mkdir, readFile, rm, writeFile } from "node:fs/promises";
import { homedir } from "node:os";
import { delimiter, dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

const CODE_SERVER_VERSION = "4.139.1";
/** code-server refuses every other major, and its native modules have to be built against this Node's headers. */
const NODE_VERSION = "24.21.0";
const STAMP = "ready.json";
const ATTEMPTS = 3;

/** What a distribution package is needed for: present if one of `files` exists or one of `commands` is on the path. */
const SYSTEM_NEEDS = [
  { debian: "chromium", commands: ["chromium", "chromium-browser"], files: [], why: "the browser the editor runs in" },
  { debian: "libkrb5-dev", commands: [], files: ["/usr/include/gssapi/gssapi.h"], why: "a native module of VS Code" },
  { debian: "python3", commands: ["python3"], files: [], why: "node-gyp" },
  { debian: "make", commands: ["make"], files: [], why: "node-gyp" },
  { debian: "g++", commands: ["g++", "c++"], files: [], why: "node-gyp" },
];

/** The folder everything is kept in: SCANTLING_CACHE, or `scantling` under the user's cache folder. */
export function cacheFolder() {
  const set = process.env.SCANTLING_CACHE;
  if (set !== undefined && set !== "") return resolve(set);
  const base = process.env.XDG_CACHE_HOME;
  return join(base !== undefined && base !== "" ? base : join(homedir(), ".cache"), "scantling");
}

/**
 * Makes sure the editor is there and returns `{ node, entry, chromium }`, three paths. A second call returns at once;
 * two at a time wait for each other. Rejects with a message that says what to do.
 */
export async function setUpEditor({ say = console.log } = {}) {
  if (process.platform !== "linux") {
    throw new Error("The real editor is set up on Linux only. Elsewhere, install the .vsix into your own VS Code.");
  }
  const cache = cacheFolder();
  await mkdir(cache, { recursive: true });
  const release = await lock(cache, say);
  try {
    const chromium = await ensureSystemPackages(cache, say);
    return { ...(await ensureCodeServer(cache, say)), chromium };
  } finally {
    release();
  }
}

/**
 * Takes the lock and returns what gives it back. The kernel's file lock is held by a `flock` that lives only as long as
 * its input is open, so that it goes with this process however that ends.
 */
async function lock(cache, say) {
  const holder = spawn("flock", [join(cache, "lock"), "sh", "-c", "echo held; exec cat"], {
    stdio: ["pipe", "pipe", "ignore"],
  });
  const slow = setTimeout(() => say("Another run is setting up the editor; waiting for it."), 500);
  try {
    await new Promise((settle, fail) => {
      holder.stdout.once("data", settle);
      holder.once("error", fail);
      holder.once("exit", (code) => fail(new Error(`flock ended with ${code} before it had ${join(cache, "lock")}.`)));
    });
  } finally {
    clearTimeout(slow);
  }
  return () => holder.stdin.end();
}

async function ensureSystemPackages(cache, say) {
  const missing = SYSTEM_NEEDS.filter((need) => !isPresent(need));
  if (0 < missing.length) {
    const names = missing.map((need) => need.debian);
    const why = missing.map((need) => `${need.debian} (${need.why})`).join(", ");
    if (process.getuid() !== 0 || findCommand("apt-get") === undefined) {
      throw new Error(`Missing on this machine: ${why}. Install with: sudo apt-get install ${names.join(" ")}`);
    }
    say(`Installing ${why}.`);
    const apt = ["-o", "DPkg::Lock::Timeout=300", "-o", "Acquire::Retries=3"];
    const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
    const log = join(cache, "apt.log");
    await again(() => run("apt-get", [...apt, "update"], { env, log }));
    await again(() => run("apt-get", [...apt, "install", "-y", "--no-install-recommends", ...names], { env, log }));
    const still = missing.filter((need) => !isPresent(need)).map((need) => need.debian);
    if (0 < still.length) throw new Error(`Installed, but still not found: ${still.join(", ")}.`);
  }
  return findCommand("chromium") ?? findCommand("chromium-browser");
}

function isPresent(need) {
  return need.files.some((file) => existsSync(file)) || need.commands.some((name) => findCommand(name) !== undefined);
}

function findCommand(name) {
  const folders = (process.env.PATH ?? "").split(delimiter).concat("/usr/bin", "/bin");
  return folders.map((folder) => join(folder, name)).find((file) => existsSync(file));
}

async function ensureCodeServer(cache, say) {
  const home = join(cache, `code-server-${CODE_SERVER_VERSION}-node-${NODE_VERSION}`);
  const nodeHome = join(home, "node_modules", `node-linux-${process.arch}`);
  const packageHome = join(home, "node_modules", "code-server");
  const paths = { node: join(nodeHome, "bin", "node"), entry: join(packageHome, "out", "node", "entry.js") };
  if (existsSync(join(home, STAMP)) && existsSync(paths.node) && existsSync(paths.entry)) return paths;

  say(`Setting up code-server ${CODE_SERVER_VERSION} in ${home}. Once only; it takes one to three minutes.`);
  // No stamp means that an earlier set-up was cut short: nothing of it is trusted.
  await rm(home, { recursive: true, force: true });
  await mkdir(home, { recursive: true });
  const dependencies = { "code-server": CODE_SERVER_VERSION, [`node-linux-${process.arch}`]: NODE_VERSION };
  await writeFile(join(home, "package.json"), JSON.stringify({ private: true, dependencies }));
  const log = join(home, "setup.log");
  // Without its scripts first: they have to run under the Node that comes with this same install.
  await again(() => run("npm", ["install", "--ignore-scripts"], { cwd: home, env: cleanNpmEnvironment(), log }));
  const env = {
    ...cleanNpmEnvironment(),
    PATH: join(nodeHome, "bin") + delimiter + process.env.PATH,
    npm_config_nodedir: nodeHome,
    npm_config_ignore_scripts: "false",
    JOBS: "max",
  };
  await again(() => run("npm", ["run", "postinstall"], { cwd: packageHome, env, log }));
  await run(paths.node, [paths.entry, "--version"], { cwd: home, env, log });
  await writeFile(join(home, STAMP), JSON.stringify(dependencies));
  return paths;
}

/** Inside `npm run`, npm tells its children about the project it runs for; another npm must not take that for its own. */
function cleanNpmEnvironment() {
  const kept = /^npm_config_(cache|registry|cafile|https?_proxy|proxy|userconfig|globalconfig)$/i;
  return Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^npm_/i.test(name) || kept.test(name)));
}

async function again(step) {
  for (let attempt = 1; ; attempt += 1) {
    try {
      return await step();
    } catch (error) {
      if (ATTEMPTS <= attempt) throw error;
      await new Promise((wake) => setTimeout(wake, 5000 * attempt));
    }
  }
}

/** Runs one program with its output going to the log; rejects with the end of that log when it fails. */
async function run(command, args, { cwd, env, log }) {
  const out = createWriteStream(log, { flags: "a" });
  out.write(`\n$ ${command} ${args.join(" ")}\n`);
  const code = await new Promise((settle, fail) => {
    const child = spawn(command, args, { cwd, env, stdio: ["ignore", "pipe", "pipe"] });
    child.stdout.pipe(out, { end: false });
    child.stderr.pipe(out, { end: false });
    child.on("error", fail);
    child.on("close", settle);
  });
  await new Promise((settle) => out.end(settle));
  if (code === 0) return;
  const tail = (await readFile(log, "utf8")).split("\n").slice(-30).join("\n");
  throw new Error(`${command} ${args.join(" ")} ended with ${code} (all of it in ${log}):\n${tail}`);
}

if (process.argv[1] !== undefined && resolve(process.argv[1]) === fileURLToPath(import.meta.url)) {
  try {
    const paths = await setUpEditor();
    console.log(`Ready: ${dirname(paths.entry)}`);
  } catch (error) {
    console.error(error.message);
    process.exitCode = 1;
  }
}
