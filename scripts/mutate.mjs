/**
 * npm run mutate [-- NAME ...]: changes the program in small ways, one at a time, and tells which changes no test notices.
 * NAMEs are groups below; without one, `core`. It takes minutes, one change after another.
 *
 * Stryker is installed into a copy of the project under .cache/, and not with the project: it brings some two hundred
 * packages that nobody needs who does not run this. `--json` prints rows for docs/trust.md.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const version = "10.1.1";

/** What is changed, and the tests that should notice. */
const groups = {
  core: { mutate: ["language/core/rational.ts", "language/core/length.ts"], tests: ["tests/unit/core/*.test.ts"] },
  interval: { mutate: ["language/core/interval.ts", "language/core/sourced.ts"], tests: ["tests/unit/core/*.test.ts"] },
  rules: { mutate: ["language/derive/rules/*.ts"], tests: ["tests/unit/derive/*.test.ts"] },
  fit: {
    mutate: ["language/fit/box/*.ts", "language/fit/slide/too-long.ts", "language/fit/slide/uses-the-depth.ts"],
    tests: ["tests/unit/service/findings.test.ts", "tests/unit/fit/*.test.ts"],
  },
};

const root = fileURLToPath(new URL("..", import.meta.url));
const copy = join(root, ".cache/mutate");
const asJson = process.argv.includes("--json");
const asked = process.argv.slice(2).filter((word) => !word.startsWith("--"));
const unknown = asked.filter((name) => !(name in groups));
if (0 < unknown.length) {
  console.error(`There is no group ${unknown.join(", ")}; there are ${Object.keys(groups).join(", ")}.`);
  process.exit(1);
}

prepare();
const rows = (asked.length === 0 ? ["core"] : asked).map(runGroup);
if (asJson) console.log(JSON.stringify(rows));
else for (const { what, result } of rows) console.log(`${what}: ${result}`);

/** Copies what is committed, and what is installed once. */
function prepare() {
  mkdirSync(copy, { recursive: true });
  for (const path of execFileSync("git", ["ls-files"], { cwd: root, encoding: "utf8" }).split("\n")) {
    if (path === "" || !existsSync(join(root, path))) continue;
    mkdirSync(dirname(join(copy, path)), { recursive: true });
    cpSync(join(root, path), join(copy, path));
  }
  if (existsSync(join(copy, "node_modules/@stryker-mutator/core"))) return;
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
    `import { defineConfig } from "vitest/config";\nexport default defineConfig({ test: { include: ${JSON.stringify(tests)}, testTimeout: 30_000 } });\n`,
  );
  writeFileSync(
    join(copy, "stryker.config.json"),
    JSON.stringify({
      testRunner: "vitest",
      plugins: ["@stryker-mutator/vitest-runner"],
      vitest: { configFile: "vitest.mutate.config.ts", related: false },
      mutate,
      concurrency: 1,
      coverageAnalysis: "perTest",
      // What is made once when a file is loaded would have every test run again for each change.
      ignoreStatic: true,
      // It rewrites tsconfig.json by an interface that TypeScript 7 no longer has, and nothing here needs that.
      tsconfigFile: "none.json",
      reporters: ["clear-text", "json"],
      clearTextReporter: { allowColor: false, reportTests: false },
      timeoutMS: 20_000,
    }),
  );
  const { status } = spawnSync("npx", ["stryker", "run"], { cwd: copy, stdio: ["ignore", asJson ? 2 : 1, 2] });
  if (status !== 0 || !existsSync(report)) {
    return { what: `changes that tests notice in ${name}`, result: "failed", aim: "runs", holds: false };
  }
  const { files } = JSON.parse(readFileSync(report, "utf8"));
  const mutants = Object.values(files).flatMap((file) => file.mutants);
  const count = (...states) => mutants.filter((mutant) => states.includes(mutant.status)).length;
  const noticed = count("Killed", "Timeout");
  const all = noticed + count("Survived", "NoCoverage");
  const share = (100 * noticed) / all;
  return {
    what: `changes that tests notice in ${mutate.join(", ")}`,
    result: `${noticed} of ${all}: ${share.toFixed(0)} %`,
    aim: "at least 80 %",
    holds: 80 <= share,
  };
}
