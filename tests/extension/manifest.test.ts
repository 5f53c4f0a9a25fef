import { existsSync } from "node:fs";
import { readdir, readFile } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import words from "../../package.nls.json" with { type: "json" };
import { bundlePath, bundleText } from "../../scripts/l10n-messages.ts";

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

  test("on what the palette offers: without a build file only what makes one, or says that something is wrong", async () => {
    const { commands, menus } = manifest.contributes;
    const hidden = new Map(menus.commandPalette.map(({ command, when }) => [command, when]));
    const always = commands.map(({ command }) => command).filter((command) => !hidden.has(command));
    expect(always.sort()).toEqual(["scantling.newBuildFile", "scantling.reportProblem"]);
    const code = await sources("extension");
    for (const key of [...hidden.values()].flatMap((when) => when.match(/scantling\.(is|has)\w+/g) ?? []))
      expect(code).toContain(`"${key}"`);
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
    const { snippets, walkthroughs } = contributes;
    const paths = [
      icon,
      ...snippets.map(({ path }) => path),
      ...walkthroughs.flatMap(({ steps }) => steps.map(({ media }) => media.svg)),
      ...contributes.languages.map(({ configuration }) => configuration),
      ...contributes.grammars.map(({ path }) => path),
    ];
    for (const path of paths) expect(existsSync(join(root, path)), path).toBe(true);
  });
});

describe("the manifest and the code agree further", () => {
  test("on the settings: each has a default and a description, and there are about ten at most", async () => {
    const { properties } = manifest.contributes.configuration;
    expect(Object.keys(properties).length).toBeLessThanOrEqual(10);
    for (const [name, setting] of Object.entries(properties)) {
      expect(name).toMatch(/^scantling\./);
      expect(setting).toHaveProperty("default");
      expect(setting.markdownDescription).toMatch(/^%.+%$/);
    }
    const reported = /const SETTINGS = \[([\s\S]*?)\];/.exec(await sources("extension/commands"))?.[1] ?? "";
    const named = [...reported.matchAll(/"([^"]+)"/g)].map(([, name]) => `scantling.${name}`);
    expect(named.sort()).toEqual(Object.keys(properties).sort());
  });

  test("on the tools for language models", async () => {
    const registered = [...(await sources("extension")).matchAll(/registerTool<\w+>\(\s*"([^"]+)"/g)].map((m) => m[1]);
    expect(registered.sort()).toEqual(manifest.contributes.languageModelTools.map(({ name }) => name).sort());
  });

  test("on the task and its problem matcher", async () => {
    const text = await sources("extension/tasks");
    const [definition] = manifest.contributes.taskDefinitions;
    expect(text).toContain(`const TYPE = "${definition?.type}"`);
    expect(text).toContain(`"$${manifest.contributes.problemMatchers[0]?.name}"`);
  });

  test("on the steps of the walkthrough, which are done by commands that their buttons run", () => {
    const [walkthrough] = manifest.contributes.walkthroughs;
    expect(walkthrough?.steps.length).toBeGreaterThanOrEqual(4);
    expect(walkthrough?.steps.length).toBeLessThanOrEqual(6);
    for (const { description, completionEvents } of walkthrough?.steps ?? []) {
      const [command] = completionEvents.map((event) => event.replace(/^onCommand:/, ""));
      expect(said(description)).toContain(`(command:${command})`);
    }
  });
});

/** What a word of the manifest is in the default language. */
function said(key: string): string {
  const text = Object.entries(words).find(([name]) => `%${name}%` === key)?.[1];
  if (text === undefined) throw new Error(`There are no words for ${key}.`);
  return text;
}

describe("all that is shown can be translated", () => {
  test("the manifest names its words, each of which there is, and none too many", async () => {
    const text = await readFile(join(root, "package.json"), "utf8");
    const keys = [...text.matchAll(/"%([^%"]+)%"/g)].map(([, key]) => key);
    expect([...new Set(keys)].sort()).toEqual(Object.keys(words).sort());
    for (const { title } of manifest.contributes.commands) expect(title).toMatch(/^%/);
  });

  test("the texts of the code are in the bundle as they stand: npm run l10n", async () => {
    expect(await readFile(bundlePath, "utf8")).toBe(bundleText());
    expect(bundleText()).toContain('"{0} errors"');
  });
});

describe("the manifest is fit for the marketplace", () => {
  test("what it runs on and what it is typed with are of one version", () => {
    expect(manifest.engines.vscode).toBe(`^${manifest.devDependencies["@types/vscode"]}`);
  });

  test("what is loaded says what kind of module it is, since the package is one of ES modules", () => {
    expect(manifest.type).toBe("module");
    for (const path of [manifest.main, manifest.browser, manifest.bin.scantling]) expect(path).toMatch(/\.cjs$/);
  });

  test("it starts with nothing but what it is for, and in any workspace", () => {
    expect(manifest.activationEvents).not.toContain("*");
    expect(manifest.activationEvents).not.toContain("onStartupFinished");
    expect(manifest.capabilities).toEqual({ untrustedWorkspaces: { supported: true }, virtualWorkspaces: true });
  });

  test("it is described, in few enough words to be found by", () => {
    expect(said(manifest.description).length).toBeLessThanOrEqual(200);
    expect(manifest.keywords.length).toBeLessThanOrEqual(30);
    expect(manifest.license).toBe("MIT");
    expect(manifest.version).toMatch(/^\d+\.\d+\.\d+$/);
  });

  test("its icon is a square of at least 128 pixels", async () => {
    const png = await readFile(join(root, manifest.icon));
    expect(png.subarray(1, 4).toString("latin1")).toBe("PNG");
    expect(png.readUInt32BE(16)).toBe(png.readUInt32BE(20));
    expect(png.readUInt32BE(16)).toBeGreaterThanOrEqual(128);
  });

  test("the changelog tells of the version", async () => {
    expect(await readFile(join(root, "CHANGELOG.md"), "utf8")).toContain(`\n## ${manifest.version}\n`);
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
