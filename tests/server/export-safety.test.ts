import { execFileSync, spawn, spawnSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { seeded, seedOfRun } from "../support/fuzz/random.ts";
import { useBundle } from "./bundle.ts";
import { scratch } from "./scratch.ts";
import { fits } from "./texts.ts";
import { twoTexts } from "./two-texts.ts";

const here = fileURLToPath(new URL(".", import.meta.url));
const kills = 8;
const seed = seedOfRun();

test(`killed ${kills} times while it writes, seed ${seed}: the file is the old one or the new one`, {
  timeout: 120_000,
}, async () => {
  const random = seeded(seed);
  const seen = new Set<string>();
  for (let kill = 0; kill < kills; kill++) {
    const folder = scratch();
    const path = join(folder, "chest.cutlist.csv");
    await killedWriting(path, random.below(40));
    const text = readFileSync(path, "utf8");
    expect(twoTexts.includes(text), `after kill ${kill} the file has ${text.length} characters`).toBe(true);
    seen.add(text.slice(0, 3));
    // What was under way may be left beside it, hidden, and only that.
    expect(readdirSync(folder).filter((name) => !/^\.chest\.cutlist\.csv\.[0-9a-f]{8}\.tmp$/.test(name))).toEqual([
      "chest.cutlist.csv",
    ]);
  }
  expect([...seen].sort()).toEqual(["new", "old"]);
});

/** Starts the writer, and kills it so many milliseconds after it has begun to write over what is there. */
async function killedWriting(path: string, after: number): Promise<void> {
  const child = spawn(process.execPath, [join(here, "write-forever.ts"), path], {
    stdio: ["ignore", "pipe", "inherit"],
  });
  const ended = new Promise((resolve) => child.once("exit", (_code, signal) => resolve(signal)));
  await new Promise((resolve) => child.stdout.once("data", resolve));
  await new Promise((resolve) => setTimeout(resolve, after));
  child.kill("SIGKILL");
  expect(await ended).toBe("SIGKILL");
}

describe("a disk that takes no more", () => {
  const bundle = useBundle("server/cli/main.ts");
  const run = (command: string, folder: string) =>
    spawnSync("bash", ["-c", command, "bash", process.execPath, bundle(), folder], { encoding: "utf8", cwd: folder });

  test("files that grow past what may be written: said clearly, the old ones stand, nothing is left beside them", () => {
    const folder = scratch({ "a.scant": fits, "a.cutlist.csv": "old\n" });
    // A file may have one block of 1024 bytes: less than the list has.
    const long = Array.from(
      { length: 40 },
      (_, n) => `opening o${n} { wide 15 ${n}/64  high 6  deep 23 1/2 }\nbox for o${n} like a { }\n`,
    );
    writeFileSync(join(folder, "a.scant"), fits + long.join(""));
    const done = run('ulimit -f 1; "$1" "$2" list a.scant -o . --csv', folder);
    expect(done.status).toBe(2);
    expect(done.stderr).toContain("a.cutlist.csv cannot be written: it is larger than the system lets you write");
    expect(readFileSync(join(folder, "a.cutlist.csv"), "utf8")).toBe("old\n");
    expect(readdirSync(folder).sort()).toEqual(["a.cutlist.csv", "a.scant"]);
  });

  test("a full disk behind the standard output is said and ends in an exit code", () => {
    const folder = scratch({ "a.scant": fits });
    const done = run('"$1" "$2" list a.scant > /dev/full', folder);
    expect(done.status).toBe(2);
    expect(done.stderr).toMatch(/^scantling: what it printed could not be written: ENOSPC/);
  });

  test("a reader that closes the pipe is no failure", () => {
    const folder = scratch({ "a.scant": fits });
    const out = execFileSync(
      "bash",
      ["-c", 'set -o pipefail; "$0" "$1" list a.scant | head -1', process.execPath, bundle()],
      {
        encoding: "utf8",
        cwd: folder,
      },
    );
    expect(out.split("\n")).toHaveLength(2);
  });
});
