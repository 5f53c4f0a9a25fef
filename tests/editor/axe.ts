import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import type { Frame } from "playwright-core";
import { eventually } from "./eventually.ts";
import type { EditorSession } from "./session.ts";
import { setTheme, type Theme, webview } from "./workbench.ts";

/** Wears a theme and waits until axe finds nothing wrong with the rod; says what it finds where that does not come. */
export async function soundIn(session: EditorSession, theme: Theme): Promise<void> {
  await setTheme(session, theme);
  const frame = await rodFrame(session);
  await frame.evaluate(await readFile(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8"));
  // Colours follow the theme a moment later than the window does.
  await eventually(`no fault in ${theme}`, async () => {
    const found = await violations(frame);
    if (0 < found.length) throw new Error(found.join("\n"));
    return true;
  });
}

async function rodFrame({ page }: EditorSession): Promise<Frame> {
  const element = await webview(page).locator("html").elementHandle();
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
