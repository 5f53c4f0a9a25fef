import { expect, test } from "vitest";
import type {
  ApplyWorkspaceEditParams,
  ApplyWorkspaceEditResult,
  TextDocumentEdit,
} from "vscode-languageserver-protocol";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { KeepOffcutsResult, PlanResult } from "../../server/protocol.ts";
import { keepOffcuts, plan } from "../../server/protocol.ts";
import { inProcess } from "./editor.ts";

const file = "file:///shop/shelf.scant";
const text = `project "Shelf"
inches
sheet ply { measures 3/4  size 48 x 96 }
part shelf { from ply  long 40  wide 20 }
`;

test("offcuts are kept once, however often that is asked, and those of a changed plan take their place", async () => {
  const editor = await inProcess({});
  let [now, version] = [text, 1];
  editor.connection.onRequest("workspace/applyEdit", ({ edit }: ApplyWorkspaceEditParams): ApplyWorkspaceEditResult => {
    const change = edit.documentChanges?.[0] as TextDocumentEdit;
    expect(change.textDocument).toEqual({ uri: file, version });
    now = TextDocument.applyEdits(TextDocument.create(file, "", 0, now), change.edits as never);
    editor.change(file, now, ++version);
    return { applied: true };
  });
  editor.open(file, text, version);
  const keep = async (): Promise<KeepOffcutsResult> => {
    const made = await editor.connection.sendRequest<PlanResult>(plan, { uri: file, seconds: 0, keepBest: true });
    const lines = made?.document.keep ?? [];
    expect(lines.length).toBeGreaterThan(0);
    return editor.connection.sendRequest(keepOffcuts, { uri: file, into: file, lines });
  };
  const first = await keep();
  const kept = now;
  expect(first).toEqual({ added: kept.match(/from "Shelf"/g)?.length, takenOut: 0, held: 0, stay: 0 });
  expect(await keep()).toEqual({ added: 0, takenOut: 0, held: first?.added, stay: 0 });
  expect(now).toBe(kept);

  now = now.replace("long 40", "long 60");
  editor.change(file, now, ++version);
  const changed = await keep();
  expect(changed?.takenOut).toBeGreaterThan(0);
  expect(now.match(/from "Shelf"/g)).toHaveLength((changed?.added ?? 0) + (changed?.held ?? 0));
});

test("what the editor will not write is said", async () => {
  const editor = await inProcess({});
  editor.connection.onRequest("workspace/applyEdit", () => ({ applied: false, failureReason: "locked" }));
  editor.open(file, text, 1);
  const lines = ['offcut of ply 6 in x 40 in from "Shelf"'];
  expect(await editor.connection.sendRequest(keepOffcuts, { uri: file, into: file, lines })).toEqual({
    added: 0,
    takenOut: 0,
    held: 0,
    stay: 0,
    problem: "the editor did not write it: locked",
  });
});
