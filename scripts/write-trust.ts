/**
 * npm run trust: runs the benches and the tests behind docs/trust.md and writes its table. Nothing in the table is by
 * hand. `-- --quick` takes each bench at its smallest and changes no file; `-- --only NAME` runs one group and keeps the
 * rows of the others.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { availableParallelism, cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Row } from "../tests/bench/trust/row.ts";

const root = fileURLToPath(new URL("..", import.meta.url));
const page = `${root}docs/trust.md`;
const quick = process.argv.includes("--quick");
const only = process.argv.includes("--only") ? process.argv[process.argv.indexOf("--only") + 1] : undefined;

interface Group {
  readonly name: string;
  /** The command that makes the rows; what the table shows. */
  readonly command: string;
  readonly rows: () => readonly Row[];
}

const groups: readonly Group[] = [
  {
    name: "fuzz",
    command: "SCANTLING_SEED=random npx vitest run tests/fuzz",
    rows: () => testRows("tests/fuzz", { SCANTLING_SEED: "random", ...(quick ? { SCANTLING_CASES: "200" } : {}) }),
  },
  {
    name: "keys",
    command: "SCANTLING_KEYS=1 npx vitest run tests/fuzz/keystrokes.test.ts",
    rows: () => testRows("tests/fuzz/keystrokes.test.ts", quick ? {} : { SCANTLING_KEYS: "1" }),
  },
  bench("latency", "node tests/bench/trust/latency.ts"),
  bench("memory", "node --expose-gc tests/bench/trust/memory.ts"),
  // Needs the editor and a browser, which it sets up: minutes the first time, so that the quick look leaves it out.
  {
    name: "rod",
    command: "npm run bench:rod",
    rows: () => (quick ? [] : rowsOf("rod", ["tests/bench/rod.ts", "--json"])),
  },
  bench("scale", "node tests/bench/trust/scale.ts"),
  {
    name: "limits",
    command: "npx vitest run tests/unit/syntax/adversarial.test.ts",
    rows: () => testRows("tests/unit/syntax/adversarial.test.ts", {}),
  },
  {
    name: "files",
    command:
      "npx vitest run tests/server/export-safety.test.ts tests/server/write-files.test.ts tests/unit/service/use-outside.test.ts",
    rows: () =>
      [
        "tests/server/export-safety.test.ts",
        "tests/server/write-files.test.ts",
        "tests/unit/service/use-outside.test.ts",
      ].flatMap((path) => testRows(path, {})),
  },
  { name: "supply", command: "npx vitest run tests/supply.test.ts; npm audit --omit=dev", rows: supplyRows },
  {
    // A quarter of an hour for a sample, two hours for all: only when it is asked for by name.
    name: "mutation",
    command: "npm run mutate -- all --sample 100 --seed 2",
    rows: () =>
      only === "mutation" && !quick
        ? rowsOf("mutation", ["scripts/mutate.mjs", "all", "--sample", "100", "--seed", "2", "--json"])
        : [],
  },
];

const begin = "<!-- made by npm run trust: begin -->";
const end = "<!-- made by npm run trust: end -->";

const made = new Map<Group, readonly string[]>();
for (const group of groups) {
  if ((only === undefined && group.name === "mutation") || (only !== undefined && only !== group.name)) continue;
  console.log(`${group.name}: ${group.command}`);
  const rows = group.rows();
  for (const { what, result, holds } of rows) console.log(`  ${what}: ${result}${holds === false ? "  NOT MET" : ""}`);
  // A figure that is missed is shown; a bench that does not run is broken.
  if (rows.some(({ aim, holds }) => aim === "runs" && holds === false)) process.exitCode = 1;
  made.set(
    group,
    rows.map((row) => lineOf(row, group)),
  );
}
// Read only now: another run may have written its rows meanwhile.
const before = existsSync(page) ? readFileSync(page, "utf8") : "";
if (!quick) writeFileSync(page, pageWith(groups.flatMap((group) => made.get(group) ?? keptLines(group))));

function bench(name: string, command: string): Group {
  return {
    name,
    command,
    rows: () => rowsOf(name, [...command.split(" ").slice(1), "--json", ...(quick ? ["--smoke"] : [])]),
  };
}

/** What a program prints with `--json`. */
function rowsOf(name: string, words: readonly string[]): readonly Row[] {
  const { stdout, stderr } = spawnSync(process.execPath, words, { cwd: root, encoding: "utf8", maxBuffer: 1 << 28 });
  const last = stdout.trim().split("\n").at(-1) ?? "";
  return last.startsWith("[") ? (JSON.parse(last) as readonly Row[]) : [failed(name, stderr)];
}

