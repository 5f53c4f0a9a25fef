import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { eventually } from "./eventually.ts";
import { useEditor } from "./harness.ts";
import { lineText, replaceWord, squiggles, undo, waitForSquiggles } from "./typing.ts";
import { openFile, runCommand, screenshot, setTheme, waitForProblem, webview } from "./workbench.ts";

const FILE = "print-room.scant";
const editor = useEditor();

test("a squiggle comes with a mistake and goes when it is undone", async () => {
  const { page } = editor();
  const { line, name } = await slidesNamedByBox();
  await openFile(page, FILE);
  await waitForSquiggles(page, "error", 0);

  await replaceWord(page, line, name, "nowhere");
  await squiggles(page, "error").first().waitFor({ state: "attached" });
  // Half the word is unknown too, and said first.
  await waitForProblem(
    page,
    (each) => each.severity === "error" && each.line === line && each.message.includes("nowhere"),
  );

  await runCommand(page, "View: Focus Active Editor Group");
  await eventually("the line as it was", async () => {
    await undo(page);
    return (await lineText(page, line)).includes(name);
  });
  await waitForSquiggles(page, "error", 0);
});

test("the rod lists the parts, keeps them while the text is broken, and wears every theme", async () => {
  const session = editor();
  const { page } = session;
  await openFile(page, FILE);
  await runCommand(page, "Scantling: Open the Rod");
  const rows = webview(page).locator("table#cut-list tbody tr[data-part]");
  await rows.first().waitFor();
  const listed = await rows.allInnerTexts();
  expect(listed.length).toBeGreaterThan(5);

  for (const theme of ["light", "high contrast", "high contrast light", "dark"] as const) {
    await setTheme(session, theme);
    await screenshot(page, `print-room-${theme.replaceAll(" ", "-")}`);
  }

  const { line, name } = await slidesNamedByBox();
  await runCommand(page, "View: Focus First Editor Group");
  await replaceWord(page, line, name, "{");
  await squiggles(page, "error").first().waitFor({ state: "attached" });
  expect(await rows.count()).toBeGreaterThan(0);
});

/** The first line of the example, counted from 1, on which a box names its slides. */
async function slidesNamedByBox(): Promise<{ readonly line: number; readonly name: string }> {
  const lines = (await readFile(join(editor().folder, FILE), "utf8")).split("\n");
  for (const [index, text] of lines.entries()) {
    const name = /^\s*slides\s+([a-z][\w-]*)\s*\d*\s*$/.exec(text)?.[1];
    if (name !== undefined) return { line: index + 1, name };
  }
  throw new Error(`${FILE} has no line on which a box names its slides.`);
}
