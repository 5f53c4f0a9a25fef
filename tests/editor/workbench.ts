import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import type { FrameLocator, Page } from "playwright-core";
import { eventually, PATIENCE_MS } from "./eventually.ts";
import { outFolder } from "./out-folder.ts";
import type { EditorSession } from "./session.ts";

/** One row of the Problems panel; line and column count from 1, as the panel shows them. */
export interface Problem {
  readonly severity: "error" | "warning" | "info";
  readonly message: string;
  readonly source: string;
  readonly code: string;
  readonly line: number;
  readonly column: number;
}

export type Theme = "light" | "dark" | "high contrast" | "high contrast light";

/** The name each kind of theme has in the settings, and the class the window gets from it. */
const THEMES: Readonly<Record<Theme, readonly [name: string, className: string]>> = {
  light: ["Light Modern", "vs"],
  dark: ["Dark Modern", "vs-dark"],
  "high contrast": ["Default High Contrast", "hc-black"],
  "high contrast light": ["Default High Contrast Light", "hc-light"],
};

/** Opens a file of the folder by its name and waits until its text is shown in the active editor. */
export async function openFile(page: Page, name: string): Promise<void> {
  // What lies deeper has its folder behind its name.
  await choose(page, "Control+P", name, (label) => label === name || /^[ ,]/.test(label.split(name)[1] ?? ""));
  await page.locator(`.tab.active[data-resource-name="${name}"]`).first().waitFor({ timeout: PATIENCE_MS });
  await page.locator(".editor-group-container.active .view-line").first().waitFor({ timeout: PATIENCE_MS });
  await page.locator(".editor-group-container.active .monaco-editor.focused").waitFor({ timeout: PATIENCE_MS });
}

/** Runs a command by the title that the command palette shows, category included. */
export async function runCommand(page: Page, title: string): Promise<void> {
  await choose(page, "F1", `>${title}`, (label) => label === title || label.startsWith(`${title},`));
}

/** Types into the box of quick open and takes the row whose label fits. */
export async function quickOpen(page: Page, text: string, fits: (label: string) => boolean): Promise<void> {
  await choose(page, "Control+P", text, fits);
}

/** Opens a quick pick with a key, types into it and takes the row whose label fits. */
async function choose(page: Page, key: string, text: string, fits: (label: string) => boolean): Promise<void> {
  const input = page.locator(".quick-input-widget input").first();
  const rows = page.locator(".quick-input-list .monaco-list-row");
  await eventually(`${key} to open its box, and "${text}" to be offered`, async () => {
    // It closes when something else takes the focus meanwhile, as a page does that has just been shown.
    if (!(await input.isVisible())) await page.keyboard.press(key);
    await input.waitFor({ timeout: 3000 });
    // Typed anew each time: what a list offered before the extensions had started is not updated by itself.
    await input.fill("", { timeout: 3000 });
    await input.fill(text, { timeout: 3000 });
    const found = await eventually("a row that fits", () => indexOfRow(page, fits), 5000);
    await rows.nth(found).click({ timeout: 3000 });
    // A list that is filled anew at that moment takes no click. What was chosen may ask on in the same box, which is empty then.
    const gone = async (): Promise<boolean> => !(await input.isVisible()) || (await input.inputValue()) !== text;
    return eventually("the box to go", gone, 3000);
  });
}

/** Takes the row whose label fits in the quick pick that a command has opened or is about to. */
export async function chooseRow(page: Page, fits: (label: string) => boolean): Promise<void> {
  const input = page.locator(".quick-input-widget input").first();
  const rows = page.locator(".quick-input-list .monaco-list-row");
  await eventually("the row to be offered", async () => {
    const found = await indexOfRow(page, fits);
    if (found === undefined) return false;
    await rows.nth(found).click({ timeout: 3000 });
    return true;
  });
  await input.waitFor({ state: "hidden", timeout: PATIENCE_MS });
}

/** The lines of the active editor that are in view. */
export async function activeText(page: Page): Promise<string> {
  const lines = page.locator(".editor-group-container.active .monaco-editor .view-lines .view-line");
  const placed = await lines.evaluateAll((found) =>
    found.map((line) => [Number.parseInt(line.style.top, 10), line.textContent ?? ""] as const),
  );
  const sorted = [...placed].sort(([a], [b]) => a - b).map(([, text]) => text.replaceAll("\u00a0", " "));
  return sorted.join("\n");
}

/** Of a list at rest: while it is being filled for what was typed, rows are those of before, and go. */
async function indexOfRow(page: Page, fits: (label: string) => boolean): Promise<number | undefined> {
  const before = await rowLabels(page);
  await page.waitForTimeout(150);
  const labels = await rowLabels(page);
  const found = labels.findIndex(fits);
  return found < 0 || labels.join("\n") !== before.join("\n") ? undefined : found;
}

function rowLabels(page: Page): Promise<readonly string[]> {
  return page
    .locator(".quick-input-list .monaco-list-row")
    .evaluateAll((rows) => rows.map((row) => row.getAttribute("aria-label") ?? ""));
}

/** The rows of the Problems panel now, opening it first; empty when it lists none. */
export async function problems(page: Page): Promise<readonly Problem[]> {
  const panel = page.locator(".markers-panel");
  await eventually("the Problems panel", async () => {
    if (!(await panel.isVisible())) await page.keyboard.press("Control+Shift+M");
    await panel.waitFor({ timeout: 3000 });
    return true;
  });
  const rows = page.locator(".markers-panel .monaco-list-row:has(.marker-line)");
  return rows.evaluateAll((found) =>
    found.map((row) => {
      const text = (selector: string) => row.querySelector(selector)?.textContent ?? "";
      const [, line, column] = /Ln (\d+), Col (\d+)/.exec(text(".marker-line")) ?? [];
      const icon = row.querySelector(".marker-icon");
      const severity = ["error", "warning"].find((name) => icon?.classList.contains(name)) ?? "info";
      return {
        severity: severity as "error" | "warning" | "info",
        message: text(".marker-message"),
        source: text(".marker-source"),
        code: text(".marker-code"),
        line: Number(line),
        column: Number(column),
      };
    }),
  );
}

/** Waits until the Problems panel has a row that fits and returns it. */
export async function waitForProblem(page: Page, fits: (problem: Problem) => boolean): Promise<Problem> {
  return eventually("the problem to be listed", async () => (await problems(page)).find(fits));
}

/** The document inside the newest webview that is shown; its locators wait until it is there. */
export function webview(page: Page): FrameLocator {
  return page.locator("iframe.webview.ready").last().contentFrame().frameLocator("#active-frame");
}

/** The text of the notices now shown in the corner. */
export function notices(page: Page): Promise<readonly string[]> {
  return page.locator(".notifications-toasts .notification-list-item-message").allInnerTexts();
}

/** Saves a picture of the window as NAME.png in the output folder and returns its path. */
export async function screenshot(page: Page, name: string): Promise<string> {
  await mkdir(outFolder, { recursive: true });
  const path = join(outFolder, `${name}.png`);
  await page.screenshot({ path });
  return path;
}

/** Sets the colour theme and waits until the window wears it. */
export async function setTheme({ page, changeSettings }: EditorSession, theme: Theme): Promise<void> {
  const [name, className] = THEMES[theme];
  await changeSettings({ "workbench.colorTheme": name });
  // The second part tells a theme that was loaded from the bare looks of a window that is still starting.
  const worn = page.locator(`.monaco-workbench.${className}[class*="vscode-theme-"]`);
  await worn.waitFor({ state: "attached", timeout: PATIENCE_MS });
}
