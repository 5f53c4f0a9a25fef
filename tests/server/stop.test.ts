import { spawn } from "node:child_process";
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { useBundle } from "./bundle.ts";
import { scratch } from "./scratch.ts";

// What Ctrl+C sends. Windows has no such signal to send to another program.
const here = test.runIf(process.platform !== "win32");
const bundle = useBundle("server/cli/main.ts");
const example = fileURLToPath(new URL("../../examples/print-room.scant", import.meta.url));

interface Done {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs the program in a folder, and stops it as Ctrl+C does, once, when it has printed so much. */
function stopped(words: readonly string[], cwd: string, when: (out: string) => boolean): Promise<Done> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [bundle(), ...words], { cwd, timeout: 60_000 });
    let [out, err, sent] = ["", "", 0];
    const look = (): void => {
      if (sent === 0 && when(out)) sent = child.kill("SIGINT") ? 1 : 0;
    };
    child.stdout.on("data", (chunk: Buffer) => {
      out += chunk.toString();
      look();
    });
    child.stderr.on("data", (chunk: Buffer) => {
      err += chunk.toString();
    });
    child.on("error", reject);
    child.on("close", (code) => resolve({ code, out, err }));
  });
}

here("papers that are stopped leave whole files and nothing beside them, and say what was not written", async () => {
  const folder = scratch({ "a.scant": readFileSync(example) });
  const done = await stopped(["papers", "a.scant", "-o", "out", "--only", "svg,dxf,lists"], folder, (out) =>
    out.includes("Wrote "),
  );
  expect(done.code).toBe(130);
  const said = done.out.split("\n").filter((line) => line !== "");
  const names = readdirSync(join(folder, "out"));
  expect(names.map((name) => `Wrote out/${name}`).sort()).toEqual([...said].sort());
  expect(done.err).toMatch(
    new RegExp(`^scantling: stopped; ${names.length} files? stands? there whole; not written: `),
  );
  for (const name of names) expect(statSync(join(folder, "out", name)).size, name).toBeGreaterThan(0);
});

here("a plan that is stopped prints nothing, keeps nothing, and says so long before its time is over", async () => {
  // Of so many sizes of board there is always another purchase to look for: no search comes to its end.
  const pieces = Array.from(
    { length: 45 },
    (_, n) => `part piece-${n} { from ash  long ${19 + ((n * 7) % 12)} 3/8  wide ${1 + ((n * 5) % 6)} 3/8  count 2 }\n`,
  ).join("");
  const board = "board ash { thick 3/4  wide 5, 6, 7, 9  long 70, 83, 97, 121  costs 6.37 per board foot }";
  const folder = scratch({
    "a.scant": `inches\n${board}\n${pieces}`,
    "rack.scant": "",
  });
  const child = spawn(process.execPath, [bundle(), "plan", "a.scant", "--seconds", "600", "--keep", "rack.scant"], {
    cwd: folder,
    timeout: 60_000,
  });
  let [out, err] = ["", ""];
  child.stdout.on("data", (chunk: Buffer) => {
    out += chunk.toString();
  });
  child.stderr.on("data", (chunk: Buffer) => {
    err += chunk.toString();
  });
  const ended = new Promise<number | null>((resolve) => child.once("close", (code) => resolve(code)));
  // Before it searches it reads and works out, which nobody hears: it ends at once then, and by the signal.
  await new Promise((go) => setTimeout(go, 4_000));
  const began = performance.now();
  child.kill("SIGINT");
  expect(await ended).toBe(130);
  expect(performance.now() - began).toBeLessThan(10_000);
  expect({ out, err }).toEqual({
    out: "",
    err: "scantling: stopped; no plan was printed, and nothing was written\n",
  });
  expect(readFileSync(join(folder, "rack.scant"), "utf8")).toBe("");
});
