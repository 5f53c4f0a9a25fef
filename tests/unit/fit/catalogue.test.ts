import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import type { Finding } from "../../../language/core/finding.ts";
import { startOfFile } from "../../../language/core/span.ts";
import { catalogue, pageName } from "../../../language/fit/catalogue.ts";
import type { Check } from "../../../language/fit/check.ts";
import { checks, runChecks } from "../../../language/fit/index.ts";
import { createWorkspace } from "../../../language/service.ts";
import { findingPages } from "../../../scripts/findings-pages.ts";
import { findingsOf, fixtureFiles, fixtureRoot, mainFile, parseFixture } from "../../support/carets.ts";

const root = fileURLToPath(new URL("../../../", import.meta.url));
const folder = `${root}tests/fixtures/findings/`;
const shop = readFileSync(`${folder}shop.scant`, "utf8");
const fixtures = fixtureFiles(folder).map(({ name, text }) => parseFixture(name, text, shop));

/** Codes that are put together from a word, and so stand nowhere whole. */
const made = /^(box\/no-(slides|sides)|name\/unknown-(stock|slides|hinges|screws|opening))$/;

/** Every text in the sources that has the form of a code. */
function codesInSource(): ReadonlySet<string> {
  const files = readdirSync(`${root}language`, { recursive: true, encoding: "utf8" }).filter(
    (path) => path.endsWith(".ts") && !path.startsWith("generated") && !path.startsWith(join("fit", "catalogue")),
  );
  const families = new Set(Object.keys(catalogue).map((code) => code.split("/")[0]));
  const texts = files.flatMap((path) => [
    ...readFileSync(join(root, "language", path), "utf8").matchAll(/"([a-z]+\/[a-z]+(?:-[a-z]+)*)"/g),
  ]);
  return new Set(texts.map((match) => match[1]!).filter((code) => families.has(code.split("/")[0])));
}

describe("the catalogue", () => {
  test("has every code that stands in the sources", () => {
    expect([...codesInSource()].filter((code) => catalogue[code] === undefined)).toEqual([]);
  });

  test("has no code that nothing gives", () => {
    const given = codesInSource();
    expect(Object.keys(catalogue).filter((code) => !given.has(code) && !made.test(code))).toEqual([]);
  });

  test("has at least fifty codes that the checks of a derived design give", () => {
    const own = new Set(checks.flatMap((check) => check.codes));
    expect(50 <= own.size).toBe(true);
    expect([...own].filter((code) => catalogue[code] === undefined)).toEqual([]);
  });

  test("says each thing once, in a title and one sentence", () => {
    const rows = Object.values(catalogue);
    expect(new Set(rows.map((row) => row.title)).size).toBe(rows.length);
    expect(rows.filter((row) => !/^[A-Z].*\.$/.test(row.means) || row.title.endsWith("."))).toEqual([]);
  });

  test("has the severity that the findings have", () => {
    const wrong = fixtures
      .flatMap((fixture) => findingsOf(fixture.files))
      .filter(({ code, severity }) => catalogue[code]?.severity !== severity && catalogue[code]?.or !== severity);
    expect(wrong.map(({ code, severity }) => `${code}: ${severity}`)).toEqual([]);
  });
});

describe("the pages", () => {
  const pages = findingPages();
  const docs = `${root}docs/findings/`;

  test("are those that the catalogue and the fixtures make", () => {
    const stale = [...pages].filter(([name, text]) => readFileSync(`${docs}${name}`, "utf8") !== text);
    expect(stale.map(([name]) => name)).toEqual([]);
    expect(readdirSync(docs).filter((name) => !pages.has(name))).toEqual([]);
  });

  test("say why and what to do for every code", () => {
    const without = Object.keys(catalogue).filter(
      (code) => !/## Why\n\n\S[\s\S]*## What to do\n\n\S/.test(pages.get(pageName(code)) ?? ""),
    );
    expect(without).toEqual([]);
  });
});

