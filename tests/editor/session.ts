import { appendFileSync } from "node:fs";
import { cp, mkdir, mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import type { EditorPaths } from "../../scripts/real-editor.mjs";
import { type RunningEditor, startEditor } from "../../scripts/run-editor.mjs";
import { eventually } from "./eventually.ts";
import { outFolder } from "./out-folder.ts";

/** One real VS Code in one real browser, on a copy of a folder that the test may change as it likes. */
export interface EditorSession {
  readonly page: Page;
  /** The copy of the folder that is open. */
  readonly folder: string;
  /** Changes some settings of the folder while the editor runs. */
  readonly changeSettings: (changes: Readonly<Record<string, unknown>>) => Promise<void>;
  readonly close: () => Promise<void>;
  /** Saves a picture of the window, the logs and the open folder under the name. */
  readonly keepEvidence: (name: string) => Promise<void>;
}

/** What is prepared once for all sessions. */
export interface Prepared {
  readonly editorPaths: EditorPaths;
  /** A folder with the packaged extension installed, which each session copies. */
  readonly installedExtensions: string;
}

export interface SessionOptions {
  /** The folder to copy and open, or `none` to begin with an empty one; examples/ if left out. */
  readonly folder?: string;
  /** Files to add to the copy, path to text. */
  readonly files?: Readonly<Record<string, string>>;
  readonly settings?: Readonly<Record<string, unknown>>;
}

const examples = fileURLToPath(new URL("../../examples", import.meta.url));
const READY_MS = 120_000;

/** What keeps typing literal and the window free of what is not under test. */
export const QUIET: Readonly<Record<string, unknown>> = {
  "workbench.startupEditor": "none",
  "workbench.colorTheme": "Dark Modern",
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "workbench.tips.enabled": false,
  "chat.disableAIFeatures": true,
  "telemetry.telemetryLevel": "off",
  "extensions.ignoreRecommendations": true,
  "git.enabled": false,
  "files.autoSave": "off",
  "files.exclude": { ".vscode": true },
  // Drawn with elements, the terminal can be read.
  "terminal.integrated.gpuAcceleration": "off",
  "editor.minimap.enabled": false,
  "editor.wordWrap": "off",
  "editor.quickSuggestions": false,
  "editor.suggestOnTriggerCharacters": false,
  "editor.autoClosingBrackets": "never",
  "editor.hover.delay": 100,
};

/** What keeps a headless browser to itself. */
export const CHROMIUM_FLAGS: readonly string[] = [
  ...["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking"],
  ...["--disable-component-update", "--disable-sync"],
];

/** Starts an editor and a browser and waits until the opened folder is shown; nothing is left behind if that fails. */
export async function openSession(prepared: Prepared, options: SessionOptions = {}): Promise<EditorSession> {
  const paths = prepared.editorPaths;
  const scratch = await mkdtemp(join(tmpdir(), "scantling-session-"));
  const home = join(scratch, "home");
  const folder = join(scratch, "work");
  const extensions = join(scratch, "extensions");
  const log = join(scratch, "server.log");
  const settings = { ...QUIET, ...options.settings };
  let server: RunningEditor | undefined;
  let browser: Browser | undefined;
  const close = async () => {
    await browser?.close();
    await server?.stop();
    await rm(scratch, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  };
  try {
    if (options.folder === "none") await mkdir(folder);
    else await cp(options.folder ?? examples, folder, { recursive: true });
    for (const [path, text] of Object.entries(options.files ?? {})) {
      await mkdir(dirname(join(folder, path)), { recursive: true });
      await writeFile(join(folder, path), text);
    }
    await cp(prepared.installedExtensions, extensions, { recursive: true });
    server = await startEditor(paths, { folder, home, extensions, settings, log });
    browser = await chromium.launch({ executablePath: paths.chromium, args: [...CHROMIUM_FLAGS] });
    const page = await openPage(browser, server.url, join(scratch, "browser.log"));
    return {
      page,
      folder,
      close,
      changeSettings: (changes) => changeSettings(folder, changes),
      keepEvidence: (name) => keepEvidence(page, scratch, name),
    };
  } catch (error) {
    await close();
    throw error;
  }
}

/** The editor reads the user's settings once here, but follows those of the folder it watches. */
async function changeSettings(folder: string, changes: Readonly<Record<string, unknown>>): Promise<void> {
  const file = join(folder, ".vscode", "settings.json");
  await mkdir(join(folder, ".vscode"), { recursive: true });
  const now: unknown = JSON.parse(await readFile(file, "utf8").catch(() => "{}"));
  await writeFile(file, JSON.stringify(Object.assign({}, now, changes), undefined, 2));
}

async function openPage(browser: Browser, url: string, log: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1400, height: 900 } });
  page.on("console", (message) => appendFileSync(log, `${message.type()} ${message.text()}\n`));
  page.on("pageerror", (error) => appendFileSync(log, `thrown ${error.stack ?? error.message}\n`));
  await page.goto(url);
  await page.locator(".monaco-workbench .part.statusbar").waitFor({ timeout: READY_MS });
  await eventually(
    "the opened folder to be listed",
    async () => 0 < (await page.locator(".explorer-folders-view .monaco-list-row").count()),
    READY_MS,
  );
  return page;
}

async function keepEvidence(page: Page, scratch: string, name: string): Promise<void> {
  const kept = join(outFolder, name);
  await rm(kept, { recursive: true, force: true });
  await mkdir(kept, { recursive: true });
  const copies = [
    ["server.log", "server.log"],
    ["browser.log", "browser.log"],
    ["home/logs", "logs"],
    ["work", "work"],
  ] as const;
  const tries = copies.map(([from, to]) => cp(join(scratch, from), join(kept, to), { recursive: true }));
  // Each on its own: a page that hangs must not cost the logs that say why.
  await Promise.allSettled([page.screenshot({ path: join(kept, "window.png"), timeout: 10_000 }), ...tries]);
  console.log(`Evidence of the failure is in ${kept}`);
}
