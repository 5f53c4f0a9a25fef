import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { eventually } from "./eventually.ts";
import { useEditor } from "./harness.ts";
import { openFile, runCommand, webview } from "./workbench.ts";

const FILE = "sewing-room.scant";
const editor = useEditor();

test("a tick on the rod and a typed line are written into the file, and the rod counts them", async () => {
  const { page, folder } = editor();
  await openFile(page, FILE);
  await runCommand(page, "Scantling: Open the Rod");
  const rod = webview(page);
  const row = rod.locator("tr[data-part]").first();
  const tick = row.getByRole("checkbox");
  await tick.waitFor();
  expect(await tick.getAttribute("aria-checked")).toBe("false");

  await tick.click();
  await eventually("the tick", async () => (await tick.getAttribute("aria-checked")) === "true");

  await runCommand(page, "View: Focus First Editor Group");
  await runCommand(page, "Scantling: Record What Was Cut");
  const input = page.locator(".quick-input-widget input").first();
  await input.waitFor();
  await input.fill("1 ledger spoiled");
  await page.keyboard.press("Enter");
  await eventually("the head to count", async () => /pieces cut/.test((await rod.locator("body").textContent()) ?? ""));

  await page.keyboard.press("Control+S");
  const text = await eventually("the file to be saved", async () => {
    const now = await readFile(join(folder, FILE), "utf8");
    return /ledger 1.*spoiled/.test(now) ? now : undefined;
  });
  expect(text).toMatch(/cut \{\n(.+\n)+\}/);
});
