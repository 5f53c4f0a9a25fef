import { readFile, stat } from "node:fs/promises";
import { join } from "node:path";
import { expect, test } from "vitest";
import { eventually } from "./eventually.ts";
import { useEditor } from "./harness.ts";
import { applyQuickFix, cursorLine, goTo, lineText, waitForSquiggles } from "./typing.ts";
import { notices, openFile, runCommand, waitForProblem, webview } from "./workbench.ts";

/** Two bays as measured on site; the second one's slide is longer than its depth allows. */
const BAYS = `project "Two bays"
inches
read to 1/32

sheet ply-18 { called 3/4  measures 45/64  size 48 x 96 }
sheet ply-12 { called 1/2  measures 15/32  size 48 x 96 }

slides runner {
  mount side  extension full
  lengths 10 to 28 by 2
  clearance 1/2
  above 1/4  below 1/4  behind 1/2
  carries 100 lb
}

opening upper { wide 15 1/2  high 6  deep 22 }
opening lower { wide 15 1/2  high 6  deep 23 1/2 }

box for upper {
  sides ply-18   bottom ply-12 under
  corners screws
  slides runner
}
box for lower {
  sides ply-18   bottom ply-12 under
  corners screws
  slides runner SLIDE
}
`;
const withSlide = (length: string) => BAYS.replace("SLIDE", length);
const LINES = withSlide("24").split("\n");
const SLIDE_LINE = LINES.indexOf("  slides runner 24") + 1;
const BOX_LINES = [LINES.indexOf("box for upper {") + 1, LINES.indexOf("box for lower {")] as const;

/** A click on a line can land on what lies over it: sticky headings, breadcrumbs. */
const FOCUS_EDITOR = "View: Focus Active Editor Group";

const editor = useEditor({ files: { "too-long.scant": withSlide("24"), "bays.scant": withSlide("22") } });

test("a slide longer than the depth allows is flagged on its length, and the fix writes the longest that fits", async () => {
  const { page } = editor();
  await openFile(page, "too-long.scant");
  const problem = await waitForProblem(page, (each) => each.code === "slide/too-long");
  expect({ line: problem.line, column: problem.column }).toEqual({
    line: SLIDE_LINE,
    column: "  slides runner 24".indexOf("24") + 1,
  });
  // 23 1/2 deep, 1/2 kept behind the slide: 23 is left, and the series goes by 2.
  expect(problem.message).toContain("22");

  await runCommand(page, FOCUS_EDITOR);
  await goTo(page, problem);
  await applyQuickFix(page, /\b22\b/);
  await waitForSquiggles(page, "error", 0);
  expect(await lineText(page, SLIDE_LINE)).toBe("  slides runner 22");
});

test("the rod lists the box of a bay, and a click on a row goes to its source", async () => {
  const { page } = editor();
  await openFile(page, "bays.scant");
  await runCommand(page, "Scantling: Open the Rod");
  const rows = webview(page).locator("table#cut-list tbody tr[data-part]");
  const side = rows.filter({ hasText: "box upper" }).filter({ hasText: /side/i }).first();
  await side.waitFor();
  // 15 1/2 less 1/2 a side is 14 1/2; less two sides of 45/64 that is 13 3/32.
  await rows.filter({ hasText: "13 3/32" }).first().waitFor();
  expect(await side.textContent()).toContain("20");
  await side.click();
  const line = await eventually("the cursor in the block of the box", async () => {
    const now = await cursorLine(page);
    return now !== undefined && BOX_LINES[0] <= now && now <= BOX_LINES[1] ? now : undefined;
  });
  expect(LINES[line - 1]).toContain("sides");
});

test("the cut list is written beside the build file, and only when it has changed", async () => {
  const { page, folder } = editor();
  await openFile(page, "bays.scant");
  await runCommand(page, "Scantling: Write Cut List");
  const csv = join(folder, "bays.cutlist.csv");
  const markdown = join(folder, "bays.cutlist.md");
  const table = await eventually("the CSV file", () => readFile(csv, "utf8"));
  const text = await eventually("the Markdown file", () => readFile(markdown, "utf8"));
  for (const written of [table, text]) {
    expect(written).toMatch(/side/i);
    expect(written).toContain("13 3/32");
  }
  const noticed = async () => (await notices(page)).some((notice) => notice.includes("bays.cutlist"));
  await eventually("a notice", noticed);

  const before = await stat(csv);
  await runCommand(page, "Notifications: Clear All Notifications");
  await eventually("the notice to go", async () => !(await noticed()));
  await runCommand(page, "Scantling: Write Cut List");
  await eventually("a notice of the second time", noticed);
  expect((await stat(csv)).mtimeMs).toBe(before.mtimeMs);
});
