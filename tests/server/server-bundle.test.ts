import { readFileSync } from "node:fs";
import { join } from "node:path";
import { createContext, runInContext } from "node:vm";
import { MessageChannel } from "node:worker_threads";
import { expect, onTestFinished, test } from "vitest";
import type {
  CodeAction,
  Message,
  MessageReader,
  MessageWriter,
  TextDocumentEdit,
} from "vscode-languageserver-protocol/node";
import {
  AbstractMessageReader,
  AbstractMessageWriter,
  createMessageConnection,
} from "vscode-languageserver-protocol/node";
import { URI } from "vscode-uri";
import type { RodAnswer } from "../../server/protocol.ts";
import { useBundle } from "./bundle.ts";
import { inBundle, start } from "./editor.ts";
import { scratch } from "./scratch.ts";
import { job, rack } from "./texts.ts";

const server = useBundle("server/main.ts");
const worker = useBundle("server/main-browser.ts", "browser");

test("the server as it ships, over standard input and output: check, mend, follow used files, feed the rod", async () => {
  const folder = scratch({ "rack.scant": rack });
  const root = URI.file(folder).toString();
  const file = URI.file(join(folder, "job.scant")).toString();
  const editor = await inBundle(server(), { folders: [root] });

  const wrong = job.replace("slides runner", "slides runner 24");
  editor.open(file, wrong);
  const [found] = await editor.diagnosticsOf(file, 1);
  expect(found?.code).toBe("slide/too-long");

  const actions = await editor.connection.sendRequest<CodeAction[]>("textDocument/codeAction", {
    textDocument: { uri: file },
    range: found?.range,
    context: { diagnostics: [found] },
  });
  const change = actions[0]?.edit?.documentChanges?.[0] as TextDocumentEdit;
  expect(change.textDocument).toEqual({ uri: file, version: 1 });
  await editor.connection.sendNotification("textDocument/didChange", {
    textDocument: { uri: file, version: 2 },
    contentChanges: change.edits.map((edit) => ({ range: "range" in edit ? edit.range : undefined, text: "22" })),
  });
  expect(await editor.diagnosticsOf(file, 2)).toEqual([]);

  const rod = await editor.connection.sendRequest<RodAnswer>("scantling/rod", { uri: file });
  expect(rod.stale).toBe(false);
  expect(rod.view.pieces).toBe(5);

  const other = URI.file(join(folder, "rack.scant")).toString();
  editor.open(other, rack.replace("sheet ply", "sheet oak"));
  await editor.until("the stock to be missed", () =>
    editor.published.some(
      (each) => each.uri === file && each.diagnostics.some((one) => one.code === "name/unknown-stock"),
    ),
  );

  await editor.connection.sendRequest("shutdown");
  const gone = new Promise((resolve) => editor.process.once("exit", resolve));
  await editor.connection.sendNotification("exit");
  expect(await gone).toBe(0);
});

test("the server as a worker, without anything of Node", async () => {
  const texts = new Map([["memfs:/shop/rack.scant", rack]]);
  const editor = await start(startWorker(worker()), {
    folders: ["memfs:/shop"],
    readFile: (uri) => texts.get(uri) ?? null,
  });
  const file = "memfs:/shop/job.scant";
  editor.open(file, job.replace("slides runner", "slides runner 24"));
  expect((await editor.diagnosticsOf(file, 1)).map((one) => one.code)).toEqual(["slide/too-long"]);
  const rod = await editor.connection.sendRequest<RodAnswer>("scantling/rod", { uri: file });
  expect(rod.view.pieces).toBe(5);
});

/** Runs the bundle with what a worker has, and speaks to it as a browser would: by messages. */
function startWorker(bundle: string) {
  const { port1, port2 } = new MessageChannel();
  onTestFinished(() => {
    port1.close();
    port2.close();
  });
  const scope: Record<string, unknown> = {
    postMessage: (message: unknown) => port2.postMessage(message),
    addEventListener: () => undefined,
    onmessage: undefined,
  };
  port2.on("message", (data: unknown) => (scope["onmessage"] as (event: unknown) => void)({ data }));
  const globals = { self: scope, setTimeout, clearTimeout, setInterval, clearInterval, queueMicrotask, performance };
  runInContext(readFileSync(bundle, "utf8"), createContext({ ...globals, TextDecoder, TextEncoder, URL, console }));

  class Reader extends AbstractMessageReader implements MessageReader {
    listen(callback: (message: Message) => void) {
      port1.on("message", callback);
      return { dispose: () => void port1.off("message", callback) };
    }
  }
  class Writer extends AbstractMessageWriter implements MessageWriter {
    async write(message: Message): Promise<void> {
      port1.postMessage(message);
    }
    end(): void {}
  }
  return createMessageConnection(new Reader(), new Writer());
}
