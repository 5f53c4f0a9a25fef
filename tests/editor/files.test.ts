import { cp, readFile, rename, rm } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { eventually } from "./eventually.ts";
import { useEditor } from "./harness.ts";
import { goTo, typeText } from "./typing.ts";
import { chooseRow, notices, openFile, problems, runCommand, waitForProblem, webview } from "./workbench.ts";

const RACK = `sheet ply { measures 15/32  size 48 x 96 }
slides runner { mount side  lengths 10 to 28 by 2  clearance 1/2  above 1/4  below 1/4  behind 1/2 }
`;
const jobWith = (rack: string) => `inches
use "${rack}"
opening bay { wide 15 1/2  high 6  deep 22 }
box for bay { sides ply  bottom ply under  corners screws  slides runner }
`;
/** A job at the top, one two folders down, and the stock of both in a third. */
const editor = useEditor({
  folder: "none",
  files: {
    "top.scant": jobWith("thin/stock/rack.scant"),
    "jobs/may/deep.scant": jobWith("../../thin/stock/rack.scant"),
    "thin/stock/rack.scant": RACK,
    "done/notes.md": "",
    "shut.scant": `${RACK}${jobWith("").replace(/use.*\n/, "")}`,
  },
  settings: {
    "files.readonlyInclude": { "**/shut.scant": true },
    "explorer.confirmDragAndDrop": false,
    "explorer.compactFolders": false,
    "explorer.autoReveal": false,
  },
});

test("a folder that goes, and comes again, takes what is used of it with it", async () => {
  const { page, folder } = editor();
  const none = async () => (await problems(page)).length === 0;
  await openFile(page, "top.scant");
  await eventually("no problem", none);
  await cp(join(folder, "thin"), join(folder, "..", "aside"), { recursive: true });
  await rm(join(folder, "thin"), { recursive: true });
  await waitForProblem(page, (each) => each.code === "use/missing");
  await rename(join(folder, "..", "aside"), join(folder, "thin"));
  await eventually("no problem any more", none);
});

test("a name is changed in files too that no editor has open", async () => {
  const { page, folder } = editor();
  await openFile(page, "rack.scant");
  await goTo(page, { line: 1, column: 8 });
  const input = page.locator(".rename-box input");
  await eventually("the box for the new name", async () => {
    await page.keyboard.press("F2");
    await input.waitFor({ timeout: 5000 });
    return true;
  });
  await input.fill("birch");
  await page.keyboard.press("Enter");
  await eventually("the other file", async () => {
    await runCommand(page, "File: Save All Files");
    return (await readFile(join(folder, "jobs", "may", "deep.scant"), "utf8")).includes("sides birch  bottom birch");
  });
});

test("files in a folder that is moved still find what they use, open or not", async () => {
  const { page, folder } = editor();
  await openFile(page, "top.scant");
  const row = (name: string) => page.locator(".explorer-folders-view .monaco-list-row", { hasText: name }).first();
  await row("jobs").dragTo(row("done"));
  await page.locator(".monaco-dialog-box .monaco-button", { hasText: "OK" }).click();
  const moved = join(folder, "done", "jobs", "may", "deep.scant");
  await eventually("the file in its new place", async () => {
    await runCommand(page, "File: Save All Files");
    return (await readFile(moved, "utf8").catch(() => "")).includes('use "../../../thin/stock/rack.scant"');
  });
  await openFile(page, "top.scant");
  expect(await problems(page)).toEqual([]);
});

test("a new file that is saved, and then renamed, stays on the rod, and nothing comes in its old place", async () => {
  const { page, folder, changeSettings } = editor();
  await changeSettings({ "scantling.rod.followEditor": false });
  await runCommand(page, "Scantling: New Build File");
  await chooseRow(page, (row) => row.startsWith("Case with a face frame"));
  await runCommand(page, "Scantling: Open the Rod");
  await webview(page).locator("h1", { hasText: "Base case with drawers" }).waitFor();
  await runCommand(page, "View: Focus First Editor Group");
  await page.keyboard.press("Control+S");
  const row = (name: string) => page.locator(".explorer-folders-view .monaco-list-row", { hasText: name });
  await row("base-case.scant").waitFor();
  const rod = (file: string) => page.locator(".tab", { hasText: `Rod: ${file}` });
  await rod("base-case.scant").waitFor();
  await eventually("the file", async () =>
    (await readFile(join(folder, "base-case.scant"), "utf8")).includes("case base"),
  );
  // Two: the text and the rod of it.
  expect(await page.locator(".tab", { hasText: "base-case.scant" }).count()).toBe(2);

  await row("base-case.scant").click();
  await page.keyboard.press("F2");
  const box = page.locator(".explorer-folders-view .monaco-inputbox input");
  await box.fill("chest.scant");
  await box.press("Enter");
  await rod("chest.scant").waitFor();
});

test("a file beside itself as it was saved is not checked twice", async () => {
  const { page } = editor();
  await openFile(page, "top.scant");
  await goTo(page, { line: 1, column: 1 });
  await typeText(page, "// x");
  await page.keyboard.press("Enter");
  await runCommand(page, "File: Compare Active File with Saved");
  await page.locator(".editor-group-container.active .monaco-diff-editor .original .view-line").first().waitFor();
  // The other side would have had its findings by then.
  await page.waitForTimeout(1500);
  expect((await problems(page)).filter(({ severity }) => severity === "error")).toEqual([]);
});

test("that a record in a read-only file will be lost is said", async () => {
  const { page } = editor();
  await openFile(page, "shut.scant");
  await runCommand(page, "Scantling: Record What Was Cut");
  const line = page.locator(".quick-input-widget input").first();
  await line.fill("1 side bay");
  await page.keyboard.press("Enter");
  await eventually("the warning", async () => (await notices(page)).some((each) => each.includes("is read-only")));
});
