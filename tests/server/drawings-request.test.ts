import { expect, test } from "vitest";
import { CancellationTokenSource } from "vscode-languageserver-protocol/node";
import type { DrawingsAnswer } from "../../server/protocol.ts";
import { jobOf } from "../bench/trust/texts.ts";
import type { Editor } from "./editor.ts";
import { inProcess } from "./editor.ts";

const uri = "file:///shop/job.scant";

/** Cases enough that their drawings take longer than anyone waits for them while the text goes on. */
const job = jobOf(4_000);

async function opened(): Promise<Editor> {
  const editor = await inProcess({});
  editor.open(uri, job);
  await editor.diagnosticsOf(uri, 1);
  return editor;
}

test("while drawings are made other requests are answered; called off, they are left where they stand", async () => {
  const editor = await opened();
  const source = new CancellationTokenSource();
  const answered: string[] = [];
  const refused = editor.connection
    .sendRequest<DrawingsAnswer>("scantling/drawings", { uri }, source.token)
    .finally(() => answered.push("drawings"));
  const hover = { textDocument: { uri }, position: { line: 0, character: 2 } };
  await editor.connection.sendRequest("textDocument/hover", hover).finally(() => answered.push("hover"));
  source.cancel();
  await expect(refused).rejects.toThrow("called off");
  expect(answered).toEqual(["hover", "drawings"]);
});

test("drawings that take long are not gone on with once the text is another, and those of the new text are all there", async () => {
  const editor = await opened();
  const ask = () => editor.connection.sendRequest<DrawingsAnswer>("scantling/drawings", { uri });
  const refused = ask();
  editor.change(uri, job.replace("holds 12", "holds 20"), 2);
  await expect(refused).rejects.toThrow("changed meanwhile");
  const { titles, drawing } = await ask();
  expect(titles.length).toBeGreaterThan(80);
  expect(drawing?.id).toBe(titles[0]?.id);
});
