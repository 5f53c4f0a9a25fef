import { spawnSync } from "node:child_process";
import {
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  statSync,
  truncateSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import esbuild from "esbuild";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { commandLine, keepCompiled } from "../../scripts/command-line.mjs";
import { scratch } from "./scratch.ts";
import { tooLong } from "./texts.ts";

// The command line as it ships: a start, the program, and beside it what the program was compiled to.
const root = fileURLToPath(new URL("../..", import.meta.url));
const folder = realpathSync(mkdtempSync(join(tmpdir(), "scantling-compiled-")));
const program = join(folder, commandLine.program.file);
let kept: string;
let whole: Buffer;

beforeAll(async () => {
  writeFileSync(join(folder, "b.scant"), tooLong);
  for (const { entry, file, options } of Object.values(commandLine)) {
    await esbuild.build({
      absWorkingDir: root,
      entryPoints: [entry],
      outfile: join(folder, file),
      bundle: true,
      platform: "node",
      format: "cjs",
      target: "node22",
      logLevel: "silent",
      ...options,
    });
  }
  await keepCompiled(folder);
  kept = join(folder, readdirSync(folder).find((name) => name.endsWith(".code")) ?? "none was kept");
  whole = readFileSync(kept);
}, 60_000);

afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeEach(() => writeFileSync(kept, whole));

test("what is kept is for this Node on this machine, and nothing half written is left beside it", () => {
  const names = readdirSync(folder).filter((name) => !name.endsWith(".scant"));
  const { version, platform, arch } = process;
  expect(names.sort()).toEqual([
    `command-line-${version}-${platform}-${arch}.code`,
    "command-line.cjs",
    "scantling.cjs",
  ]);
});

test("what is kept is used", () => {
  expect(refused()).toBe("false");
});

test("the program says the same with it as without it, and as much when it is spoiled", () => {
  const said = run();
  expect(said).toMatchObject({ status: 1, stderr: "" });
  expect(said.stdout).toContain("slide/too-long");

  truncateSync(kept, whole.length / 2);
  expect(refused()).toBe("true");
  expect(run()).toEqual(said);
  writeFileSync(kept, "not compiled code\n");
  expect(refused()).toBe("true");
  expect(run()).toEqual(said);
  writeFileSync(kept, "");
  expect(run()).toEqual(said);
});

test("a program written since, of the same length, is not run by what was kept of the one before", () => {
  const text = readFileSync(program, "utf8");
  const changed = text.replace("slide/too-long", "slide/TOO-long");
  expect(changed).toHaveLength(text.length);
  writeFileSync(program, changed);
  const { mtimeMs } = statSync(kept);
  utimesSync(program, new Date(), new Date(mtimeMs + 1000));
  expect(refused()).toBe("undefined");
  writeFileSync(program, text);
  utimesSync(program, new Date(mtimeMs - 1000), new Date(mtimeMs - 1000));
  expect(refused()).toBe("false");
});

test("without a program the start says what is missing", () => {
  const empty = scratch({ "scantling.cjs": readFileSync(join(folder, "scantling.cjs")) });
  const { status, stderr } = spawnSync(process.execPath, [join(empty, "scantling.cjs")], { encoding: "utf8" });
  expect(status).not.toBe(0);
  expect(stderr).toContain("command-line.cjs");
});

function run(): { readonly status: number | null; readonly stdout: string; readonly stderr: string } {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(folder, commandLine.start.file), "check", "b.scant"],
    { cwd: folder, encoding: "utf8" },
  );
  return { status, stdout, stderr };
}

/** Whether V8 refuses what is kept, in a process without the settings of the tests; undefined when it is not asked. */
function refused(): string {
  const module = join(root, "server/cli/compiled.ts");
  const asked = `import(${JSON.stringify(module)}).then((it) => console.log(String(it.compiledIn(${JSON.stringify(folder)}).script.cachedDataRejected)))`;
  const { stdout, stderr } = spawnSync(process.execPath, ["-e", asked], { encoding: "utf8", env: {} });
  return stdout.trim() || stderr;
}
