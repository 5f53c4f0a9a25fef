import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { soundIn } from "./axe.ts";
import { eventually } from "./eventually.ts";
import { useEditor } from "./harness.ts";
import { cursorLine, goTo, replaceWord, undo } from "./typing.ts";
import { notices, openFile, runCommand, screenshot, webview } from "./workbench.ts";

const FILE = "sewing-room.scant";
const editor = useEditor();

test("the parts that are written where the cursor is are marked on the rod", async () => {
  const { page, folder } = editor();
  const lines = (await readFile(join(folder, FILE), "utf8")).split("\n");
  await openFile(page, FILE);
  await runCommand(page, "Scantling: Open the Rod");
  const marked = webview(page).locator('tr[data-part][aria-current="true"]');
  await webview(page).locator("tr[data-part]").first().waitFor();
  await runCommand(page, "View: Focus First Editor Group");
  await goTo(page, { line: lines.findIndex((line) => line.startsWith("part ledger")) + 1, column: 6 });
  await eventually("the ledger to be marked", async () => (await marked.allInnerTexts()).join("|").includes("ledger"));
  await goTo(page, { line: 1, column: 1 });
  await eventually("no mark at the title", async () => (await marked.count()) === 0);
});

test("a size that is typed is on the rod", async () => {
  const { page, folder } = editor();
  const lines = (await readFile(join(folder, FILE), "utf8")).split("\n");
  const line = lines.findIndex((each) => /^part ledger/.test(each));
  const size = /long (\S+)/.exec(lines[line] ?? "")?.[1] ?? "";
  await openFile(page, FILE);
  await runCommand(page, "Scantling: Open the Rod");
  const ledger = webview(page).locator('tr[data-part*="ledger"] td.col-length');
  await ledger.waitFor();
  await replaceWord(page, line + 1, `long ${size}`, "long 33");
  await eventually("the new length", async () => (await ledger.textContent())?.trim() === "33");
  await eventually("the old length", async () => {
    await undo(page);
    return (await ledger.textContent())?.trim() !== "33";
  });
});

test("the drawings can be looked at closer, and a part leads to where it is written", async () => {
  const { page } = editor();
  await openFile(page, FILE);
  await runCommand(page, "Scantling: Open the Rod");
  const rod = webview(page);
  await rod.locator(".drawings summary").first().click();
  const drawing = rod.locator(".drawings .pane svg");
  await drawing.waitFor();
  const whole = await drawing.getAttribute("viewBox");
  await rod.locator(".drawings .pane").focus();
  for (const key of ["+", "+", "Shift+ArrowRight"]) await page.keyboard.press(key);
  const near = await drawing.getAttribute("viewBox");
  expect(Number(near?.split(" ")[2])).toBeLessThan(Number(whole?.split(" ")[2]));
  await page.keyboard.press("0");
  expect(await drawing.getAttribute("viewBox")).toBe(whole);

  const part = drawing.locator("[data-uri]").last();
  const name = await part.getAttribute("aria-label");
  await part.locator("path").first().click({ force: true });
  const line = await eventually("a line of the text", async () => {
    const now = await cursorLine(page);
    return now !== undefined && 1 < now ? now : undefined;
  });
  expect(name).not.toBe("");
  expect(line).toBeGreaterThan(1);
});

test("the rod is sound for those who do not see it, or not well, in four themes", async () => {
  const session = editor();
  const { page } = session;
  await openFile(page, FILE);
  await runCommand(page, "Scantling: Open the Rod");
  await webview(page).locator("tr[data-part]").first().waitFor();
  if (!(await webview(page).locator(".drawings .pane svg").isVisible()))
    await webview(page).locator(".drawings summary").first().click();
  await webview(page).locator(".drawings .pane svg").waitFor();
  for (const theme of ["light", "dark", "high contrast", "high contrast light"] as const) {
    await soundIn(session, theme);
    await screenshot(page, `rod-${theme.replaceAll(" ", "-")}`);
  }
});

test("a command that is given while the rod is looked at is for the file on it, whatever stands beside it", async () => {
  const { page } = editor();
  await openFile(page, FILE);
  await runCommand(page, "Scantling: Open the Rod");
  await webview(page).locator("h1", { hasText: "Sewing room" }).waitFor();
  await runCommand(page, "View: Focus First Editor Group");
  // It has no parts of its own: the job stays on the rod.
  await openFile(page, "rack.scant");
  await page.locator(".tab", { hasText: `Rod: ${FILE}` }).click();
  await runCommand(page, "Scantling: Write Cut List");
  await eventually("the notice", async () =>
    (await notices(page)).some((each) => each.includes("sewing-room.cutlist")),
  );
});

test("in a column as narrow as 320 pixels nothing of the cut list lies off to the side", async () => {
  const { page } = editor();
  await openFile(page, "print-room.scant");
  await runCommand(page, "Scantling: Open the Rod");
  const list = webview(page).locator(".cut-list");
  await webview(page).locator("h1", { hasText: "Print room" }).waitFor();
  await page.setViewportSize({ width: 1000, height: 800 });
  try {
    const width = () => list.evaluate(({ clientWidth }) => clientWidth);
    await eventually("a narrow column", async () => (await width()) < 330);
    expect(await list.evaluate(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth)).toBeLessThanOrEqual(1);
  } finally {
    await page.setViewportSize({ width: 1400, height: 900 });
  }
});
