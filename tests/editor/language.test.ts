import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { eventually, PATIENCE_MS } from "./eventually.ts";
import { useEditor } from "./harness.ts";
import { goTo, hoverAt, lineText, save, suggestions, takeSuggestion, typeText, waitForSquiggles } from "./typing.ts";
import { activeText, openFile, runCommand, webview } from "./workbench.ts";

const RACK = `inches
sheet ply-12 { called 1/2  measures 15/32  size 48 x 96 }
slides runner { mount side  lengths 10 to 28 by 2  clearance 1/2  above 1/4  below 1/4  behind 1/2 }
`;
const JOB = `project "Two drawers"
inches
use "stock.scant"
opening left-bay { wide 15 1/2  high 6  deep 22 1/2 }
box for left-bay {
  sides ply-12   bottom ply-12 under
  corners screws
  slides runner
}
`;
const NOTES = `inches

`;

const editor = useEditor({ files: { "stock.scant": RACK, "drawers.scant": JOB, "notes.scant": NOTES } });

test("a hover says what a box comes to, with where every number comes from", async () => {
  const { page } = editor();
  await openFile(page, "drawers.scant");
  // 15 1/2 less 1/2 a side is 14 1/2; less two sides of 15/32 that is 13 9/16.
  const box = await hoverAt(page, "box for left");
  expect(box).toContain("14 1/2");
  expect(box).toMatch(/15 1\/2/);
  const stock = await hoverAt(page, "sides ply-12");
  expect(stock).toContain("15/32");
});

test("sizes stand in the text where they follow, and go when they are not wanted", async () => {
  const { page, changeSettings } = editor();
  await openFile(page, "drawers.scant");
  const head = 5;
  await eventually("the size of the box", async () => (await lineText(page, head)).includes("14 1/2"));
  await changeSettings({ "scantling.inlayHints.boxSizes": false });
  await eventually("no size of the box", async () => !(await lineText(page, head)).includes("14 1/2"));
  await changeSettings({ "scantling.inlayHints.boxSizes": true });
});

test("renaming reaches a name with a hyphen in every file, and leaves nothing unknown", async () => {
  const { page, folder } = editor();
  await openFile(page, "drawers.scant");
  await goTo(page, { line: 6, column: 10 });
  const input = page.locator(".rename-box input");
  await eventually("the box for the new name", async () => {
    await page.keyboard.press("F2");
    await input.waitFor({ timeout: 5000 });
    return true;
  });
  await input.fill("birch-thin");
  await page.keyboard.press("Enter");
  await eventually("the new name", async () =>
    (await activeText(page)).includes("sides birch-thin   bottom birch-thin"),
  );
  await waitForSquiggles(page, "error", 0);
  await runCommand(page, "File: Save All Files");
  await eventually("the other file", async () =>
    (await readFile(join(folder, "stock.scant"), "utf8")).includes("sheet birch-thin {"),
  );
});

test("a snippet is offered by its word, and what it writes can be read", async () => {
  const { page } = editor();
  await openFile(page, "notes.scant");
  await goTo(page, { line: 2, column: 1 });
  await typeText(page, "sheet");
  expect((await suggestions(page)).join("|")).toContain("sheet");
  await takeSuggestion(page, /^sheet, Sheet|^sheet.*snippet/i);
  await eventually("the snippet", async () => (await activeText(page)).includes("called 3/4  measures 45/64"));
  await page.keyboard.press("Escape");
  await waitForSquiggles(page, "error", 0);
  await save(page);
});

test("the lens over a file leads to its rod", async () => {
  const { page } = editor();
  await openFile(page, "drawers.scant");
  const lens = page.locator(".editor-group-container.active .codelens-decoration a", { hasText: "rod" }).first();
  await lens.click({ timeout: PATIENCE_MS });
  await page.locator(".tab", { hasText: "Rod: drawers.scant" }).waitFor({ timeout: PATIENCE_MS });
});

test("the lens over an opening leads to where it is drawn", async () => {
  const { page } = editor();
  await openFile(page, "drawers.scant");
  const lens = page.locator(".editor-group-container.active .codelens-decoration a", { hasText: "drawn" }).first();
  await lens.click({ timeout: PATIENCE_MS });
  await webview(page).locator(".pane svg").waitFor({ timeout: PATIENCE_MS });
  await eventually("the opening to be gone to", async () => {
    const at = await webview(page).locator("body").evaluate("document.activeElement.getAttribute('data-id')");
    return at === "opening left-bay";
  });
});
