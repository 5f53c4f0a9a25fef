// Whether the server keeps what it no longer needs: its heap after many edits of an open file, rod asked for each time.
// Needs `node --expose-gc`. `--smoke` makes few edits; `--edits N` makes so many.
import { readFileSync } from "node:fs";
import { PassThrough } from "node:stream";
import { fileURLToPath } from "node:url";
import { createConnection } from "vscode-languageserver/node";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-languageserver-protocol/node";
import { createWorkspace } from "../../../language/service.ts";
import { serve } from "../../../server/connection.ts";
import { type Row, say, smoke } from "./row.ts";
import { caseText, jobOf, shopText } from "./texts.ts";

const asked = process.argv.indexOf("--edits");
const edits = asked < 0 ? (smoke ? 120 : 10_000) : Number(process.argv[asked + 1]);
const collect = globalThis.gc;
if (collect === undefined) throw new Error("run this with node --expose-gc");

const job = "file:///bench/bench.scant";
const examples = fileURLToPath(new URL("../../../examples/", import.meta.url));

const [toServer, toEditor] = [new PassThrough(), new PassThrough()];
const server = createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(toEditor));
serve(server, { readDisk: async (uri) => readFileSync(examples + uri.slice(uri.lastIndexOf("/") + 1), "utf8") });
const editor = createMessageConnection(new StreamMessageReader(toEditor), new StreamMessageWriter(toServer));
editor.listen();
await editor.sendRequest("initialize", {
  processId: null,
  rootUri: null,
  capabilities: {},
  workspaceFolders: [{ uri: "file:///bench", name: "bench" }],
});

const text = shopText + caseText("base");
void editor.sendNotification("textDocument/didOpen", {
  textDocument: { uri: job, languageId: "scantling", version: 1, text },
});

const warm = Math.max(50, Math.ceil(edits / 10));
const heaps: number[] = [];
for (let edit = 1; edit <= warm + edits; edit++) {
  // Now and then the text is broken, a name is new, and a file is used: each leaves something behind that could be kept.
  const made =
    edit % 5 === 0
      ? text.slice(0, (edit * 37) % text.length)
      : edit % 5 === 1
        ? text.replaceAll("base", `base${edit}`)
        : `${edit % 5 === 2 ? 'use "rack.scant"\n' : ""}${text.replace("holds 12", `holds ${10 + (edit % 40)}`)}`;
  void editor.sendNotification("textDocument/didChange", {
    textDocument: { uri: job, version: edit + 1 },
    contentChanges: [{ text: made }],
  });
  const answer = await editor.sendRequest<{ view: object } | null>("scantling/rod", { uri: job });
  if (answer === null) throw new Error("the file that is open has no rod");
  if (edit % 25 === 0) {
    const position = { line: edit % 40, character: 8 };
    await editor.sendRequest("textDocument/hover", { textDocument: { uri: job }, position });
    await editor.sendRequest("scantling/drawings", { uri: job });
  }
  if (edit === warm || edit === warm + Math.floor(edits / 2) || edit === warm + edits) {
    // The same text each time, so that what differs is what was kept.
    void editor.sendNotification("textDocument/didChange", {
      textDocument: { uri: job, version: edit + 1 },
      contentChanges: [{ text }],
    });
    await editor.sendRequest("scantling/rod", { uri: job });
    await new Promise((go) => setTimeout(go, 400));
    for (let again = 0; again < 3; again++) await collect({ type: "major", execution: "async" });
    heaps.push(process.memoryUsage().heapUsed / 1024 / 1024);
  }
}

const [before, middle, after] = heaps as [number, number, number];
const growth = (after - before) / before;
// A short run says little: what is made once, and then kept for good, weighs more in it.
const bound = edits < 1_000 ? 0.25 : 0.1;
const rows: readonly Row[] = [
  {
    what: `server's heap over ${edits} edits, a fifth of them broken texts, the rod asked for each time`,
    result: `${before.toFixed(1)} MB, half way ${middle.toFixed(1)} MB, then ${after.toFixed(1)} MB: ${growth < 0 ? "" : "+"}${(100 * growth).toFixed(1)} %`,
    aim: `at most ${100 * bound} % more`,
    holds: growth <= bound,
  },
  await blockByBlock(),
];
/** Each block of a long file changed once: what is kept of a block must not keep the text that it was read from. */
async function blockByBlock(): Promise<Row> {
  const blocks = smoke ? 40 : 300;
  // Weight without work: a comment as long as many blocks.
  let long = `${jobOf(smoke ? 800 : 5_000)}\n// ${"x".repeat(1_000_000)}\n`;
  const places = [...long.matchAll(/holds \d+ lb/g)].slice(0, blocks).map(({ index }) => index);
  if (places.length < blocks) throw new Error(`the long file has ${places.length} blocks to change, not ${blocks}`);
  const workspace = createWorkspace({ root: undefined });
  const sizes: number[] = [];
  for (const place of [undefined, ...places]) {
    // By its letters, so that no text is made of pieces of the one before.
    if (place !== undefined) long = `${long.slice(0, place)}holds 2${long.slice(place + 7)}`.split("").join("");
    workspace.set(job, long);
    workspace.build(job);
    if (place !== undefined && place !== places.at(-1) && place !== places[0]) continue;
    for (let again = 0; again < 3; again++) await collect!({ type: "major", execution: "async" });
    sizes.push(process.memoryUsage().heapUsed / 1024 / 1024);
  }
  const [, first, last] = sizes as [number, number, number];
  const more = (last - first) / first;
  return {
    what: `heap while each of ${blocks} blocks of a file of ${(long.length / 1e6).toFixed(1)} million characters is changed once`,
    result: `${first.toFixed(1)} MB after the first, ${last.toFixed(1)} MB after the last: ${more < 0 ? "" : "+"}${(100 * more).toFixed(1)} %`,
    aim: "at most 25 % more",
    holds: more <= 0.25,
  };
}

say(rows);
process.exit(rows.every(({ holds }) => holds !== false) ? 0 : 1);
