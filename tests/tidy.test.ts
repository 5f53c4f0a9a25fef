import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { createWorkspace } from "../language/service.ts";
import { inNoGroup } from "../scripts/mutate-groups.mjs";
import { usualSteps } from "../server/cli/search.ts";
import { cutListFiles } from "../server/cut-list-files.ts";

const root = fileURLToPath(new URL("..", import.meta.url));
const read = (path: string): string => readFileSync(join(root, path), "utf8");
const committed = execFileSync("git", ["ls-files"], { cwd: root, encoding: "utf8", maxBuffer: 1 << 26 })
  .split("\n")
  .filter((path) => path !== "" && existsSync(join(root, path)));
const sources = committed.filter((path) => /\.(ts|mts|mjs|js)$/.test(path));

interface Import {
  readonly from: string;
  /** A path from the root of the project, or the name of a package. */
  readonly to: string;
  readonly typeOnly: boolean;
}

const imports: readonly Import[] = sources.flatMap((from) => {
  const text = read(from);
  const statements = [...text.matchAll(/^(?:import|export)\s+(type\s+)?(?:[^"';]*?\sfrom\s+)?"([^"]+)"/gm)].map(
    (match) => ({
      typeOnly: match[1] !== undefined,
      path: match[2]!,
    }),
  );
  const calls = [...text.matchAll(/\bimport\(\s*"([^"]+)"\s*\)/g)].map((match) => ({
    typeOnly: false,
    path: match[1]!,
  }));
  return [...statements, ...calls].map(({ typeOnly, path }) => ({
    from,
    typeOnly,
    to: path.startsWith(".") ? normalize(join(dirname(from), path)).replaceAll("\\", "/") : path,
  }));
});

/** Imports of these files that are not allowed, each as `from -> to`. */
function breaches(under: (path: string) => boolean, allowed: (one: Import) => boolean): readonly string[] {
  return imports.filter((one) => under(one.from) && !allowed(one)).map(({ from, to }) => `${from} -> ${to}`);
}

const within =
  (...folders: string[]) =>
  (path: string): boolean =>
    folders.some((folder) => path === folder || path.startsWith(`${folder}/`));
const isPackage = (path: string): boolean => !committedOrNew(path);
const committedOrNew = (path: string): boolean =>
  /^(language|server|extension|tests|scripts|examples)\//.test(path) || path === "package.json";

describe("imports go one way", () => {
  test("core imports nothing but core, published nothing but published", () => {
    expect(breaches(within("language/core"), ({ to }) => within("language/core")(to))).toEqual([]);
    expect(breaches(within("language/published"), ({ to }) => within("language/published")(to))).toEqual([]);
  });

  // Each may import core, published, itself and what stands before it.
  const line = ["derive", "fit", "solid", "plan", "ascut", "draw", "view", "papers"].map(
    (folder) => `language/${folder}`,
  );
  test.each(line)("%s imports what stands before it in the line", (folder) => {
    const before = line.slice(0, line.indexOf(folder) + 1);
    const home = within("language/core", "language/published", ...before);
    // A page's square code is drawn by a small package without a dependency of its own.
    const packages = folder === "language/papers" ? ["qrcode-generator"] : [];
    expect(breaches(within(folder), ({ to }) => home(to) || packages.includes(to))).toEqual([]);
  });

  test("edit imports what the language is and what was made of it, and nothing imports edit but the server", () => {
    const home = within("language/edit", "language/syntax", "language/core", "language/published", "language/uses.ts");
    expect(breaches(within("language/edit"), ({ to }) => home(to) || within(...line)(to))).toEqual([]);
    const elsewhere = (path: string): boolean =>
      within("language", "extension")(path) && !within("language/edit")(path);
    expect(breaches(elsewhere, ({ to }) => !within("language/edit")(to))).toEqual([]);
  });

  test("only syntax knows langium, and what langium made", () => {
    const knows = within("language/syntax", "language/generated");
    const ours = (path: string): boolean =>
      path.startsWith("language/") || path.startsWith("server/") || path.startsWith("extension/");
    expect(
      breaches(
        (path) => ours(path) && !knows(path),
        ({ to }) => to !== "langium" && !to.startsWith("langium/") && !within("language/generated")(to),
      ),
    ).toEqual([]);
    expect(
      breaches(
        within("language/syntax"),
        ({ to }) => within("language/core", "language/syntax", "language/generated")(to) || to === "langium",
      ),
    ).toEqual([]);
  });

  test("the language runs anywhere: no node:, no editor, no language server, nothing of server or extension", () => {
    const packages = ["langium", "vscode-uri", "qrcode-generator"];
    expect(breaches(within("language"), ({ to }) => within("language")(to) || packages.includes(to))).toEqual([]);
  });

  test("the server asks the facade, its views and core", () => {
    const asked = within(
      "language/core",
      "language/edit",
      "language/view",
      "language/draw",
      "language/papers",
      "language/plan",
      "language/service.ts",
      "server",
    );
    expect(breaches(within("server"), ({ to }) => isPackage(to) || asked(to) || to === "package.json")).toEqual([]);
    expect(breaches(within("server"), ({ to }) => to !== "vscode" && !within("extension")(to))).toEqual([]);
  });

  test("only the mains and the command line of the server know Node", () => {
    const knows = within("server/main.ts", "server/cli");
    expect(
      breaches(
        (path) => within("server")(path) && !knows(path),
        ({ to }) => !to.startsWith("node:") && !to.endsWith("/node"),
      ),
    ).toEqual([]);
  });

  test("the extension knows the protocol, and of the language only the types of views", () => {
    const host = (path: string): boolean => within("extension")(path) && !within("extension/preview/webview")(path);
    expect(
      breaches(
        host,
        ({ to, typeOnly }) =>
          isPackage(to) ||
          within("extension", "server/protocol.ts")(to) ||
          (typeOnly && within("language/view", "language/draw")(to)),
      ),
    ).toEqual([]);
  });

  test("the page in the editor knows neither the editor nor Node nor langium", () => {
    const page = within("extension/preview/webview");
    expect(
      breaches(
        page,
        ({ to, typeOnly }) =>
          within("extension/preview")(to) || (typeOnly && within("language/view", "language/draw")(to)),
      ),
    ).toEqual([]);
  });

  test("relative imports carry their ending, and nothing gathers a folder's exports", () => {
    expect(
      imports
        .filter(({ to }) => committedOrNew(to) && !/\.(ts|mts|mjs|js|json|css)$/.test(to))
        .map(({ from, to }) => `${from} -> ${to}`),
    ).toEqual([]);
    expect(
      sources.filter((path) => !within("language/generated")(path) && /^export \* from/m.test(read(path))),
    ).toEqual([]);
  });

  test("what is imported is there", () => {
    expect(
      imports
        .filter(({ to }) => committedOrNew(to) && !existsSync(join(root, to)))
        .map(({ from, to }) => `${from} -> ${to}`),
    ).toEqual([]);
  });
});

describe("what is made from something else is fresh", () => {
  test("the parser's tables, from the grammar", { timeout: 120_000 }, () => {
    const folder = mkdtempSync(join(tmpdir(), "scantling-generated-"));
    try {
      const config = JSON.parse(read("langium-config.json")) as { languages: { grammar: string }[]; out: string };
      const languages = config.languages.map((language) => ({ ...language, grammar: join(root, language.grammar) }));
      writeFileSync(
        join(folder, "langium-config.json"),
        JSON.stringify({ ...config, languages, out: join(folder, "out") }),
      );
      const cli = join(root, "node_modules/langium-cli/bin/langium.js");
      execFileSync(process.execPath, [cli, "generate", "--file", join(folder, "langium-config.json")], {
        cwd: folder,
        stdio: "pipe",
      });
      const made = readdirSync(join(folder, "out"));
      expect(made.sort()).toEqual(readdirSync(join(root, "language/generated")).sort());
      for (const name of made)
        expect(
          readFileSync(join(folder, "out", name), "utf8") === read(`language/generated/${name}`),
          `${name}: npm run generate`,
        ).toBe(true);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });

  const examples = readdirSync(join(root, "examples")).filter((name) => name.endsWith(".scant"));
  const built = (name: string) => {
    const workspace = createWorkspace({ root: "file:///examples" });
    for (const other of examples) workspace.set(`file:///examples/${other}`, read(`examples/${other}`));
    return workspace.build(`file:///examples/${name}`);
  };
  const jobs = examples.filter((name) => 0 < built(name).derivation.model.parts.length);

  test("there are three jobs among the examples, each without an error", () => {
    expect(jobs.length).toBeGreaterThanOrEqual(3);
    for (const job of jobs)
      expect([
        job,
        built(job)
          .findings.filter(({ severity }) => severity === "error")
          .map(({ message }) => message),
      ]).toEqual([job, []]);
  });

  // To write them anew after a change that is meant: SCANTLING_WRITE=1 npx vitest run tests/tidy.test.ts
  test.each(jobs)("the cut lists beside %s", (job) => {
    for (const { name, text } of cutListFiles(built(job), ["csv", "markdown"])) {
      if (process.env["SCANTLING_WRITE"] === "1") writeFileSync(join(root, "examples", name), text);
      expect(existsSync(join(root, "examples", name)), `${name} is committed`).toBe(true);
      expect(read(`examples/${name}`)).toBe(text);
    }
  });

  const begun = jobs.filter((job) => built(job).asCut().isBegun);
  test("one of the examples is in the middle of its build", () => {
    expect(begun).toContain("potting-bench.scant");
  });

  test.each(begun)("the day's report beside %s", (job) => {
    const build = built(job);
    const name = job.replace(/\.scant$/, ".day.txt");
    const text = build.dayText(build.day({ steps: usualSteps }));
    if (process.env["SCANTLING_WRITE"] === "1") writeFileSync(join(root, "examples", name), text);
    expect(existsSync(join(root, "examples", name)), `${name} is committed`).toBe(true);
    expect(read(`examples/${name}`)).toBe(text);
    for (const line of text.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
  });

  const documents = committed.filter((path) => path === "README.md" || /^docs\/[^/]+\.md$/.test(path));
  test.each(documents)("the build files in %s can be read", (path) => {
    const blocks = [...read(path).matchAll(/^```scant\n([\s\S]*?)^```/gm)].map((match) => match[1]!);
    for (const block of blocks) {
      const workspace = createWorkspace({ root: "file:///examples" });
      for (const other of examples) workspace.set(`file:///examples/${other}`, read(`examples/${other}`));
      workspace.set("file:///examples/block.scant", block);
      const errors = workspace
        .build("file:///examples/block.scant")
        .findings.filter(({ severity }) => severity === "error");
      expect(errors.map(({ span, message }) => `${span.line + 1}: ${message}`)).toEqual([]);
    }
  });

  test("the README shows a build file", () => {
    expect(read("README.md")).toContain("```scant\n");
  });
});

describe("what is committed", () => {
  const texts = committed.filter(
    (path) => !/\.(png|ico|woff2?|ttf|otf|pdf|vsix)$/.test(path) && path !== "package-lock.json",
  );
  const lines = (pattern: RegExp, paths: readonly string[]): readonly string[] =>
    paths.flatMap((path) =>
      read(path)
        .split("\n")
        .flatMap((line, index) => (pattern.test(line) ? [`${path}:${index + 1}: ${line.trim().slice(0, 80)}`] : [])),
    );
  const here = "tests/tidy.test.ts";

  test("spreads no place: what it says it works out, and a copy would not move with its piece of text", () => {
    const spread = /\.\.\.[\w.!?]*span\b(?!\()/i;
    const lines = sources
      .filter((path) => /^(language|server|extension)\//.test(path) && path !== "language/core/span.ts")
      .flatMap((path) =>
        read(path)
          .split("\n")
          .flatMap((line, at) => (spread.test(line) ? [`${path}:${at + 1}`] : [])),
      );
    expect(lines).toEqual([]);
  });

  test("holds nothing that is put off", () => {
    expect(
      lines(
        /\b(TODO|FIXME|XXX|HACK)\b/,
        texts.filter((path) => path !== here),
      ),
    ).toEqual([]);
  });

  test("has each file of the core, of derivation and of fits in a group whose tests are tested", () => {
    expect(inNoGroup(root)).toEqual([]);
  });

  test("holds no test that is left out or run alone", () => {
    const tests = sources.filter((path) => path.endsWith(".test.ts") && path !== here);
    expect(lines(/\b(test|it|describe)\.(only|skip|todo|fails)\b|\bfdescribe\b|\bxit\b/, tests)).toEqual([]);
  });

  test("holds no path of the machine that it was made on", () => {
    expect(
      lines(
        /(^|[\s"'`(=])\/(work|tmp|Users|root)\//,
        texts.filter((path) => path !== here),
      ),
    ).toEqual([]);
  });

  test("holds no unfinished merge", () => {
    const kept = texts.filter((path) => !path.startsWith("tests/unit/syntax/"));
    expect(lines(/^(<{7} |>{7} |={7}$)/, kept)).toEqual([]);
  });
});
