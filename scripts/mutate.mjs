/**
 * npm run mutate [-- NAME ...] [--sample N] [--seed N]: changes the program in small ways, one at a time, and tells which
 * changes no test notices.
 * NAMEs are groups below, or `derive`, `fit`, `all`; without one, `core`. It takes half a second to a second and a half for
 * a change, and a group has 150 to 1,500: `--sample N` takes at most so many of each group, by a seed that is printed.
 * What no test noticed is printed, and kept in .cache/mutate-left/. `--json` prints rows for docs/trust.md.
 *
 * Stryker is installed into a copy of the project under .cache/, and not with the project: it brings some two hundred
 * packages that nobody needs who does not run this.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { groups, inNoGroup } from "./mutate-groups.mjs";

const version = "10.1.1";

const several = {
  derive: ["rules", "boxes", "cases", "fronts", "numbers", "islands"],
  fit: ["fit-boxes", "fit-fronts", "fit-rest", "fixes"],
  all: Object.keys(groups),
};

const root = fileURLToPath(new URL("..", import.meta.url));
const copy = join(root, ".cache/mutate");
/** What no test noticed, a file for each group. */
const told = join(root, ".cache/mutate-left");
const { values: flags, positionals } = parseArgs({
  allowPositionals: true,
  options: { json: { type: "boolean" }, sample: { type: "string" }, seed: { type: "string" } },
});
const asked = [
  ...new Set((positionals.length === 0 ? ["core"] : positionals).flatMap((name) => several[name] ?? name)),
];
const unknown = asked.filter((name) => !(name in groups));
if (0 < unknown.length) stop(`There is no group ${unknown.join(", ")}; there are ${allNames().join(", ")}.`);
for (const name of ["sample", "seed"]) {
  if (flags[name] !== undefined && !/^[0-9]+$/.test(flags[name])) stop(`--${name} takes a whole number.`);
}
const outside = inNoGroup(root);
if (0 < outside.length) stop(`In no group: ${outside.join(", ")}.`);
const seed = flags.seed ?? "2026";

prepare();
const rows = asked.map(runGroup);
if (flags.json) console.log(JSON.stringify(rows));
else for (const { what, result } of rows) console.log(`${what}: ${result}`);
if (rows.some(({ result }) => result === "failed")) process.exitCode = 1;

function allNames() {
  return [...Object.keys(groups), ...Object.keys(several)];
}

function stop(why) {
  console.error(why);
  process.exit(1);
}

/** Files of the three folders that nothing would change: a new file must join a group. */

/** Copies the project as it stands, and what is installed when that has changed. */
function prepare() {
  mkdirSync(copy, { recursive: true });
  const lock = readFileSync(join(root, "package-lock.json"), "utf8");
  const kept = join(copy, "package-lock.json");
  const installed = existsSync(kept) && readFileSync(kept, "utf8") === lock;
  const ready = installed && existsSync(join(copy, "node_modules/@stryker-mutator/vitest-runner"));
  for (const name of readdirSync(copy)) {
    if (name !== "node_modules" || !ready) rmSync(join(copy, name), { recursive: true, force: true });
  }
  const listed = execFileSync("git", ["ls-files", "--cached", "--others", "--exclude-standard"], { cwd: root });
  for (const path of listed.toString().split("\n")) {
    if (path === "" || !existsSync(join(root, path))) continue;
    mkdirSync(dirname(join(copy, path)), { recursive: true });
    cpSync(join(root, path), join(copy, path));
  }
  if (ready) return;
  cpSync(join(root, "node_modules"), join(copy, "node_modules"), { recursive: true, verbatimSymlinks: true });
  const packages = ["core", "vitest-runner"].map((name) => `@stryker-mutator/${name}@${version}`);
  execFileSync("npm", ["install", "--no-save", "--no-audit", "--no-fund", "--ignore-scripts", ...packages], {
    cwd: copy,
    stdio: ["ignore", "ignore", "inherit"],
  });
}

