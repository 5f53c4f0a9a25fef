// How long a maker waits, on a file of a thousand lines: all in one run, beside langium's bare parse of the same text.
// `--smoke` runs each a few times on a small file, to see that it still runs; `--json` prints rows.
import { spawnSync } from "node:child_process";
import { readdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { createWorkspace } from "../../../language/service.ts";
import { waits } from "../../../server/session.ts";
import { bareParse } from "../../support/bare-parse.ts";
import { benchFolder, served, shippedCommandLine, shippedServer } from "./programs.ts";
import { atMost, median, p95, type Row, say, smoke } from "./row.ts";
import { jobOf } from "./texts.ts";

const rounds = smoke ? 3 : 25;
const text = jobOf(smoke ? 120 : 1_000);
const lines = text.split("\n").length - 1;
const uri = "file:///bench/bench.scant";
const folder = benchFolder();
const [server, commandLine] = [await shippedServer(folder), await shippedCommandLine(folder)];
writeFileSync(join(folder, "bench.scant"), text);

const node = await times(rounds, () => void spawnSync(process.execPath, ["-e", "0"]));
const parses = await times(rounds * 2, () => void bareParse(text));
const [starts, keys] = [await startsToFindings(), await keysToFindings()];
const checks = await times(rounds, checked);
for (const name of readdirSync(folder)) if (name.endsWith(".code")) rmSync(join(folder, name));
const uncompiled = await times(rounds, checked);
const works = worked();
const bare = median(parses);

/** Node itself starts in well under this where nothing else runs; above it, waits say how busy the machine was. */
const quietStart = 120;
const isBusy = quietStart < median(node);

const rows: readonly Row[] = [
  {
    what: "langium's bare parse, warm, and Node's own start, for comparison",
    result: `${bare.toFixed(1)} ms and ${median(node).toFixed(0)} ms (medians)`,
    aim: "",
    holds: undefined,
  },
  atMost(
    `processor time of a key: text to findings, warm, without the ${waits.idle} ms that wait for the next key, p95`,
    p95(works),
    150 - waits.idle,
    "ms",
    `, median ${median(works).toFixed(0)}`,
  ),
  anew(),
  waited(`key to findings, p95, of which ${waits.idle} ms wait for the next key`, keys, 150),
  waited("server start to first findings, p95", starts, 500),
  waited("`check` from a cold start, p95", checks, 300),
  {
    what: "the same by a Node that the program was not built with, p95",
    result: `${p95(uncompiled).toFixed(0)} ms, median ${median(uncompiled).toFixed(0)}`,
    aim: "",
    holds: undefined,
  },
];
say([...rows.map((row) => ({ ...row, what: `${row.what} (${lines} lines)` })), ...growth()]);
process.exit(0);

/** A wait as the clock has it; on a machine that is busy with other things it is shown, and not judged. */
function waited(what: string, all: readonly number[], most: number): Row {
  const middle = median(all);
  const row = atMost(
    what,
    p95(all),
    most,
    "ms",
    `, median ${middle.toFixed(0)}, ${(middle / bare).toFixed(1)} × the bare parse`,
  );
  return isBusy ? { ...row, result: `${row.result}; not judged, the machine was busy`, holds: undefined } : row;
}

/** Milliseconds of processor that the program itself takes from a changed text to its findings. */
function worked(): readonly number[] {
  const workspace = createWorkspace({ root: undefined });
  return Array.from({ length: rounds + 8 }, (_, round) => {
    const before = process.cpuUsage();
    workspace.set(uri, text.replace("holds 12", `holds ${20 + round}`));
    if (workspace.build(uri).findings.length === 0) throw new Error("the bench's own text has hints at least");
    const { user, system } = process.cpuUsage(before);
    return (user + system) / 1000;
  }).slice(8);
}

/** A change in one case of many derives and fits what hangs on it, and nothing else. */
function anew(): Row {
  const workspace = createWorkspace({ root: undefined });
  workspace.set(uri, text);
  const before = workspace.build(uri).derivation.islands;
  workspace.set(uri, text.replace("holds 12", "holds 20"));
  const after = workspace.build(uri).derivation.islands;
  const made = after.filter((island) => !before.includes(island)).length;
  return {
    what: "cases that a change in one of them derives and dry-fits anew",
    result: `${made} of ${after.length}`,
    aim: "1",
    holds: made === 1,
  };
}

async function times(count: number, run: () => void | Promise<void>): Promise<readonly number[]> {
  const all: number[] = [];
  for (let round = 0; round < count; round++) {
    const began = performance.now();
    await run();
    all.push(performance.now() - began);
  }
  return all;
}

function checked(): void {
  const { status, stderr } = spawnSync(process.execPath, [commandLine, "check", "bench.scant"], { cwd: folder });
  if (status !== 0) throw new Error(String(stderr));
}

/** From the start of the process to what it says of the file that is open. */
async function startsToFindings(): Promise<readonly number[]> {
  return times(rounds, async () => {
    const editor = await served(server);
    const found = editor.findings(uri, 1);
    editor.open(uri, text);
    await found;
    editor.end();
  });
}

/** A letter of a length in the middle of the file changes, and again, with the server warm. */
async function keysToFindings(): Promise<readonly number[]> {
  const editor = await served(server);
  const first = editor.findings(uri, 1);
  editor.open(uri, text);
  await first;
  const middle = text.indexOf("holds 1", text.length / 2) + "holds ".length;
  let version = 1;
  const key = async (): Promise<void> => {
    version++;
    const found = editor.findings(uri, version);
    editor.change(uri, `${text.slice(0, middle)}${1 + (version % 9)}${text.slice(middle + 1)}`, version);
    await found;
  };
  for (let warm = 0; warm < rounds / 3; warm++) await key();
  const all = await times(rounds * 2, key);
  editor.end();
  return all;
}

/** Text to findings in one process, warm, per line of text: the same for long files as for short ones, if it is linear. */
function growth(): readonly Row[] {
  const sizes = smoke ? [100, 400] : [100, 1_000, 5_000, 20_000];
  const perLine = sizes.map((size) => {
    const job = jobOf(size);
    const all: number[] = [];
    for (let round = 0; round < (size < 5_000 ? 7 : 3); round++) {
      const workspace = createWorkspace({ root: undefined });
      const before = process.cpuUsage();
      workspace.set(uri, job);
      if (workspace.build(uri).findings.length === 0) throw new Error("the bench's own text has hints at least");
      all.push(process.cpuUsage(before).user / 1000);
    }
    return (1_000 * Math.min(...all)) / job.split("\n").length;
  });
  const worst = Math.max(...perLine.slice(1)) / perLine[0]!;
  const shown = sizes.map((size, index) => `${size}: ${perLine[index]!.toFixed(0)}`).join(", ");
  return [
    {
      what: `growth from ${sizes[0]} to ${sizes.at(-1)} lines, text to findings, microseconds of processor per line`,
      result: `${shown}; the dearest is ${worst.toFixed(2)} × that of the shortest`,
      aim: "at most 2.5 ×",
      holds: worst <= 2.5,
    },
  ];
}
