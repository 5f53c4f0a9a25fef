import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { fixtureFiles } from "../../support/carets.ts";

const fixtures = fixtureFiles(fileURLToPath(new URL("../../fixtures/findings/", import.meta.url)));

describe("the codes", () => {
  /** Codes that no build file of a sensible size can show; each has a test of its own. */
  const elsewhere = new Set([
    "tool/check-failed",
    "syntax/too-long",
    "use/too-many",
    "length/broken",
    "length/too-far",
    "syntax/too-much",
  ]);

  test("each has a fixture of its name", () => {
    const named = new Set(fixtures.map(({ name }) => name));
    expect(codesInSource().filter((code) => !named.has(code) && !elsewhere.has(code))).toEqual([]);
  });

  test("each fixture is for a code that there is", () => {
    const codes = new Set(codesInSource());
    expect(fixtures.filter(({ name }) => !codes.has(name)).map(({ name }) => name)).toEqual([]);
  });
});

/** Every finding code that stands in the sources of the language. */
function codesInSource(): readonly string[] {
  const language = fileURLToPath(new URL("../../../language/", import.meta.url));
  const files = readdirSync(language, { recursive: true, encoding: "utf8" }).filter((path) => path.endsWith(".ts"));
  const codes = files
    .filter((path) => !path.includes("generated"))
    .flatMap((path) => [...readFileSync(join(language, path), "utf8").matchAll(/\bcode(?:s: \[|: )([^;\n]*)/g)])
    .flatMap((match) => [...match[1]!.matchAll(/"([a-z-]+\/[a-z-]+)"/g)].map((code) => code[1]!));
  // Codes that are put together from a word of the file.
  const made = [
    "box/no-slides",
    "box/no-sides",
    ...["stock", "slides", "hinges", "screws", "opening"].map((kind) => `name/unknown-${kind}`),
  ];
  return [...new Set([...codes, ...made])].sort();
}
