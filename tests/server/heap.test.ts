import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import type { Row } from "../bench/trust/row.ts";

const bench = fileURLToPath(new URL("../bench/trust/memory.ts", import.meta.url));

// The whole bench makes ten thousand edits: npm run bench:trust.
test("the server's heap does not grow with the edits that it has seen", { timeout: 240_000 }, () => {
  const done = spawnSync(process.execPath, ["--expose-gc", bench, "--smoke", "--json"], { encoding: "utf8" });
  expect(done.stderr).not.toMatch(/\bError\b/);
  const rows = JSON.parse(done.stdout.trim().split("\n").at(-1)!) as readonly Row[];
  expect(rows.map(({ holds, result }) => ({ holds, result }))).toEqual([
    { holds: true, result: expect.stringMatching(/ MB: [+-]/) },
    { holds: true, result: expect.stringMatching(/ MB after the last: [+-]/) },
  ]);
});
