import { expect, test } from "vitest";
import type { CodeAction, Diagnostic, TextDocumentEdit } from "vscode-languageserver-protocol";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { Editor } from "./editor.ts";
import { inProcess } from "./editor.ts";
import { fits, tooLong } from "./texts.ts";

const file = "file:///shop/drawer.scant";

test("a fix on the word, made, leaves nothing to find", async () => {
  const editor = await inProcess({});
  editor.open(file, tooLong, 3);
  const [found] = await editor.diagnosticsOf(file, 3);
  const [action, ...others] = await actionsAt(editor, found!);
  expect(others).toEqual([]);
  expect(action).toMatchObject({ kind: "quickfix", isPreferred: true, diagnostics: [{ code: "slide/too-long" }] });
  expect(action?.title).toContain("22");
  const change = action?.edit?.documentChanges?.[0] as TextDocumentEdit;
  expect(change.textDocument).toEqual({ uri: file, version: 3 });

  const mended = TextDocument.applyEdits(TextDocument.create(file, "", 0, tooLong), change.edits as never);
  expect(mended).toBe(fits);
  editor.change(file, mended, 4);
  expect(await editor.diagnosticsOf(file, 4)).toEqual([]);
});

test("fixes are of the text as it stands when asked, not of what was last published", async () => {
  const editor = await inProcess({});
  editor.open(file, tooLong, 1);
  const [found] = await editor.diagnosticsOf(file, 1);
  editor.change(file, `// one line more\n${tooLong}`, 2);
  const range = { start: { line: 6, character: 0 }, end: { line: 6, character: 200 } };
  const [action] = await actionsAt(editor, { ...found!, range });
  const change = action?.edit?.documentChanges?.[0] as TextDocumentEdit;
  expect(change.textDocument.version).toBe(2);
  expect(change.edits[0]).toMatchObject({ newText: "22", range: { start: { line: 6 } } });
});

test("an editor without versioned edits gets plain ones", async () => {
  const editor = await inProcess({}, { capabilities: {} });
  editor.open(file, tooLong);
  const [found] = await editor.diagnosticsOf(file, 1);
  expect(found).not.toHaveProperty("relatedInformation");
  const [action] = await actionsAt(editor, found!);
  expect(action?.edit?.documentChanges).toBeUndefined();
  expect(action?.edit?.changes?.[file]?.[0]?.newText).toBe("22");
});

test("all safe fixes of a file come as one action, and only when asked for by its kind", async () => {
  const editor = await inProcess({});
  const text = `${tooLong}opening b { wide 15 1/2  high 6  deep 19 }
box for b { sides ply  bottom ply under  slides runner 22 }
`;
  editor.open(file, text);
  const all = await editor.diagnosticsOf(file, 1);
  expect(all).toHaveLength(2);
  for (const only of [["source.fixAll"], ["source.fixAll.scantling"], ["source"]]) {
    const actions = await actionsAt(editor, all[0]!, only);
    expect(actions.map((action) => action.kind)).toEqual(["source.fixAll.scantling"]);
    const change = actions[0]?.edit?.documentChanges?.[0] as TextDocumentEdit;
    const mended = TextDocument.applyEdits(TextDocument.create(file, "", 0, text), change.edits as never);
    expect(mended).toContain("runner 22 }\nopening b");
    expect(mended.trimEnd()).toMatch(/runner 18 }$/);
  }
  expect((await actionsAt(editor, all[0]!, undefined)).map((action) => action.kind)).toEqual(["quickfix"]);
  expect(await actionsAt(editor, all[0]!, ["refactor"])).toEqual([]);
  expect(await actionsAt(editor, all[0]!, ["source.fixAllOthers"])).toEqual([]);
});

test("there is nothing to mend away from a finding, or in a file that is not open", async () => {
  const editor = await inProcess({});
  editor.open(file, tooLong);
  const [found] = await editor.diagnosticsOf(file, 1);
  const start = { start: { line: 0, character: 0 }, end: { line: 0, character: 3 } };
  expect(await actionsAt(editor, { ...found!, range: start }, ["quickfix"])).toEqual([]);
  editor.close(file);
  expect(await actionsAt(editor, found!)).toEqual([]);
});

test("what stands behind a diagnostic are its fixes", async () => {
  const editor = await inProcess({});
  editor.open(file, tooLong);
  const [found] = await editor.diagnosticsOf(file, 1);
  expect(found?.data).toMatchObject({ fixes: [{ safe: true, edits: [{ text: "22" }] }] });
});

async function actionsAt(editor: Editor, found: Diagnostic, only?: readonly string[]): Promise<readonly CodeAction[]> {
  const context = { diagnostics: [found], ...(only === undefined ? {} : { only }) };
  return editor.connection.sendRequest("textDocument/codeAction", {
    textDocument: { uri: file },
    range: found.range,
    context,
  });
}
