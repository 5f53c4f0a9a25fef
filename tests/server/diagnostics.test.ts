import { expect, test } from "vitest";
import type { Diagnostic } from "vscode-languageserver-protocol";
import type { Finding } from "../../language/core/finding.ts";
import { startOfFile } from "../../language/core/span.ts";
import { diagnosticOf } from "../../server/lsp/diagnostics.ts";
import type { ClientFacts } from "../../server/lsp/feature.ts";
import { inProcess } from "./editor.ts";
import { fits, job, rack, tooLong } from "./texts.ts";

const file = "file:///shop/drawer.scant";

test("an error comes with a text, versioned and on its word, and goes when it is mended", async () => {
  const editor = await inProcess({});
  editor.open(file, tooLong, 7);
  const [found, ...others] = await editor.diagnosticsOf(file, 7);
  expect(others).toEqual([]);
  expect(found?.code).toBe("slide/too-long");
  expect(found?.source).toBe("scantling");
  expect(found?.severity).toBe(1);
  expect(wordAt(tooLong, found?.range)).toBe("24");
  expect(found?.message).toMatch(/^A 24 slide needs 24 1\/2 in of depth.*The longest that fits is 22\.\n[A-Z].*\.$/s);
  expect(found?.relatedInformation?.map((one) => wordAt(tooLong, one.location.range))).toContain("23 1/2");

  editor.change(file, fits, 8);
  expect(await editor.diagnosticsOf(file, 8)).toEqual([]);
});

test("an edit of a few letters is taken in as it is sent", async () => {
  const editor = await inProcess({});
  editor.open(file, fits);
  expect(await editor.diagnosticsOf(file, 1)).toEqual([]);
  const line = fits.split("\n").findIndex((text) => text.includes("runner 22"));
  const character = fits.split("\n")[line]?.indexOf("22 }") ?? -1;
  await editor.connection.sendNotification("textDocument/didChange", {
    textDocument: { uri: file, version: 2 },
    contentChanges: [
      { range: { start: { line, character: character + 1 }, end: { line, character: character + 2 } }, text: "4" },
    ],
  });
  expect((await editor.diagnosticsOf(file, 2)).map((one) => one.code)).toEqual(["slide/too-long"]);
});

test("many quick edits are checked once, at the last of them", async () => {
  const editor = await inProcess({});
  editor.open(file, fits);
  await editor.diagnosticsOf(file, 1);
  for (let version = 2; version <= 21; version++) editor.change(file, `${fits}// ${version}`, version);
  await editor.diagnosticsOf(file, 21);
  expect(editor.published.filter((each) => each.uri === file).length).toBeLessThan(8);
});

test("a file that uses another is checked again when that is edited, and nothing stays when both are closed", async () => {
  const stock = "file:///shop/rack.scant";
  const editor = await inProcess({}, { folders: ["file:///shop"] });
  editor.open(stock, rack);
  editor.open(file, job);
  expect(await editor.diagnosticsOf(file, 1)).toEqual([]);

  editor.change(stock, rack.replace("sheet ply", "sheet oak"), 2);
  await editor.until(
    "the unknown stock",
    () => codes(editor.published.findLast((each) => each.uri === file)).length > 0,
  );
  expect(codes(editor.published.findLast((each) => each.uri === file))).toContain("name/unknown-stock");

  editor.close(stock);
  editor.close(file);
  await editor.until(
    "all to be cleared",
    () => editor.published.findLast((each) => each.uri === file)?.diagnostics.length === 0,
  );
  expect(editor.published.findLast((each) => each.uri === stock)?.diagnostics).toEqual([]);
});

test("what is wrong in a used file that is not open is published for that file, without a version, and cleared", async () => {
  const stock = "file:///shop/rack.scant";
  const texts = new Map([[stock, `${rack}sheet ply { called 3/4 }\n`]]);
  const editor = await inProcess({ readDisk: async (uri) => texts.get(uri) }, { folders: ["file:///shop"] });
  editor.open(file, job);
  await editor.diagnosticsOf(file, 1);
  await editor.until("the used file's", () => editor.published.some((each) => each.uri === stock));
  const said = editor.published.findLast((each) => each.uri === stock);
  expect(said?.version).toBeUndefined();
  expect(said?.diagnostics.length).toBeGreaterThan(0);

  texts.set(stock, rack);
  await editor.connection.sendNotification("workspace/didChangeWatchedFiles", { changes: [{ uri: stock, type: 2 }] });
  await editor.until(
    "it to be cleared",
    () => editor.published.findLast((each) => each.uri === stock)?.diagnostics.length === 0,
  );
});

test("an address is answered in the editor's own spelling", async () => {
  const odd = "file:///c:/My Shop/Drawer (1).scant";
  const editor = await inProcess({});
  editor.open(odd, tooLong);
  expect((await editor.diagnosticsOf(odd, 1)).map((one) => one.code)).toEqual(["slide/too-long"]);
  expect(await editor.connection.sendRequest("scantling/rod", { uri: odd })).not.toBeNull();
});

test("an editor that can watch files is asked to watch build files", async () => {
  const capabilities = { workspace: { didChangeWatchedFiles: { dynamicRegistration: true } } };
  const editor = await inProcess({}, { capabilities });
  await editor.until("the request", () => editor.registered.length > 0);
  expect(editor.registered).toEqual(["workspace/didChangeWatchedFiles"]);
});

const finding: Finding = {
  code: "stock/unused",
  severity: "hint",
  span: startOfFile("file:///a.scant"),
  message: 'the sheet "ply" is used nowhere',
  reason: "",
  remedy: "Take it out",
  related: [{ span: startOfFile("file:///b.scant"), message: "here" }],
  fixes: [],
};
const least: ClientFacts = {
  versionedEdits: false,
  relatedInformation: false,
  hasFolders: false,
  watchesOnRequest: false,
  hasConfiguration: false,
  refreshes: { hints: false, lenses: false, tokens: false },
  snippets: false,
  findingPages: undefined,
};

test("a diagnostic holds what the editor can show and no more", () => {
  const plain = diagnosticOf(finding, least, (uri) => uri);
  expect(plain.message).toBe('The sheet "ply" is used nowhere. Take it out.');
  expect(plain.severity).toBe(3);
  expect(plain.tags).toEqual([1]);
  expect(plain).not.toHaveProperty("relatedInformation");
  expect(plain).not.toHaveProperty("codeDescription");
  expect(plain).not.toHaveProperty("data");

  const full = { ...least, relatedInformation: true, findingPages: "https://pages.example/findings/" };
  const rich = diagnosticOf({ ...finding, code: "slide/too-long" }, full, () => "file:///B.scant");
  expect(rich.relatedInformation?.[0]?.location.uri).toBe("file:///B.scant");
  expect(rich.codeDescription?.href).toBe("https://pages.example/findings/slide-too-long.md");
  expect(rich.tags).toBeUndefined();
});

function codes(said: { readonly diagnostics: readonly Diagnostic[] } | undefined): readonly unknown[] {
  return said?.diagnostics.map((one) => one.code) ?? [];
}

function wordAt(text: string, range: Diagnostic["range"] | undefined): string {
  const line = text.split("\n")[range?.start.line ?? -1] ?? "";
  return line.slice(range?.start.character, range?.end.character);
}
