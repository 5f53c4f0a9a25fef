import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Ajv } from "ajv";
import type { Log } from "sarif";
import { describe, expect, test } from "vitest";
import { shop } from "./shop.ts";

/** The schema that OASIS published with SARIF 2.1.0, as a package carries it. */
const schemaFile = createRequire(import.meta.url).resolve("@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json");
const { $schema: _draft4, ...schema } = JSON.parse(
  readFileSync(schemaFile, "utf8").replaceAll('"id": "http', '"$id": "http'),
);
const validate = new Ajv({ strict: false, validateFormats: false, unicodeRegExp: false }).compile(schema);

const wrong = readFileSync(new URL("../fixtures/wrong-25.scant", import.meta.url), "utf8");

describe("check --sarif", () => {
  test("is SARIF 2.1.0 by its published schema, for many findings and for none", async () => {
    for (const text of [wrong, "inches\n", "box for {"]) {
      const { out } = await shop({ "a b.scant": text }).run("check", "--sarif", "a b.scant");
      const log = JSON.parse(out);
      expect(validate(log), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
    }
  });

  test("the schema refuses what is no SARIF", async () => {
    const { out } = await shop({ "a.scant": wrong }).run("check", "--sarif", "a.scant");
    const log = JSON.parse(out);
    expect(validate({ ...log, version: "2.0.0" })).toBe(false);
    expect(validate({ ...log, runs: [{}] })).toBe(false);
  });

  test("says what the text form says, at the same places", async () => {
    const files = { "a.scant": wrong };
    const json = JSON.parse((await shop(files).run("check", "--json", "a.scant")).out);
    const log: Log = JSON.parse((await shop(files).run("check", "--sarif", "a.scant")).out);
    const results = log.runs[0]?.results ?? [];
    expect(results.map((one) => [one.ruleId, one.locations?.[0]?.physicalLocation?.region?.startLine])).toEqual(
      json.files[0].findings.map((one: { code: string; line: number }) => [one.code, one.line]),
    );
    const rules = log.runs[0]?.tool.driver.rules ?? [];
    for (const one of results) expect(rules[one.ruleIndex ?? -1]?.id).toBe(one.ruleId);
    expect(rules.every((rule) => (rule.shortDescription?.text.length ?? 0) > 0)).toBe(true);
  });

  test("asks for one form at a time", async () => {
    const { code, err } = await shop({ "a.scant": wrong }).run("check", "--json", "--sarif", "a.scant");
    expect(code).toBe(2);
    expect(err).toContain("different things");
  });
});

const tooLong = `inches
sheet ply { called 3/4  measures 45/64  size 48 x 96 }
slides runner {
  mount side  extension full  lengths 10 to 28 by 2
  clearance 1/2  above 1/4  below 1/4  behind 1/2  carries 100 lb
}
opening bay { wide 15 1/2  high 6  deep 23 1/2 }
box for bay { sides ply  bottom ply under  corners screws  slides runner 24  holds 10 lb }
`;

describe("check --fix", () => {
  test("writes what is clear, says what it did, and checks what is left", async () => {
    const world = shop({ "a.scant": tooLong });
    const { code, out, err } = await world.run("check", "--fix", "a.scant");
    expect(world.written.get("/shop/a.scant")).toBe(tooLong.replace("runner 24", "runner 22"));
    expect(err).toContain("slide/too-long");
    expect(out).not.toContain("slide/too-long");
    expect(code).toBe(0);
  });

  test("writes nothing where nothing is clear, and nothing over the standard input", async () => {
    const world = shop({ "a.scant": tooLong.replace("runner 24", "runner") }, { stdin: tooLong });
    expect((await world.run("check", "--fix", "a.scant")).code).toBe(0);
    expect(world.written.size).toBe(0);
    expect((await world.run("check", "--fix", "-")).code).toBe(2);
  });

  test("says why it could not write, and still tells what is wrong", async () => {
    const world = shop({ "a.scant": tooLong }, { protectedBy: "may not be written" });
    const { code, out, err } = await world.run("check", "--fix", "a.scant");
    expect(code).toBe(2);
    expect(err).toContain("may not be written");
    expect(out).toContain("slide/too-long");
  });
});
