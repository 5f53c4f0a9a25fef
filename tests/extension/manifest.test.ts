import { existsSync } from "node:fs";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };

const root = fileURLToPath(new URL("../..", import.meta.url));

async function sources(folder: string): Promise<string> {
  const names = await readdir(join(root, folder), { recursive: true });
  const texts = names.filter((name) => name.endsWith(".ts")).map((name) => readFile(join(root, folder, name), "utf8"));
  return (await Promise.all(texts)).join("\n");
}

describe("the manifest and the code agree", () => {
  test("on the commands", async () => {
    const registered = [...(await sources("extension")).matchAll(/registerCommand\(\s*"([^"]+)"/g)].map((m) => m[1]);
    const declared = manifest.contributes.commands.map(({ command }) => command);
    expect(registered.sort()).toEqual(declared.sort());
  });

  test("on the menus, which name only commands there are", () => {
    const declared = new Set(manifest.contributes.commands.map(({ command }) => command));
    for (const items of Object.values(manifest.contributes.menus)) {
      for (const { command } of items) expect(declared).toContain(command);
    }
  });

  test("on the type of the rod's panel, so that the window can bring it back", async () => {
    const [, type] = /ROD_VIEW_TYPE = "([^"]+)"/.exec(await sources("extension/preview")) ?? [];
    expect(manifest.activationEvents).toContain(`onWebviewPanel:${type}`);
  });

  test("on the language", async () => {
    expect(manifest.contributes.languages.map(({ id }) => id)).toEqual(["scantling"]);
    expect(manifest.contributes.languages[0]?.extensions).toEqual([".scant"]);
    expect(await sources("extension")).toContain('documentSelector: [{ language: "scantling" }]');
  });

  test("on the files, all of which are there", () => {
    const { icon, contributes } = manifest;
    const paths = [
      icon,
      ...contributes.languages.map(({ configuration }) => configuration),
      ...contributes.grammars.map(({ path }) => path),
    ];
    for (const path of paths) expect(existsSync(join(root, path)), path).toBe(true);
  });
});

describe("the language configuration", () => {
  async function configuration() {
    return JSON.parse(await readFile(join(root, "extension/language-configuration.json"), "utf8"));
  }

  test("takes a name with hyphens and a fraction each as one word", async () => {
    const { wordPattern } = await configuration();
    const words = "box for plan-1 { deep 13 3/4 sides birch-18 0.709 #8 }".match(new RegExp(wordPattern, "g"));
    expect(words).toEqual(["box", "for", "plan-1", "deep", "13", "3/4", "sides", "birch-18", "0.709", "#8"]);
  });

  test("indents behind a brace that is left open, and not behind one in a comment", async () => {
    const { indentationRules } = await configuration();
    const [more, less] = [indentationRules.increaseIndentPattern, indentationRules.decreaseIndentPattern].map(
      (pattern: string) => new RegExp(pattern),
    );
    expect(["case chest {", "  across {   // left to right"].every((line) => more?.test(line))).toBe(true);
    expect(["saw { kerf 1/8 }", "// box {", "read to 1/32"].some((line) => more?.test(line))).toBe(false);
    expect(less?.test("  }")).toBe(true);
  });
});
