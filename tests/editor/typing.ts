import type { Locator, Page } from "playwright-core";
import { eventually, PATIENCE_MS } from "./eventually.ts";

// Functions given to `evaluate` run in the page. They go by the element they are given and use no global of the browser,
// whose types this project leaves out so that nothing else can use one by mistake.

export type Severity = "error" | "warning" | "info" | "hint";

/** A place in the text, counted from 1 as the editor shows it. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** NodeFilter.SHOW_TEXT */
const SHOW_TEXT = 4;
const ACTIVE = ".editor-group-container.active .monaco-editor";

/** Types at the cursor, key by key; a line break is the Enter key, and so is indented as the editor does. */
export async function typeText(page: Page, text: string): Promise<void> {
  await page.keyboard.type(text, { delay: 15 });
}

/** Puts the cursor at a place in the active editor. */
export async function goTo(page: Page, place: Place): Promise<void> {
  await page.locator(ACTIVE).first().waitFor({ timeout: PATIENCE_MS });
  const input = page.locator(".quick-input-widget input").first();
  await eventually(`the cursor at ${place.line}:${place.column}`, async () => {
    if (!(await input.isVisible())) await page.keyboard.press("Control+G");
    await input.waitFor({ timeout: 3000 });
    await input.fill(`:${place.line}:${place.column}`);
    await page.keyboard.press("Enter");
    await input.waitFor({ state: "hidden", timeout: 3000 });
    const now = await cursor(page);
    return now?.line === place.line && now.column === place.column;
  });
}

/** Where the status bar says the cursor is; `undefined` while it says nothing, or that something is selected. */
export async function cursor(page: Page): Promise<Place | undefined> {
  const text = await page.locator('[id="status.editor.selection"]').textContent({ timeout: 5000 });
  const [, line, column] = /^Ln (\d+), Col (\d+)$/.exec(text?.trim() ?? "") ?? [];
  return line === undefined || column === undefined ? undefined : { line: Number(line), column: Number(column) };
}

/** The line that the status bar says the cursor is on, whether something is selected there or not. */
export async function cursorLine(page: Page): Promise<number | undefined> {
  const text = await page.locator('[id="status.editor.selection"]').textContent({ timeout: 5000 });
  const line = /^Ln (\d+), Col \d+/.exec(text?.trim() ?? "")?.[1];
  return line === undefined ? undefined : Number(line);
}

/** The text of a line of the active editor as it is shown, unsaved changes included; scrolls there. */
export async function lineText(page: Page, line: number): Promise<string> {
  await goTo(page, { line, column: 1 });
  return eventually(`line ${line} to be shown`, () =>
    page
      .locator(ACTIVE)
      .first()
      .evaluate((editor, wanted) => {
        const numbers = [...editor.querySelectorAll(".margin-view-overlays .line-numbers")];
        const top = numbers.find((number) => number.textContent === String(wanted))?.parentElement?.style.top;
        const lines = [...editor.querySelectorAll(".view-lines .view-line")];
        const found = top === undefined ? undefined : lines.find((each) => each.style.top === top);
        return found?.textContent?.replaceAll("\u00a0", " ");
      }, line),
  );
}

/** Replaces the first `from` on a line by typing `to` over it; rejects when the line does not have it. */
export async function replaceWord(page: Page, line: number, from: string, to: string): Promise<void> {
  const text = await lineText(page, line);
  const at = text.indexOf(from);
  if (at < 0) throw new Error(`Line ${line} has no "${from}": ${text}`);
  await goTo(page, { line, column: at + 1 });
  for (let count = 0; count < from.length; count += 1) await page.keyboard.press("Shift+ArrowRight");
  await typeText(page, to);
}

/** Takes back the last change in the active editor. */
export async function undo(page: Page): Promise<void> {
  await page.keyboard.press("Control+Z");
}

/** Saves the active editor and waits until it is no longer marked as changed. */
export async function save(page: Page): Promise<void> {
  await page.keyboard.press("Control+S");
  await page.locator(".tab.active:not(.dirty)").first().waitFor({ timeout: PATIENCE_MS });
}

/** The squiggles of one severity in the part of the active editor that is scrolled into view. */
export function squiggles(page: Page, severity: Severity): Locator {
  return page.locator(`${ACTIVE} .squiggly-${severity}`);
}

/** Waits until exactly so many squiggles of a severity are in view; 0 waits until the last one is gone. */
export async function waitForSquiggles(page: Page, severity: Severity, count: number): Promise<void> {
  await eventually(`${count} ${severity} squiggles`, async () => (await squiggles(page, severity).count()) === count);
}

