import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { eventually } from "./eventually.ts";
import { useEditor } from "./harness.ts";
import { activeText, openFile, runCommand } from "./workbench.ts";

const FILE = "print-room.scant";
const editor = useEditor();

test("shop papers are written as they are chosen, the packet as PDF", async () => {
  const { page, folder } = editor();
  await openFile(page, FILE);
  await runCommand(page, "Scantling: Write Shop Papers");
  const widget = page.locator(".quick-input-widget");
  await widget.getByText("Cut List, CSV").click();
  await widget.getByRole("button", { name: "OK" }).click();
  const papers = join(folder, "print-room-papers");
  const names = await eventually(
    "the papers",
    async () => {
      const there = (await readdir(papers)).sort();
      return there.length === 2 && there.every((name) => !name.endsWith(".tmp")) ? there : undefined;
    },
    60_000,
  );
  expect(names).toEqual(["print-room.cutlist.csv", "print-room.papers.pdf"]);
  const packet = await readFile(join(papers, "print-room.papers.pdf"));
  expect(packet.subarray(0, 8).toString()).toBe("%PDF-1.7");
  await page.locator(".notification-toast", { hasText: "Wrote 2 files into print-room-papers" }).waitFor();
});

test("the offcuts worth keeping are written into the build file as an edit", async () => {
  const { page } = editor();
  await openFile(page, FILE);
  await runCommand(page, "Scantling: Keep the Offcuts");
  const widget = page.locator(".quick-input-widget");
  await widget.getByText("offcut of ").first().waitFor();
  await page.keyboard.press("Enter");
  await widget.getByText(FILE).first().click();
  await page.locator(".tab.active.dirty").waitFor();
  await eventually("the lines", async () => (await activeText(page)).includes("offcut of birch"));
  await runCommand(page, "Scantling: Keep the Offcuts");
  await widget.getByText("offcut of ").first().waitFor();
  await page.keyboard.press("Enter");
  await widget.getByText(FILE).first().click();
  await page.locator(".notification-toast", { hasText: "Offcuts that stood there already" }).waitFor();
});