function runGroup(name) {
  const { mutate, tests } = groups[name];
  const report = join(copy, "reports/mutation/mutation.json");
  rmSync(report, { force: true });
  writeFileSync(
    join(copy, "vitest.mutate.config.ts"),
    `import { defineConfig } from "vitest/config";\nexport default defineConfig({ test: ${JSON.stringify({
      include: tests,
      // The parser is made once for all files of tests, not anew for each.
      isolate: false,
      testTimeout: 30_000,
    })} });\n`,
  );
  writeFileSync(
    join(copy, "stryker.config.json"),
    JSON.stringify({
      testRunner: "vitest",
      plugins: ["@stryker-mutator/vitest-runner", "./scripts/mutate-sample.mjs"],
      vitest: { configFile: "vitest.mutate.config.ts", related: false },
      mutate,
      concurrency: 1,
      coverageAnalysis: "perTest",
      ...(flags.sample === undefined ? {} : { checkers: ["sample"] }),
      // What is made once when a file is loaded would have every test run again for each change.
      ignoreStatic: true,
      // It rewrites tsconfig.json by an interface that TypeScript 7 no longer has, and nothing here needs that.
      tsconfigFile: "none.json",
      reporters: ["progress-append-only", "json"],
      timeoutMS: 20_000,
    }),
  );
  const { status } = spawnSync(process.execPath, ["node_modules/@stryker-mutator/core/bin/stryker.js", "run"], {
    cwd: copy,
    env: { ...process.env, SCANTLING_MUTATE_SAMPLE: flags.sample ?? "", SCANTLING_MUTATE_SEED: seed },
    stdio: ["ignore", flags.json ? 2 : 1, 2],
  });
  if (status !== 0 || !existsSync(report)) {
    return { what: `changes that tests notice in ${name}`, result: "failed", aim: "runs", holds: false };
  }
  const { files } = JSON.parse(readFileSync(report, "utf8"));
  const lines = Object.entries(files)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .flatMap(([path, file]) => linesOf(path, file));
  mkdirSync(told, { recursive: true });
  writeFileSync(join(told, `${name}.txt`), `${lines.join("\n")}\n`);
  // `--json` keeps the other for its rows.
  console.error(lines.join("\n"));
  return rowOf(name, files);
}

/** A file's score, and each change of it that nothing noticed. */
function linesOf(path, { source, mutants }) {
  const { noticed, all } = counts(mutants);
  const left = mutants.filter(({ status }) => ["Survived", "NoCoverage", "RuntimeError"].includes(status));
  const changes = left.map(({ location, status, mutatorName, replacement }) => {
    const { line, column } = location.start;
    return `  ${line}:${column} ${status} ${mutatorName}: ${short(textAt(source, location))} => ${short(replacement)}`;
  });
  return all === 0 ? [] : [`${path}: ${noticed} of ${all}`, ...changes];
}

function textAt(source, { start, end }) {
  const lines = source.split("\n").slice(start.line - 1, end.line);
  lines[lines.length - 1] = lines.at(-1).slice(0, end.column - 1);
  lines[0] = lines[0].slice(start.column - 1);
  return lines.join("\n");
}

function short(text) {
  const line = text.replace(/\s+/g, " ");
  return line.length <= 90 ? line : `${line.slice(0, 60)} ... ${line.slice(-25)}`;
}

function rowOf(name, files) {
  const mutants = Object.values(files).flatMap((file) => file.mutants);
  const { noticed, all, unasked, still } = counts(mutants);
  const share = (100 * noticed) / all;
  const sampled = 0 < unasked ? `, a sample of ${all + unasked} with seed ${seed}` : "";
  return {
    what: `changes that tests notice in ${name}: ${placeOf(files)}`,
    result: `${noticed} of ${all}: ${share.toFixed(0)} %${sampled}; ${still} in what is made once on loading are not tried`,
    aim: "at least 80 %",
    holds: 80 <= share,
  };
}

/** `14 files of language/derive`. */
function placeOf(files) {
  const paths = Object.keys(files);
  const folders = new Set(paths.map((path) => path.split("/").slice(0, 2).join("/")));
  return `${paths.length} files of ${[...folders].join(", ")}`;
}

function counts(mutants) {
  const count = (...states) => mutants.filter(({ status }) => states.includes(status)).length;
  const noticed = count("Killed", "Timeout");
  return {
    noticed,
    all: noticed + count("Survived", "NoCoverage", "RuntimeError"),
    unasked: count("CompileError"),
    still: count("Ignored"),
  };
}
