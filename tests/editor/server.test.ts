import { readdir, readFile } from "node:fs/promises";
import { dirname } from "node:path";
import { expect, test } from "vitest";
import { eventually } from "./eventually.ts";
import { useEditor } from "./harness.ts";
import { notices, openFile, runCommand, webview } from "./workbench.ts";

const editor = useEditor();
/** The window starts a server that ends so often in three minutes, and then no more. */
const STARTS = 5;

test("a server that ends again and again is said to be gone, on the rod and where it is asked, and can be started again", async () => {
  const { page, folder } = editor();
  await openFile(page, "sewing-room.scant");
  await runCommand(page, "Scantling: Open the Rod");
  const rod = webview(page);
  await rod.locator("h1", { hasText: "Sewing room" }).waitFor();
  await runCommand(page, "View: Focus First Editor Group");

  const ended = new Set<number>();
  for (let count = 0; count < STARTS; count += 1) {
    const server = await eventually("a server", async () =>
      (await serversIn(dirname(folder))).find((id) => !ended.has(id)),
    );
    ended.add(server);
    process.kill(server, "SIGKILL");
  }
  await rod.locator(".note", { hasText: "not answering" }).waitFor();
  await runCommand(page, "Scantling: Write Cut List");
  await eventually("what to do", async () =>
    (await notices(page)).some((each) => each.includes("“Restart the Language Server” starts it again")),
  );

  await runCommand(page, "Scantling: Restart the Language Server");
  await eventually("no note", async () => !(await rod.locator(".note", { hasText: "not answering" }).isVisible()));
  expect(await rod.locator("tr[data-part]").count()).toBeGreaterThan(5);
});

/** The processes of language servers that were started from below a folder. */
async function serversIn(folder: string): Promise<readonly number[]> {
  const ids = (await readdir("/proc")).filter((name) => /^\d+$/.test(name));
  const found = await Promise.all(
    ids.map(async (id) => {
      const args = await readFile(`/proc/${id}/cmdline`, "utf8").catch(() => "");
      return args.split("\0").some((arg) => arg.startsWith(folder) && arg.endsWith("server.cjs")) ? [Number(id)] : [];
    }),
  );
  return found.flat();
}
