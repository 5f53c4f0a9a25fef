import { spawn } from "node:child_process";
import { readdirSync, readFileSync, truncateSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import { useBundle } from "./bundle.ts";
import { scratch } from "./scratch.ts";
import { fits, job, rack, tooLong } from "./texts.ts";

const bundle = useBundle("server/cli/main.ts");
const examples = fileURLToPath(new URL("../../examples", import.meta.url));

test("the program as it ships says its version and its exit codes", async () => {
  const folder = scratch({ "a.scant": fits, "b.scant": tooLong, "sub/job.scant": job, "sub/rack.scant": rack });
  expect(await program(["--version"], folder)).toEqual({ code: 0, out: `scantling ${manifest.version}\n`, err: "" });
  expect((await program(["check", "a.scant", "sub/job.scant"], folder)).code).toBe(0);
  expect((await program(["check", "b.scant"], folder)).code).toBe(1);
  expect((await program(["check", "none.scant"], folder)).code).toBe(2);
  expect((await program(["frobnicate"], folder)).code).toBe(2);
});

test("every example is without errors", async () => {
  const names = readdirSync(examples).filter((name) => name.endsWith(".scant"));
  expect(names.length).toBeGreaterThan(2);
  const done = await program(["check", ...names], examples);
  expect(done.err).toBe("");
  expect(done.code).toBe(0);
});

test("a folder, a program, nothing at all and far too much", async () => {
  const folder = scratch({
    "sub/a.scant": "",
    "big.scant": "",
    "binary.scant": readFileSync(process.execPath).subarray(0, 9000),
  });
  truncateSync(join(folder, "big.scant"), 50 * 1024 * 1024);
  const said = async (name: string) => (await program(["check", name], folder)).err;
  expect(await said("sub")).toBe("scantling: sub is a folder; name the build files in it\n");
  expect(await said("binary.scant")).toBe("scantling: binary.scant is not a text file\n");
  expect(await said("big.scant")).toBe("scantling: big.scant is too big (50.0 MiB; the limit is 4 MiB)\n");
  expect(await said("no\u001b[31mne")).toBe("scantling: no·[31mne does not exist\n");
});

test("used files stay inside the root", async () => {
  const folder = scratch({ "secret.scant": rack, "jobs/a.scant": job.replace("rack.scant", "../secret.scant") });
  const inside = await program(["check", "jobs/a.scant"], folder);
  expect(inside.code).toBe(0);
  const outside = await program(["check", "a.scant"], join(folder, "jobs"));
  expect(outside.code).toBe(1);
  expect(outside.out).toContain("use/refused");
});

test("the standard input", async () => {
  const folder = scratch();
  const done = await program(["check", "-"], folder, { stdin: tooLong });
  expect(done.code).toBe(1);
  expect(done.out).toMatch(/^stdin:6:56 error slide\/too-long/);
  expect((await program(["check", "-"], folder, { stdin: "" })).code).toBe(0);
  const big = await program(["check", "-"], folder, { stdin: "x".repeat(6 * 1024 * 1024) });
  expect(big.err).toBe("scantling: stdin is too big (the limit is 4 MiB)\n");
});

test("a reader that has seen enough is no failure", async () => {
  const folder = scratch({ "a.scant": `inches\n${"box for nowhere { }\n".repeat(3000)}` });
  const done = await program(["check", "a.scant"], folder, { readOnly: 1 });
  expect(done.err).toBe("");
  expect([0, 1]).toContain(done.code);
});

test("all of a long output arrives down a pipe", async () => {
  const parts = Array.from({ length: 2000 }, (_, index) => `part p${index} { from ply  long 10  wide 5 }\n`).join("");
  const folder = scratch({ "a.scant": rack + parts });
  const done = await program(["list", "--json", "a.scant"], folder);
  expect(JSON.parse(done.out).parts).toHaveLength(2000);
});

test("the cut list is written beside the file, and not again", async () => {
  const folder = scratch({ "a.scant": fits });
  expect((await program(["list", "a.scant", "-o", "."], folder)).out).toBe("Wrote a.cutlist.csv\nWrote a.cutlist.md\n");
  expect(readdirSync(folder).sort()).toEqual(["a.cutlist.csv", "a.cutlist.md", "a.scant"]);
  expect((await program(["list", "a.scant", "-o", "."], folder)).out).toMatch(/^a\.cutlist\.csv says the same already/);
  const none = await program(["list", "a.scant", "-o", "none"], folder);
  expect(none.code).toBe(2);
  expect(none.err).toContain("none/a.cutlist.csv cannot be written: there is no folder");
});

interface Done {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** `readOnly`: how many chunks of the output are read before the pipe is closed. */
function program(
  words: readonly string[],
  cwd: string,
  { stdin = "", readOnly }: { readonly stdin?: string; readonly readOnly?: number } = {},
): Promise<Done> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [bundle(), ...words], { cwd, timeout: 20_000 });
    const out: Buffer[] = [];
    const err: Buffer[] = [];
    child.stdout.on("data", (chunk: Buffer) => {
      out.push(chunk);
      if (out.length === readOnly) child.stdout.destroy();
    });
    child.stderr.on("data", (chunk: Buffer) => err.push(chunk));
    child.on("error", reject);
    child.on("close", (code) => {
      resolve({ code, out: Buffer.concat(out).toString("utf8"), err: Buffer.concat(err).toString("utf8") });
    });
    // The program may stop reading before all is sent.
    child.stdin.on("error", () => undefined);
    child.stdin.end(stdin);
  });
}
