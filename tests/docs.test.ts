import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import manifest from "../package.json" with { type: "json" };
import { limits } from "./support/said-limits.ts";

const root = fileURLToPath(new URL("..", import.meta.url));
const read = (path: string): string => readFileSync(join(root, path), "utf8");

const pages = ["DEVELOPERS.md", "README.md", "docs/architecture.md", "docs/trust.md"];

describe.each(pages)("%s", (page) => {
  const text = read(page);

  test("names no path that is not there", () => {
    const named = [
      ...text.matchAll(/`((?:language|server|extension|tests|scripts|docs|examples|schemas)\/[\w./-]*)`/g),
    ];
    const paths = named.map((match) => match[1]!);
    expect(paths.filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });

  test("names no script that is not there", () => {
    const named = [...text.matchAll(/npm run (?:--silent |-s )?([a-z0-9]+(?::[a-z0-9]+)*)/g)].map((match) => match[1]!);
    expect(named.filter((name) => !(name in manifest.scripts))).toEqual([]);
  });
});

describe("DEVELOPERS.md", () => {
  const text = read("DEVELOPERS.md");

  test("names every folder that the program is in", () => {
    const [, tree = ""] = /```\n(language\/[\s\S]*?)```/.exec(text) ?? [];
    const folders = (of: string): readonly string[] =>
      readdirSync(join(root, of), { withFileTypes: true })
        .filter((entry) => entry.isDirectory())
        .map(({ name }) => name);
    expect(folders("language").filter((name) => !tree.includes(`  ${name}/`))).toEqual([]);
    for (const name of ["language/", "server/", "extension/", "examples/", "docs/", "tests/"])
      expect(tree).toContain(name);
  });
});

test("docs/architecture.md says for each invariant what holds it", () => {
  const [, rows = ""] =
    /\| invariant \| why \| held by \|\n\|[-|]+\|\n((?:\|.*\n)+)/.exec(read("docs/architecture.md")) ?? [];
  const cells = rows
    .trim()
    .split("\n")
    .map((row) => row.split("|")[3] ?? "");
  expect(cells.length).toBeGreaterThan(10);
  for (const cell of cells) expect(cell).toMatch(/`tests\/[\w/.-]+\.ts`/);
});

describe("docs/trust.md", () => {
  const text = read("docs/trust.md");

  test("has a table of which each row names the command that makes it", () => {
    const [, made = ""] =
      /<!-- made by npm run trust: begin -->([\s\S]*?)<!-- made by npm run trust: end -->/.exec(text) ?? [];
    const rows = made.split("\n").filter((line) => line.startsWith("| ") && !line.startsWith("| group"));
    expect(rows.length).toBeGreaterThan(15);
    for (const row of rows) expect(row).toMatch(/\| `[^`]+` \|$/);
  });

  test.each(limits)("says the limit of $what as the program has it", ({ what, value, where }) => {
    expect(read(where.file)).toMatch(where.pattern);
    expect(text).toContain(`| ${what} | ${value} |`);
  });
});
