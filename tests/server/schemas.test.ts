import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { Ajv2020 } from "ajv/dist/2020.js";
import { expect, test } from "vitest";
import { shop } from "./shop.ts";
import { fits, job, rack, tooLong } from "./texts.ts";

const list = readSchema("list-1");
const check = readSchema("check-1");
const ajv = new Ajv2020({ allErrors: true });
ajv.addSchema(list);

const example = (name: string): string =>
  readFileSync(fileURLToPath(new URL(`../../examples/${name}`, import.meta.url)), "utf8");
const files = {
  "fits.scant": fits,
  "long.scant": tooLong,
  "job.scant": job,
  "empty.scant": "",
  "broken.scant": `${tooLong}box for }{ "\nsheet`,
  "rack.scant": example("rack.scant"),
  "print-room.scant": example("print-room.scant"),
  "seed-store.scant": example("seed-store.scant"),
  "sewing-room.scant": example("sewing-room.scant"),
};

test.each(Object.keys(files))("what list --json prints of %s is as its schema says", async (name) => {
  const { out } = await shop(files).run("list", "--json", name);
  const isValid = ajv.getSchema("urn:scantling:schema:list:1");
  isValid?.(JSON.parse(out));
  expect(isValid?.errors ?? []).toEqual([]);
});

test("what check --json prints is as its schema says", async () => {
  const { out } = await shop({ ...files, "rack.scant": rack }).run("check", "--json", ...Object.keys(files));
  const isValid = ajv.compile(check);
  isValid(JSON.parse(out));
  expect(isValid.errors ?? []).toEqual([]);
  expect(JSON.parse(out).errors).toBeGreaterThan(0);
});

test("the schemas refuse what they do not describe", () => {
  const isList = ajv.getSchema("urn:scantling:schema:list:1");
  const least = { schema: "scantling/list/1", project: "", units: "inches", parts: [], findings: [] };
  expect(isList?.(least)).toBe(true);
  expect(isList?.({ ...least, units: "feet" })).toBe(false);
  expect(isList?.({ ...least, schema: "scantling/list/2" })).toBe(false);
  expect(isList?.({ ...least, parts: [{ name: "side" }] })).toBe(false);
});

test("every property of a schema is described, by itself or by what it refers to", () => {
  for (const schema of [list, check]) expect(undescribed(schema, "")).toEqual([]);
});

function readSchema(name: string): Record<string, unknown> {
  return JSON.parse(readFileSync(fileURLToPath(new URL(`../../schemas/${name}.schema.json`, import.meta.url)), "utf8"));
}

/** The paths of properties that say nothing: constants, references, numbers and lists of described things speak for themselves. */
function undescribed(schema: unknown, path: string): readonly string[] {
  if (typeof schema !== "object" || schema === null) return [];
  const { properties = {}, $defs = {}, items } = schema as Record<string, Record<string, object>>;
  const own = Object.entries(properties).flatMap(([name, property]) => {
    const speaks = ["description", "$ref", "const", "items", "minimum"].some((key) => key in property);
    return [...(speaks ? [] : [`${path}/${name}`]), ...undescribed(property, `${path}/${name}`)];
  });
  const inner = Object.entries($defs).flatMap(([name, definition]) => undescribed(definition, `${path}/${name}`));
  return [...own, ...inner, ...undescribed(items, `${path}/items`)];
}
