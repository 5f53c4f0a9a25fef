import { readdirSync } from "node:fs";
import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, inject, test } from "vitest";
import { type BrowserOnly, serveBrowserOnly } from "./browser-only.ts";
import { eventually } from "./eventually.ts";
import { outFolder } from "./out-folder.ts";
import { CHROMIUM_FLAGS, QUIET } from "./session.ts";
import { applyQuickFix, goTo, lineText, waitForSquiggles } from "./typing.ts";
import { activeText, chooseRow, quickOpen, runCommand, waitForProblem, webview } from "./workbench.ts";

const FILES = fileURLToPath(new URL("shop-files", import.meta.url));
/** A VS Code without a machine behind it has nothing else that could answer. */
const FETCHED_ONLY = /^(GET|HEAD)$/;

let served: BrowserOnly;
let browser: Browser;
let page: Page;
const sent: string[] = [];

beforeAll(async () => {
  const { entry, chromium: executablePath } = inject("editorPaths");
  const installed = inject("installedExtensions");
  const name = readdirSync(installed).find((each) => each.startsWith("scantling.scantling-"));
  if (name === undefined) throw new Error(`The extension is not installed in ${installed}.`);
  served = await serveBrowserOnly({
    entry,
    extensions: { scantling: join(installed, name), files: FILES },
    folderUri: { scheme: "shop", authority: "", path: "/job" },
    settings: QUIET,
  });
  browser = await chromium.launch({ executablePath, args: [...CHROMIUM_FLAGS] });
  page = await browser.newPage({ viewport: { width: 1400, height: 900 } });
  page.on("request", (request) => {
    if (request.url().startsWith(served.url) && !FETCHED_ONLY.test(request.method())) sent.push(request.url());
  });
  page.on("websocket", (socket) => sent.push(socket.url()));
  await page.goto(served.url);
  await page.locator(".explorer-folders-view .monaco-list-row", { hasText: "job.scant" }).waitFor({ timeout: 120_000 });
});

afterEach(async ({ task }) => {
  if (task.result?.state !== "fail") return;
  await mkdir(outFolder, { recursive: true });
  await page.screenshot({ path: join(outFolder, "failed-browser-only.png"), timeout: 10_000 }).catch(() => undefined);
});

afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

test("in a VS Code that runs in the browser alone, a worker checks a build file and the one that it uses", async () => {
  await page.locator(".explorer-folders-view .monaco-list-row", { hasText: "job.scant" }).dblclick();
  const problem = await waitForProblem(page, (each) => each.code.startsWith("slide/"));
  expect(problem.line).toBe(7);
  await runCommand(page, "View: Focus Active Editor Group");
  await goTo(page, problem);
  await applyQuickFix(page, /\b20\b|\b22\b/);
  await waitForSquiggles(page, "error", 0);
  expect(await lineText(page, 7)).toMatch(/slides runner (20|22)$/);

  await runCommand(page, "Scantling: Open the Rod");
  await webview(page).locator("tr[data-part]", { hasText: "side" }).first().waitFor();
  await webview(page).locator("h1", { hasText: "Drawer far from any disk" }).waitFor();
  expect(page.workers().length).toBeGreaterThan(0);
  // Nothing was asked of any machine: files were fetched, and that is all.
  expect(sent).toEqual([]);
});

test("starting points and the cut list work there as well", async () => {
  await runCommand(page, "Scantling: Write Cut List");
  await page.locator(".explorer-folders-view .monaco-list-row", { hasText: "job.cutlist.csv" }).waitFor();
  await runCommand(page, "Scantling: New Build File");
  await chooseRow(page, (row) => row.startsWith("Frameless case"));
  await eventually("the new file", async () => (await activeText(page)).includes("Wall case with a door"));
});

test("the folder is walked through for its build files, where nothing can search it", async () => {
  await quickOpen(page, "task ", (row) => row.startsWith("All scantling tasks"));
  await chooseRow(page, (row) => row.includes("check"));
  const terminal = page.locator(".terminal-wrapper.active .xterm-rows, .terminal-wrapper .xterm-accessibility");
  await eventually("both files to be checked", async () =>
    (await terminal.allInnerTexts()).join("\n").replaceAll("\u00a0", " ").includes("2 files checked"),
  );
});
