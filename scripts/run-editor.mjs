import { spawn } from "node:child_process";
import { createWriteStream, mkdirSync } from "node:fs";
import { mkdir, writeFile } from "node:fs/promises";
import { join } from "node:path";

const START_MS = 120_000;
const INSTALL_MS = 180_000;
const STOP_MS = 5_000;
/** Linux binds paths of up to 107 bytes; the editor's socket names take about 55 of them. */
const MAX_SOCKET_FOLDER = 50;

/**
 * Runs its arguments as the head of a process group, and kills the whole group once descriptor 3 is closed. That happens
 * also when this process dies without a word, so that no editor and no extension host is ever left behind.
 */
const TETHERED = '(cat <&3; kill -KILL -$$) >/dev/null 2>&1 & exec "$@" 3<&-';

/**
 * Installs a .vsix into the folder `extensions`. `editor` is what `setUpEditor` returned; `home` is a scratch folder that
 * keeps everything the editor writes out of the user's own configuration.
 */
export async function installExtension(editor, { vsix, home, extensions, log }) {
  const child = launch(editor, { home, extensions, log }, ["--install-extension", vsix, "--force"]);
  const timer = setTimeout(() => killGroup(child, "SIGKILL"), INSTALL_MS);
  const code = await child.ended;
  clearTimeout(timer);
  if (code !== 0 || !child.said().includes("successfully installed")) {
    throw new Error(`The editor did not install ${vsix}:\n${child.said()}`);
  }
}

/**
 * Serves `folder` on a free loopback port and resolves, once it answers, to `{ url, ended, stop }`; `ended` resolves to
 * the exit code, `stop()` ends the server with all that it started. `settings` are the user's settings to start with.
 */
export async function startEditor(editor, { folder, home, extensions, settings = {}, log, port = 0 }) {
  await mkdir(join(home, "User"), { recursive: true });
  await writeFile(join(home, "User", "settings.json"), JSON.stringify(settings, undefined, 2));
  const child = launch(editor, { home, extensions, log }, [
    ...["--auth", "none", "--bind-addr", `127.0.0.1:${port}`],
    "--disable-workspace-trust",
    "--disable-getting-started-override",
    folder,
  ]);
  const stop = () => stopGroup(child);
  const url = await new Promise((settle, fail) => {
    const timer = setTimeout(
      () => fail(new Error(`The editor did not start in ${START_MS} ms:\n${child.said()}`)),
      START_MS,
    );
    child.onOutput(() => {
      const found = /listening on (http:\/\/127\.0\.0\.1:\d+)/.exec(child.said());
      if (found !== null) {
        clearTimeout(timer);
        settle(found[1]);
      }
    });
    child.ended.then((code) => {
      clearTimeout(timer);
      fail(new Error(`The editor ended with ${code} instead of starting:\n${child.said()}`));
    });
  }).catch(async (error) => {
    await stop();
    throw error;
  });
  return { url: `${url}/?folder=${encodeURIComponent(folder)}`, ended: child.ended, stop };
}

function launch(editor, { home, extensions, log }, args) {
  const common = [
    ...["--config", join(home, "config.yaml"), "--user-data-dir", home, "--extensions-dir", extensions],
    ...["--disable-telemetry", "--disable-update-check"],
  ];
  const child = spawn("sh", ["-c", TETHERED, "sh", editor.node, editor.entry, ...common, ...args], {
    env: editorEnvironment(home),
    stdio: ["ignore", "pipe", "pipe", "pipe"],
    detached: true,
  });
  const out = log === undefined ? undefined : createWriteStream(log, { flags: "a" });
  let said = "";
  const listeners = [];
  const hear = (chunk) => {
    said += chunk;
    out?.write(chunk);
    for (const listener of listeners) listener();
  };
  // Writing to or closing the tether of a group that is gone is no news.
  child.stdio[3].on("error", () => {});
  child.stdout.setEncoding("utf8").on("data", hear);
  child.stderr.setEncoding("utf8").on("data", hear);
  const ended = new Promise((settle) => {
    child.on("error", (error) => {
      hear(String(error));
      settle(-1);
    });
    child.on("exit", () => child.stdio[3].destroy());
    child.on("close", (code) => {
      out?.end();
      settle(code ?? -1);
    });
  });
  return Object.assign(child, { ended, said: () => said, onOutput: (listener) => listeners.push(listener) });
}

/** Without what another editor, or npm, may have set for its own children. */
function editorEnvironment(home) {
  const foreign = /^(VSCODE_|ELECTRON_|npm_|CODE_SERVER_|NODE_OPTIONS$|VITEST)/i;
  const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !foreign.test(name)));
  const own = { XDG_CONFIG_HOME: join(home, "xdg-config"), XDG_DATA_HOME: join(home, "xdg-data") };
  // It leaves its sockets behind; in its own folder they go with it, unless their paths would be too long to bind.
  const sockets = join(home, "t");
  if (MAX_SOCKET_FOLDER < sockets.length) return { ...env, ...own };
  mkdirSync(sockets, { recursive: true });
  return { ...env, ...own, TMPDIR: sockets, XDG_RUNTIME_DIR: sockets };
}

async function stopGroup(child) {
  killGroup(child, "SIGTERM");
  const timer = setTimeout(() => killGroup(child, "SIGKILL"), STOP_MS);
  await child.ended;
  clearTimeout(timer);
}

function killGroup(child, signal) {
  if (child.pid === undefined) return;
  try {
    process.kill(-child.pid, signal);
  } catch {
    // Nothing of the group is left, which is what was wanted.
  }
}
