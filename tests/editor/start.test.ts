import { readFile } from "node:fs/promises";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { expect, test } from "vitest";
import { eventually, PATIENCE_MS } from "./eventually.ts";
import { useEditor } from "./harness.ts";
import {
  activeText,
  chooseRow,
  notices,
  openFile,
  quickOpen,
  runCommand,
  waitForProblem,
  webview,
} from "./workbench.ts";

const editor = useEditor({
  files: { "stray.scant": "inches\nopening bay { wide 15  high 6  deep 22 }\nbox for nowhere { holds 5 lb }\n" },
});

test("the palette offers what can be done: without a build file little, with one all", async () => {
  const { page } = editor();
  const least = "Scantling: New Build File|Scantling: Report a Problem";
  await eventually("two commands", async () => (await offered(page)).join("|") === least);
  await openFile(page, "sewing-room.scant");
  await eventually("all commands", async () => (await offered(page)).length === 9);
  await runCommand(page, "View: Close All Editors");
});

/** The commands of the extension that the palette lists, in the order of their names. */
async function offered(page: Page): Promise<readonly string[]> {
  const rows = page.locator(".quick-input-list .monaco-list-row");
  const input = page.locator(".quick-input-widget input").first();
  await page.keyboard.press("F1");
  await input.fill(">Scantling: ");
  await eventually("the list", async () => 0 < (await rows.count()));
  const labels = await rows.evaluateAll((found) => found.map((row) => row.getAttribute("aria-label") ?? ""));
  await page.keyboard.press("Escape");
  await input.waitFor({ state: "hidden" });
  return labels
    .map((label) => label.split(",")[0] ?? "")
    .filter((label) => label.startsWith("Scantling: "))
    .sort();
}

// While no rod stands beside it: in half a window the walkthrough has no room for its pictures.
test("the walkthrough has five steps, and the last one writes a cut list", async () => {
  const { page, folder } = editor();
  await runCommand(page, "Welcome: Open Walkthrough...");
  await chooseRow(page, (row) => row.startsWith("From an opening to a cut list"));
  const steps = page.locator(".gettingStartedContainer .getting-started-step");
  await eventually("five steps", async () => (await steps.count()) === 5);
  expect(await steps.first().textContent()).toContain("Begin with a build file");
  const picture = page.locator(
    ".gettingStartedContainer .getting-started-media svg, .getting-started-media webview, .getting-started-media iframe",
  );
  await picture.first().waitFor({ state: "attached", timeout: PATIENCE_MS });

  await openFile(page, "sewing-room.scant");
  await runCommand(page, "Welcome: Open Walkthrough...");
  await chooseRow(page, (row) => row.startsWith("From an opening to a cut list"));
  await steps.filter({ hasText: "Write the cut list" }).click();
  await page.locator(".gettingStartedContainer .monaco-button", { hasText: "Write Cut List" }).click();
  await eventually("the notice", async () =>
    (await notices(page)).some((each) => each.includes("sewing-room.cutlist")),
  );
  expect(await readFile(join(folder, "sewing-room.cutlist.csv"), "utf8")).toMatch(/^mark,/);
});

test("a new build file from a starting point is whole, and its parts are on the rod", async () => {
  const { page } = editor();
  for (const [label, title] of [
    ["Case with a face frame and drawers", "Base case with drawers"],
    ["Frameless case", "Wall case with a door"],
    ["Openings that stand already", "Drawers for openings that stand already"],
  ] as const) {
    await runCommand(page, "Scantling: New Build File");
    await chooseRow(page, (row) => row.startsWith(label));
    await eventually(`a file for ${title}`, async () => (await activeText(page)).includes(title));
    await runCommand(page, "Scantling: Open the Rod");
    await webview(page).locator("h1", { hasText: title }).waitFor({ timeout: PATIENCE_MS });
    expect(await webview(page).locator("tr[data-part]").count()).toBeGreaterThan(5);
    expect(await webview(page).locator(".count-error, .count-warning").count()).toBe(0);
  }
});

test("a finding's code leads to the page about it", async () => {
  const { page } = editor();
  await openFile(page, "stray.scant");
  const problem = await waitForProblem(page, (each) => each.code === "name/unknown-opening");
  expect(problem.line).toBe(3);
  await page.locator(".markers-panel a:has(.marker-code)", { hasText: problem.code }).first().click();
  await eventually("the page", async () => (await activeText(page)).includes("name/unknown-opening"));
});

test("the task checks every build file of the folder, and puts what it finds among the problems", async () => {
  const { page } = editor();
  await quickOpen(page, "task ", (row) => row.startsWith("All scantling tasks"));
  await chooseRow(page, (row) => row.includes("check"));
  const terminal = page.locator(".terminal-wrapper.active .xterm-rows, .terminal-wrapper .xterm-accessibility");
  await eventually("the summary", async () => (await terminal.allInnerTexts()).join("\n").includes("checked"));
  await waitForProblem(page, (each) => each.code === "name/unknown-opening");
});

test("a report is an untitled document that says where it runs and names no file", async () => {
  const { page } = editor();
  await runCommand(page, "Scantling: Report a Problem");
  const text = await eventually("the report", async () => {
    const shown = await activeText(page);
    return shown.includes("A problem with Scantling") ? shown : undefined;
  });
  expect(text).toContain("language server running");
  expect(text).not.toMatch(/stray|sewing/);
});
