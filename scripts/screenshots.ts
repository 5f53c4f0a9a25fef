// npm run screenshots: takes the README's pictures of the real editor anew, into docs/images.
import { mkdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { eventually } from "../tests/editor/eventually.ts";
import { prepare } from "../tests/editor/prepare.ts";
import { type EditorSession, openSession } from "../tests/editor/session.ts";
import { goTo, hoverAt, waitForSquiggles } from "../tests/editor/typing.ts";
import { openFile, runCommand, setTheme, webview } from "../tests/editor/workbench.ts";

const folder = fileURLToPath(new URL("../docs/images", import.meta.url));
const MOST_BYTES = 300 * 1024;

/** A slide that is longer than its opening is deep, for the picture of a finding. */
const TOO_LONG = `project "Bedside drawer"
inches
read to 1/32

sheet ply-12 { called 1/2  measures 15/32  size 48 x 96 }

slides plain {
  mount side  extension full
  lengths 10 to 28 by 2
  clearance 1/2 +1/32 -0  above 1/4  below 1/4  behind 1/2
}

opening bedside { wide 15 1/2  high 6  deep 23 1/2 }

box for bedside {
  sides ply-12   bottom ply-12 under
  corners rabbet 1/4
  slides plain 24
}
`;

await mkdir(folder, { recursive: true });
const prepared = await prepare();
const session = await openSession(prepared, {
  files: { "bedside.scant": TOO_LONG },
  settings: { "breadcrumbs.enabled": false, "editor.hover.delay": 100 },
});
try {
  await session.page.setViewportSize({ width: 1280, height: 760 });
  await session.page.keyboard.press("Control+B");
  await session.page.locator(".part.sidebar").waitFor({ state: "hidden" });
  await takeRod(session);
  await takeDrawing(session);
  await takeFinding(session);
} finally {
  await session.close();
  await prepared.clear();
}

async function takeRod(editor: EditorSession): Promise<void> {
  const { page } = editor;
  await setTheme(editor, "light");
  await openFile(page, "print-room.scant");
  await runCommand(page, "Scantling: Open the Rod");
  await webview(page).locator("tr[data-part]").first().waitFor();
  await runCommand(page, "View: Focus First Editor Group");
  await goTo(page, { line: 57, column: 3 });
  await eventually("a mark", async () => 0 < (await webview(page).locator("tr[aria-current]").count()));
  await take(editor, "rod");
}

async function takeDrawing(editor: EditorSession): Promise<void> {
  const { page } = editor;
  await setTheme(editor, "dark");
  const rod = webview(page);
  await rod.locator(".drawings summary").first().click();
  await rod.locator(".drawings .pane svg").waitFor();
  await rod.locator(".drawings .drawing-bar").scrollIntoViewIfNeeded();
  await rod.locator(".drawings .drawing-bar").evaluate((bar) => bar.scrollIntoView({ block: "start" }));
  await take(editor, "drawing");
}

async function takeFinding(editor: EditorSession): Promise<void> {
  const { page } = editor;
  await setTheme(editor, "dark");
  await runCommand(page, "View: Close All Editors");
  await openFile(page, "bedside.scant");
  await eventually("the finding", async () => 0 < (await page.locator(".squiggly-error").count()));
  await waitForSquiggles(page, "error", 1);
  await hoverAt(page, "n 24");
  await take(editor, "finding");
}

async function take({ page }: EditorSession, name: string): Promise<void> {
  const path = join(folder, `${name}.png`);
  const hover = page.locator(".monaco-hover:visible, .workbench-hover:visible");
  if (name !== "finding") {
    await page.mouse.move(640, 20);
    await eventually("no hover", async () => (await hover.count()) === 0);
  }
  await page.screenshot({ path, animations: "disabled", caret: "hide" });
  const { size } = await stat(path);
  console.log(`${path}: ${Math.round(size / 1024)} kB`);
  if (MOST_BYTES < size) throw new Error(`${name}.png is ${size} bytes, and ${MOST_BYTES} is the limit.`);
}
