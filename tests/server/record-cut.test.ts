import { describe, expect, test } from "vitest";
import type {
  ApplyWorkspaceEditParams,
  ApplyWorkspaceEditResult,
  CodeAction,
  TextDocumentEdit,
} from "vscode-languageserver-protocol";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { RecordCutParams, RecordCutResult } from "../../server/protocol.ts";
import { recordCut } from "../../server/protocol.ts";
import type { Editor } from "./editor.ts";
import { inProcess } from "./editor.ts";
import { fits } from "./texts.ts";

const file = "file:///shop/drawer.scant";

interface Desk {
  readonly editor: Editor;
  ask(params: Omit<RecordCutParams, "uri">): Promise<RecordCutResult>;
  text(): string;
}

/** An editor that makes the edits that it is asked to make, unless it will not. */
async function desk(text: string, refusal?: string): Promise<Desk> {
  const editor = await inProcess({});
  let [now, version] = [text, 1];
  editor.connection.onRequest("workspace/applyEdit", ({ edit }: ApplyWorkspaceEditParams): ApplyWorkspaceEditResult => {
    if (refusal !== undefined) return { applied: false, failureReason: refusal };
    const change = edit.documentChanges?.[0] as TextDocumentEdit;
    expect(change.textDocument).toEqual({ uri: file, version });
    now = TextDocument.applyEdits(TextDocument.create(file, "", 0, now), change.edits as never);
    editor.change(file, now, ++version);
    return { applied: true };
  });
  editor.open(file, text, 1);
  await editor.diagnosticsOf(file, 1);
  return {
    editor,
    ask: (params) => editor.connection.sendRequest(recordCut, { uri: file, ...params }),
    text: () => now,
  };
}

describe("scantling/recordCut", () => {
  test("a row that is ticked is written down, and off again, and the rod counts it", async () => {
    const { editor, ask, text } = await desk(fits);
    const rod = async () =>
      (await editor.connection.sendRequest<{ view: { batches: { rows: { mark: string; done?: number }[] }[] } }>(
        "scantling/rod",
        { uri: file },
      ))!.view.batches.flatMap(({ rows }) => rows.map(({ mark, done }) => [mark, done]));
    expect(await rod()).toContainEqual(["B", undefined]);
    const all = await ask({ ticks: [{ part: "B", row: "box a/side", count: 2 }] });
    expect(all).toEqual({ understood: ["2 × B"], problems: [] });
    expect(text()).toBe(`${fits}\ncut {\n  box a side 2 at 22 x 5 1/32\n}\n`);
    await editor.diagnosticsOf(file, 2);
    expect(await rod()).toContainEqual(["B", 2]);
    await ask({ ticks: [{ part: "B", count: -2 }] });
    expect(text()).toBe(fits);
  });

  test("a line is read, and what cannot be is said while the rest is written", async () => {
    const { ask, text } = await desk(fits);
    const answer = await ask({ line: "1 side a 21 63/64; 3 wheels; spoiled bottom a" });
    expect(answer).toEqual({
      understood: ["1 × the side of box a", "1 × the bottom of box a, spoiled"],
      problems: ['"3 wheels": nothing is called "wheels"'],
    });
    expect(text()).toContain("  box a side 1 at 21 63/64 x 5 1/32\n");
    expect(text()).toContain("  box a bottom 1 spoiled\n");
  });

  test("an editor that will not write is believed", async () => {
    const { ask, text } = await desk(fits, "read only");
    expect(await ask({ line: "1 side a" })).toEqual({
      understood: [],
      problems: ["the editor did not write it: read only"],
    });
    expect(text()).toBe(fits);
  });

  test.each([
    [{}, "nothing was ticked"],
    [{ ticks: [] }, "nothing was ticked"],
    [{ ticks: [{ part: "ZZ", count: 1 }] }, 'there is no part "ZZ"'],
    [{ ticks: [{ part: 1, count: "2" }] }, "nothing was ticked"],
    [
      { ticks: [{ part: "B", row: "box a/bottom", count: 1 }] },
      "the list has changed meanwhile: look again, then tick",
    ],
    [{ line: "" }, /^nothing is written here/],
  ])("%j writes nothing and says why", async (params, problem) => {
    const { ask, text } = await desk(fits);
    const answer = await ask(params as never);
    expect(answer?.understood).toEqual([]);
    expect(answer?.problems[0]).toMatch(problem);
    expect(text()).toBe(fits);
  });

  test("of a file that there is not there is no answer", async () => {
    const { editor } = await desk(fits);
    expect(await editor.connection.sendRequest(recordCut, { uri: "file:///shop/none.scant", line: "1 side a" })).toBe(
      null,
    );
  });
});

describe("quick actions", () => {
  const lines = fits.split("\n");
  const line = lines.findIndex((text) => text.startsWith("box for a"));
  const actionsAt = async (
    { editor }: Desk,
    word: string,
    only?: readonly string[],
  ): Promise<readonly CodeAction[]> => {
    const at = { line, character: lines[line]!.indexOf(word) };
    const context = { diagnostics: [], ...(only === undefined ? {} : { only }) };
    return editor.connection.sendRequest("textDocument/codeAction", {
      textDocument: { uri: file },
      range: { start: at, end: at },
      context,
    });
  };

  test("on the word that a part is stated by write down what was cut of it", async () => {
    const bench = await desk(fits);
    const actions = await actionsAt(bench, "bottom ply", ["refactor.cut"]);
    expect(actions.map(({ title }) => title)).toEqual([
      "Record as cut: one of A, bottom",
      "Record as spoiled: one of A, bottom",
    ]);
    const change = actions[0]?.edit?.documentChanges?.[0] as TextDocumentEdit;
    expect(change.edits).toMatchObject([{ newText: expect.stringContaining("cut {\n  box a bottom 1 at ") }]);
    expect((await actionsAt(bench, "sides ply", ["refactor.cut"])).map(({ title }) => title)).toEqual([
      "Record as cut: all 2 left of B, side",
      "Record as cut: one of B, side",
      "Record as spoiled: one of B, side",
      "Record as cut: all 2 left of C, front and back",
      "Record as cut: one of C, front and back",
      "Record as spoiled: one of C, front and back",
    ]);
  });

  test("are not in the way of fixes, and not where no part is stated", async () => {
    const bench = await desk(fits);
    expect(await actionsAt(bench, "bottom ply", ["quickfix"])).toEqual([]);
    expect(await actionsAt(bench, "box for", ["refactor.cut"])).toEqual([]);
  });

  test("on a finding about a record write what it comes to", async () => {
    const text = `${fits}cut {\n  box a side 1 at 22 1/4 x 5 1/32\n}\n`;
    const { editor } = await desk(text);
    const [found] = await editor.diagnosticsOf(file, 1);
    expect(found).toMatchObject({ code: "cut/too-large" });
    const actions = await editor.connection.sendRequest<readonly CodeAction[]>("textDocument/codeAction", {
      textDocument: { uri: file },
      range: found!.range,
      context: { diagnostics: [found] },
    });
    expect(actions[0]).toMatchObject({
      title: "Write the size that it has when it is cut down",
      kind: "quickfix",
    });
  });
});
