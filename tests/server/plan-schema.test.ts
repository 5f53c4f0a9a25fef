import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { createWorkspace } from "../../language/service.ts";

const schema = JSON.parse(readFileSync(new URL("../../schemas/plan-1.schema.json", import.meta.url), "utf8"));
const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(schema);

describe("scantling/plan/1", () => {
  test.each(["print-room", "seed-store", "sewing-room"])("%s validates", (name) => {
    const document = planOf(name);
    expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
    expect(document.steps.length).toBeGreaterThan(10);
  });

  test("what is missing or too much does not", () => {
    const { steps: _steps, ...without } = planOf("seed-store");
    expect(validate(without)).toBe(false);
    expect(validate({ ...planOf("seed-store"), colour: "blue" })).toBe(false);
  });

  test("every piece of the cut list has its place, and each sheet is as large as its parts", () => {
    const workspace = workspaceOf("print-room");
    const build = workspace.build(uriOf("print-room"));
    const document = build.planDocument(build.plan({ steps: 200 }));
    const placed = [...document.sheets, ...document.boards].flatMap((sheet) => sheet.placed);
    const pieces = build.list().parts.reduce((sum, part) => sum + part.quantity, 0);
    // The solid door panel is glued up from three staves, so it takes three places for one piece.
    expect(placed.length).toBe(pieces + 2);
    for (const sheet of [...document.sheets, ...document.boards]) {
      for (const one of sheet.placed) {
        expect(one.x + one.width).toBeLessThanOrEqual(sheet.width + 1e-6);
        expect(one.y + one.height).toBeLessThanOrEqual(sheet.height + 1e-6);
      }
    }
  });

  test("the same rounds give the same plan", () => {
    expect(planOf("sewing-room")).toEqual(planOf("sewing-room"));
  });
});

function uriOf(name: string): string {
  return `file:///shop/${name}.scant`;
}

function workspaceOf(name: string) {
  const workspace = createWorkspace({ root: undefined });
  for (const file of [name, "rack"]) {
    workspace.set(uriOf(file), readFileSync(new URL(`../../examples/${file}.scant`, import.meta.url), "utf8"));
  }
  return workspace;
}

function planOf(name: string) {
  const build = workspaceOf(name).build(uriOf(name));
  return build.planDocument(build.plan({ steps: 200 }));
}
