import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { Frame } from "playwright-core";
import { expect, test } from "vitest";
import { eventually } from "./eventually.ts";
import { useEditor } from "./harness.ts";
import { cursorLine } from "./typing.ts";
import { openFile, runCommand, screenshot, setTheme, webview } from "./workbench.ts";

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
  const axe = await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
  for (const theme of ["light", "dark", "high contrast", "high contrast light"] as const) {
    await setTheme(session, theme);
    const frame = await rodFrame();
    await frame.evaluate(axe);
    const faults = await eventually(`no fault in ${theme}`, async () => {
      const found = await violations(frame);
      if (0 < found.length) throw new Error(found.join("\n"));
      return found;
    });
    expect(faults).toEqual([]);
    for (const part of ["plan", "settings", "fit"]) {
      await rod.locator(`#part-${part}`).evaluate((fold) => fold.scrollIntoView({ block: "start" }));
      await screenshot(page, `${part}-${theme.replaceAll(" ", "-")}`);
    }
  }
});

async function rodFrame(): Promise<Frame> {
  const element = await webview(editor().page).locator("html").elementHandle();
  const frame = await element?.ownerFrame();
  if (frame === null || frame === undefined) throw new Error("The rod is in no frame.");
  return frame;
}

/** What axe finds wrong with the page, each with the elements it finds it in; throws where it finds next to nothing to check. */
function violations(frame: Frame): Promise<readonly string[]> {
  return frame.evaluate(`axe.run(document, { resultTypes: ["violations"] }).then(({ violations, passes }) => {
    if (passes.length < 15) throw new Error("Only " + passes.length + " rules had something to check.");
    return violations.map(({ id, help, nodes }) => id + ": " + help + " " + nodes.slice(0, 3).map(({ html }) => html).join(" "));
  })`);
}