/** Rests the mouse on the first `text` in view and returns what the hover shows. */
export async function hoverAt(page: Page, text: string): Promise<string> {
  const hover = page.locator(`${ACTIVE} .monaco-hover:visible .hover-contents, .monaco-hover:visible .hover-contents`);
  return eventually(`a hover at "${text}"`, async () => {
    const spot = await spotOf(page, text);
    // Away and back: a mouse that already rests there opens nothing, and what was open before must be gone.
    await page.mouse.move(spot.x, spot.y + 200);
    await page.keyboard.press("Escape");
    await hover.first().waitFor({ state: "hidden", timeout: 5000 });
    await page.mouse.move(spot.x, spot.y, { steps: 4 });
    await hover.first().waitFor({ timeout: 5000 });
    const shown = (await hover.allInnerTexts()).join("\n");
    // Lenses that come meanwhile push the lines down, and the mouse rests on another.
    const still = await spotOf(page, text);
    if (still.x !== spot.x || still.y !== spot.y) return undefined;
    // Monaco says "Loading..." until the slowest provider has answered.
    return /^Loading/.test(shown) ? undefined : shown;
  });
}

async function spotOf(page: Page, text: string): Promise<{ readonly x: number; readonly y: number }> {
  return eventually(`"${text}" in view`, () =>
    page
      .locator(ACTIVE)
      .first()
      .evaluate(
        (editor, [wanted, textNodes]) => {
          for (const line of editor.querySelectorAll(".view-lines .view-line")) {
            const start = (line.textContent ?? "").replaceAll("\u00a0", " ").indexOf(wanted);
            if (start < 0) continue;
            // The line is cut into tokens: find the one that holds the middle of the text.
            let left = start + Math.floor(wanted.length / 2);
            const walker = line.ownerDocument.createTreeWalker(line, textNodes);
            for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
              const length = node.textContent?.length ?? 0;
              if (left < length) {
                const range = line.ownerDocument.createRange();
                range.setStart(node, left);
                range.setEnd(node, left + 1);
                const box = range.getBoundingClientRect();
                return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
              }
              left -= length;
            }
          }
          return undefined;
        },
        [text, SHOW_TEXT] as const,
      ),
  );
}

/** What is proposed at the cursor, asking for it; rejects when nothing is. */
export async function suggestions(page: Page): Promise<readonly string[]> {
  const rows = suggestionRows(page);
  return eventually("proposals", async () => {
    if (!(await rows.first().isVisible())) await page.keyboard.press("Control+Space");
    await rows.first().waitFor({ timeout: 5000 });
    const labels = await rows.evaluateAll((found) => found.map((row) => row.getAttribute("aria-label") ?? ""));
    return 0 < labels.length ? labels : undefined;
  });
}

/** Takes the first proposal at the cursor whose label fits. */
export async function takeSuggestion(page: Page, label: RegExp): Promise<void> {
  const rows = suggestionRows(page);
  const found = await eventually(`a proposal ${label}`, async () => {
    const index = (await suggestions(page)).findIndex((each) => label.test(each));
    return 0 <= index ? index : undefined;
  });
  await rows.nth(found).click();
  await rows.first().waitFor({ state: "hidden", timeout: PATIENCE_MS });
}

function suggestionRows(page: Page): Locator {
  return page.locator(`${ACTIVE} .suggest-widget.visible .monaco-list-row, .suggest-widget.visible .monaco-list-row`);
}

/** The titles that the quick fix menu offers at the cursor, closing it again; empty when there are none. */
export async function quickFixes(page: Page): Promise<readonly string[]> {
  const titles = await openQuickFixes(page);
  await page.keyboard.press("Escape");
  return titles;
}

/** Takes the first quick fix at the cursor whose title fits. */
export async function applyQuickFix(page: Page, title: RegExp): Promise<void> {
  const rows = page.locator(".action-widget .monaco-list-row.action");
  const found = await eventually(`a quick fix ${title}`, async () => {
    const index = (await openQuickFixes(page)).findIndex((each) => title.test(each));
    if (0 <= index) return index;
    await page.keyboard.press("Escape");
    return undefined;
  });
  await rows.nth(found).click();
  await rows.first().waitFor({ state: "hidden", timeout: PATIENCE_MS });
}

async function openQuickFixes(page: Page): Promise<readonly string[]> {
  const rows = page.locator(".action-widget .monaco-list-row.action");
  await page.keyboard.press("Control+.");
  await rows
    .first()
    .waitFor({ timeout: 8000 })
    .catch(() => undefined);
  return rows.locator(".title").allInnerTexts();
}
