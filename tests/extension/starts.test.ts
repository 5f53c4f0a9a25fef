import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { freeName, STARTS } from "../../extension/commands/starts.ts";
import { FIRST_BUILD_FILE } from "../../extension/preview/first-build-file.ts";
import snippets from "../../extension/snippets/scantling.json" with { type: "json" };
import { createWorkspace } from "../../language/service.ts";

const folder = fileURLToPath(new URL("../../extension/starts", import.meta.url));

function built(text: string) {
  const workspace = createWorkspace({ root: undefined });
  workspace.set("file:///start.scant", text);
  return workspace.build("file:///start.scant");
}

describe("what a maker begins with", () => {
  test("every file of the folder is offered", () => {
    expect(STARTS.map(({ id }) => `${id}.scant`).sort()).toEqual(readdirSync(folder).sort());
  });

  test.each(STARTS)("$id builds without an error or a warning", ({ id }) => {
    const build = built(readFileSync(join(folder, `${id}.scant`), "utf8"));
    expect(build.findings.filter(({ severity }) => severity !== "hint").map(({ message }) => message)).toEqual([]);
    expect(build.rod().pieces).toBeGreaterThan(20);
    expect(build.derivation.model.boxes.length).toBeGreaterThan(1);
  });

  test("a new file is called after what it is, and by a number where that is taken", async () => {
    const taken = new Set(["drawers.scant", "drawers-2.scant"]);
    const isTaken = async (name: string) => taken.has(name);
    expect(await freeName("base-case", isTaken)).toBe("base-case.scant");
    expect(await freeName("drawers", isTaken)).toBe("drawers-3.scant");
  });

  test("the rod's own example builds without an error", () => {
    expect(built(FIRST_BUILD_FILE).findings.filter(({ severity }) => severity === "error")).toEqual([]);
  });
});

describe("snippets", () => {
  /** The text of a snippet with its first choices and defaults in place. */
  function filled(body: readonly string[]): string {
    return body
      .join("\n")
      .replace(/\$\{\d+\|([^,|}]+)[^}]*\}/g, "$1")
      .replace(/\$\{\d+:([^}]*)\}/g, "$1")
      .replace(/\$\d+/g, "");
  }

  test.each(Object.entries(snippets))("%s can be read as it comes", (_, { body }) => {
    const text = filled(body);
    expect(text).not.toContain("$");
    const units = /millimetres|^case wall|mount under/.test(text) ? "millimetres" : "inches";
    const unread = built(text.startsWith("project") ? text : `${units}\n${text}`).findings.filter(
      ({ code }) => code.startsWith("syntax/") || code === "statement/not-here" || code === "statement/unknown-word",
    );
    expect(unread.map(({ message }) => message)).toEqual([]);
  });

  test("each begins with a word that no other has", () => {
    const prefixes = Object.values(snippets).map(({ prefix }) => prefix);
    expect(new Set(prefixes).size).toBe(prefixes.length);
  });
});