function failed(what: string, said: string): Row {
  return { what, result: `failed: ${said.trim().split("\n")[0] ?? ""}`, aim: "runs", holds: false };
}

interface Reported {
  readonly testResults: readonly {
    readonly assertionResults: readonly {
      readonly fullName: string;
      readonly status: string;
      readonly duration?: number;
    }[];
  }[];
}

/** One row for each test that says in its name what it did so many of; the others of a path are counted in one. */
function testRows(path: string, env: Readonly<Record<string, string>>): readonly Row[] {
  const folder = mkdtempSync(join(tmpdir(), "scantling-trust-"));
  const report = join(folder, "report.json");
  const words = ["node_modules/vitest/vitest.mjs", "run", path, "--reporter=json", `--outputFile=${report}`];
  const { stderr } = spawnSync(process.execPath, words, {
    cwd: root,
    encoding: "utf8",
    env: { ...process.env, ...env },
    maxBuffer: 1 << 28,
  });
  const json = existsSync(report) ? readFileSync(report, "utf8") : undefined;
  rmSync(folder, { recursive: true, force: true });
  if (json === undefined) return [failed(path, stderr)];
  const tests = (JSON.parse(json) as Reported).testResults.flatMap(({ assertionResults }) => assertionResults);
  const counted = tests.filter(({ fullName }) => /seed \d+|\d+ (times|keys)/.test(fullName));
  const others = tests.filter((one) => !counted.includes(one));
  const passed = others.filter(({ status }) => status === "passed").length;
  const missed = others.filter(({ status }) => status !== "passed").map(({ fullName }) => fullName.trim());
  return [
    ...counted.map(({ fullName, status, duration }) => ({
      what: fullName.trim(),
      result: `${status} in ${((duration ?? 0) / 1000).toFixed(0)} s`,
      aim: "passes",
      holds: status === "passed",
    })),
    ...(others.length === 0
      ? []
      : [
          {
            what: `${counted.length === 0 ? "" : "other "}tests in ${path}`,
            result: `${passed} of ${others.length} pass${missed.length === 0 ? "" : `; not: ${missed.join("; ")}`}`,
            aim: "all pass",
            holds: passed === others.length,
          },
        ]),
  ];
}

function supplyRows(): readonly Row[] {
  const { stdout } = spawnSync("npm", ["audit", "--omit=dev", "--json"], {
    cwd: root,
    encoding: "utf8",
    timeout: 60_000,
  });
  return [...testRows("tests/supply.test.ts", {}), auditRow(stdout)];
}

function auditRow(said: string): Row {
  const what = "known weaknesses in what users run, by `npm audit`";
  try {
    const { metadata } = JSON.parse(said) as { metadata?: { vulnerabilities?: { total?: number } } };
    const total = metadata?.vulnerabilities?.total;
    if (total !== undefined) return { what, result: String(total), aim: "0", holds: total === 0 };
  } catch {
    // Said below.
  }
  return { what, result: "not known: the registry that was asked does not answer this", aim: "0", holds: undefined };
}

function lineOf({ what, result, aim, holds }: Row, { name, command }: Group): string {
  const cells = [name, what, `${result}${holds === false ? " **not met**" : ""}`, aim, `\`${command}\``];
  return `| ${cells.map((cell) => cell.replaceAll("|", "\\|").replaceAll("\n", " ")).join(" | ")} |`;
}

function keptLines({ name }: Group): readonly string[] {
  return before.split("\n").filter((line) => line.startsWith(`| ${name} |`));
}

/** The page with its table; what stands before and behind that is written by hand and kept. */
function pageWith(lines: readonly string[]): string {
  const [head = "# Trust\n\n", rest = ""] = before.includes(begin) ? before.split(begin) : [before];
  const tail = rest.includes(end) ? rest.split(end)[1]! : "\n";
  const model = cpus()[0]?.model.trim() ?? "unknown processor";
  const load = loadavg()[0]!.toFixed(1);
  const run = `Taken on Node ${process.version}, ${availableParallelism()} cores (${model}), load ${load} at the end of the run (${availableParallelism()} would keep it fully busy).`;
  const table = ["| group | what | result | aim | command |", "|---|---|---|---|---|", ...lines].join("\n");
  return `${head}${begin}\n${run}\n\n${table}\n${end}${tail}`;
}