describe("the checks", () => {
  const built = fixtures.map((fixture) => {
    const workspace = createWorkspace({ root: fixtureRoot });
    for (const [file, text] of fixture.files) workspace.set(`${fixtureRoot}/${file}`, text);
    return workspace.build(`${fixtureRoot}/${mainFile}`).derivation;
  });

  test("give no code that they do not declare, and each declared code somewhere", () => {
    const undeclared: string[] = [];
    const given = new Set<string>();
    for (const { context, model } of built)
      for (const check of checks)
        for (const { code } of check.run(context, model)) {
          given.add(code);
          if (!check.codes.includes(code)) undeclared.push(`${code} by the check for ${check.codes[0]}`);
        }
    expect(undeclared).toEqual([]);
    expect(checks.flatMap((check) => check.codes).filter((code) => !given.has(code))).toEqual([]);
  });

  test("declare each code once", () => {
    const codes = checks.flatMap((check) => check.codes);
    expect(codes.filter((code, index) => codes.indexOf(code) !== index)).toEqual([]);
  });

  test("stand when one of them fails, which is said at the head of the file", () => {
    const { context, model } = built[fixtures.findIndex(({ name }) => name === "slide/too-long")]!;
    const broken: Check = {
      codes: ["slide/too-long"],
      run: () => {
        throw new Error("out of wood");
      },
    };
    const codes = (findings: readonly Finding[]) => findings.map(({ code }) => code);
    const all = runChecks(context, model, [broken, ...checks]);
    expect(codes(all)).toEqual(["tool/check-failed", ...codes(runChecks(context, model))]);
    expect(all[0]).toMatchObject({ severity: "hint", span: { start: 0, end: 0 } });
    expect(all[0]!.message).toContain("out of wood");
  });
});

describe("a finding that several things share", () => {
  const text = [
    "inches",
    'use "shop.scant"',
    "opening a { wide 15  high 6  deep 23 }",
    "opening b { wide 16  high 6  deep 23 }",
    "box for a, b { sides ply  bottom thin under  slides runner  at 1 }",
  ].join("\n");

  test("is one finding at its place, and says how many there are", () => {
    const found = findingsOf(
      new Map([
        [mainFile, text.replace("at 1 }", "wide 20 }")],
        ["shop.scant", shop],
      ]),
    );
    expect(found.map(({ code }) => code)).toEqual(["box/too-wide"]);
    expect(found[0]!.message).toMatch(/"a" takes one 14 in wide; 1 more like it$/);
  });

  test("counts what is said otherwise and not what is said again, and keeps places and codes apart", () => {
    const { context, model } = builtWith(text).derivation;
    const at = (start: number, code: string, message: string): Finding => ({
      ...{ severity: "hint", reason: "", remedy: "", related: [], fixes: [] },
      ...{ code, message, span: { ...startOfFile(`${fixtureRoot}/${mainFile}`), start, end: start + 1 } },
    });
    const run = (...findings: readonly Finding[]) =>
      runChecks(context, model, [{ codes: ["a/b"], run: () => findings }]).map(({ message }) => message);
    expect(run(at(1, "a/b", "one"), at(1, "a/b", "one"))).toEqual(["one"]);
    expect(run(at(1, "a/b", "one"), at(1, "a/b", "two"), at(1, "a/b", "one"), at(1, "a/b", "two"))).toEqual([
      "one; 1 more like it",
    ]);
    expect(run(at(1, "a/b", "one"), at(1, "a/b", "two"), at(1, "a/b", "three"))).toEqual(["one; 2 more like it"]);
    expect(run(at(1, "a/b", "one"), at(2, "a/b", "one"), at(1, "a/c", "one"))).toEqual(["one", "one", "one"]);
  });
});

function builtWith(text: string) {
  const workspace = createWorkspace({ root: fixtureRoot });
  workspace.set(`${fixtureRoot}/${mainFile}`, text);
  workspace.set(`${fixtureRoot}/shop.scant`, shop);
  return workspace.build(`${fixtureRoot}/${mainFile}`);
}
