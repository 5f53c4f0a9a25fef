import { expect, test } from "vitest";
import { soundIn } from "./axe.ts";
import { eventually } from "./eventually.ts";
import { useEditor } from "./harness.ts";
import { cursorLine } from "./typing.ts";
import { openFile, runCommand, screenshot, webview } from "./workbench.ts";

const FILE = "print-room.scant";
const editor = useEditor();

test("the cuts are planned on the rod, walked with the keyboard, and led to the text", async () => {
  const { page } = editor();
  await openFile(page, FILE);
  await runCommand(page, "Scantling: Plan the Cuts");
  const rod = webview(page);
  const plan = rod.locator("#part-plan");
  await plan.locator(".pane svg").waitFor();
  expect(await plan.locator(".said li").allInnerTexts()).toContainEqual(
    expect.stringContaining("no fewer is possible"),
  );
  expect(await plan.locator(".steps li").count()).toBeGreaterThan(10);
  await page.locator(".notification-toast", { hasText: "birch-18:" }).waitFor({ timeout: 60_000 });
  await plan.locator(".pane").focus();
  await page.keyboard.press("ArrowRight");
  const first = await rod.locator("[data-id]:focus").getAttribute("aria-label");
  await page.keyboard.press("ArrowRight");
  const second = await rod.locator("[data-id]:focus").getAttribute("aria-label");
  expect(first).toMatch(/^[A-Z]+ .+ × /);
  expect(second).not.toBe(first);
  await page.keyboard.press("Enter");
  await eventually("the part's line", async () => 1 < ((await cursorLine(page)) ?? 0));
});

test("the cutting plan and what stands below it are sound in four themes", async () => {
  const session = editor();
  const { page } = session;
  await openFile(page, FILE);
  await runCommand(page, "Scantling: Plan the Cuts");
  const rod = webview(page);
  for (const part of ["buying", "settings", "sticks", "fit"]) {
    const fold = rod.locator(`#part-${part}`);
    await fold.locator("summary").first().waitFor();
    if ((await fold.getAttribute("open")) === null) await fold.locator("summary").first().click();
    await fold.locator("table").first().waitFor();
  }
  await rod.locator("#part-plan .pane svg").waitFor();
  for (const theme of ["light", "dark", "high contrast", "high contrast light"] as const) {
    await soundIn(session, theme);
    for (const part of ["plan", "settings", "fit"]) {
      await rod.locator(`#part-${part}`).evaluate((fold) => fold.scrollIntoView({ block: "start" }));
      await screenshot(page, `${part}-${theme.replaceAll(" ", "-")}`);
    }
  }
});
