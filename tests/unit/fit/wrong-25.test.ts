import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { catalogue } from "../../../language/fit/catalogue.ts";
import { fixAll } from "../../../language/fit/fix-all.ts";
import { differences, findingsOf, fixtureRoot, mainFile, parseFixture } from "../../support/carets.ts";

const text = readFileSync(fileURLToPath(new URL("../../fixtures/wrong-25.scant", import.meta.url)), "utf8");
const fixture = parseFixture("wrong-25", text);

describe("a file with twenty-five seeded mistakes", () => {
  test("has exactly those twenty-five findings, each where its carets are", () => {
    expect(fixture.besides).toEqual([]);
    expect(fixture.expected).toHaveLength(25);
    expect(differences(fixture)).toEqual([]);
  });

  test("shows as many kinds of mistake, of every severity", () => {
    const codes = new Set(fixture.expected.map(({ code }) => code));
    expect(codes.size).toBe(25);
    expect(new Set([...codes].map((code) => catalogue[code]?.severity))).toEqual(new Set(["error", "warning", "hint"]));
  });

  test("has fewer when all that is safe is fixed, and none that it had not", () => {
    const check = (changed: string) => findingsOf(new Map([[mainFile, changed]]));
    const before = check(fixture.files.get(mainFile)!);
    const fixed = fixAll(`${fixtureRoot}/${mainFile}`, fixture.files.get(mainFile)!, check);
    const after = check(fixed.text).map(({ code }) => code);
    expect(fixed.applied.map(({ code }) => code).sort()).toEqual([
      "box/too-wide",
      "slide/too-long",
      "statement/no-effect",
    ]);
    const known = before.map(({ code }) => code);
    expect(after.filter((code) => !known.includes(code))).toEqual([]);
    expect(after).toHaveLength(22);
  });
});
