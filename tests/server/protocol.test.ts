import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import type { ListDocument } from "../../language/view/types.ts";
import type { DrawingsAnswer, RodResult } from "../../server/protocol.ts";
import * as protocol from "../../server/protocol.ts";
import { ownMessages } from "../../server/protocol.ts";
import { inProcess } from "./editor.ts";
import { fits, job, rack } from "./texts.ts";

const root = fileURLToPath(new URL("../..", import.meta.url));
const file = "file:///shop/drawer.scant";

/** The messages as they stand: whoever changes one must change this table, and with it every client. */
test("the messages are those of the table", () => {
  const table = ownMessages.map(({ name, kind, from }) => `${from} ${kind} ${name}`);
  expect(table).toEqual([
    "server notification scantling/rodChanged",
    "client request scantling/rod",
    "client request scantling/cutList",
    "client request scantling/list",
    "client request scantling/plan",
    "client request scantling/drawings",
    "client request scantling/bench",
    "server notification scantling/planSearched",
    "client request scantling/papers",
    "client request scantling/recordCut",
    "client request scantling/keepOffcuts",
    "server request scantling/readFile",
    "server request scantling/buildFiles",
  ]);
});

test("the extension takes its messages from the table, and knows no others", () => {
  const names = ownMessages.map((message) => message.name);
  const sources = sourcesIn(join(root, "extension")).map((path) => readFileSync(path, "utf8"));
  expect(sources.some((text) => text.includes("/server/protocol.ts"))).toBe(true);
  const byHand = sources.flatMap((text) => [...text.matchAll(/"(scantling\/[a-zA-Z]+)"/g)].map(([, name]) => name));
  for (const name of byHand) expect(names).toContain(name);
});

test("the extension answers every request of the server's, and listens to all that it tells", () => {
  const text = sourcesIn(join(root, "extension"))
    .map((path) => readFileSync(path, "utf8"))
    .join("\n");
  const heard = [...text.matchAll(/onRequest\(\s*(\w+),|createListeners<\w+>\(client, (\w+)\)/g)].map(
    ([, asked, told]) => asked ?? told,
  );
  const named = new Map<unknown, string>(Object.entries(protocol).map(([key, value]) => [value, key]));
  const fromServer = ownMessages.filter(({ from }) => from === "server").map(({ name }) => named.get(name));
  expect(heard.sort()).toEqual(fromServer.sort());
});

test("the server answers every request of the table, and null for a file that is not there", async () => {
  const editor = await inProcess({});
  const requests = ownMessages.filter(({ kind, from }) => kind === "request" && from === "client");
  expect(requests.length).toBeGreaterThan(0);
  const params = { uri: file, parts: [], kinds: [], seconds: 0 };
  for (const { name } of requests) expect(await editor.connection.sendRequest(name, params)).toBeNull();
});

test("the rod is announced, given, and never older than announced", async () => {
  const editor = await inProcess({});
  editor.open(file, fits);
  await editor.until("the rod", () => editor.rods.length > 0);
  const first = await rod(editor.connection.sendRequest("scantling/rod", { uri: file }));
  expect(first?.stale).toBe(false);
  expect(first?.version).toBe(editor.rods.at(-1)?.version);
  expect(first?.view.batches[0]?.rows.length).toBeGreaterThan(0);

  editor.change(file, fits.replace("high 6", "high 7"), 2);
  const second = await rod(editor.connection.sendRequest("scantling/rod", { uri: file }));
  await editor.until("the second", () => editor.rods.length > 1);
  // Asked before the wait of the change was over: what was typed counts all the same.
  expect(second?.version).toBe(editor.rods.at(-1)?.version);
  expect(JSON.stringify(second?.view)).not.toBe(JSON.stringify(first?.view));
});

test("the cut list is given under the names it takes beside the build file", async () => {
  const editor = await inProcess({});
  editor.open("file:///shop/my%20drawer.scant", fits);
  const list = await editor.connection.sendRequest<{ files: { name: string; text: string }[] }>("scantling/cutList", {
    uri: "file:///shop/my%20drawer.scant",
  });
  expect(list.files.map((each) => each.name)).toEqual(["my drawer.cutlist.csv", "my drawer.cutlist.md"]);
  expect(list.files[0]?.text).toMatch(/^mark,quantity,part.*\r\n/);
  expect(list.files[1]?.text).toContain("|");
});

test("the list for programs holds the parts, and the findings with their places", async () => {
  const editor = await inProcess({});
  editor.open(file, fits.replace("high 6", "high 1"));
  const list = await editor.connection.sendRequest<ListDocument>("scantling/list", { uri: file });
  expect(list.schema).toBe("scantling/list/1");
  expect(list.parts.map(({ name }) => name)).toContain("side");
  expect(list.findings.filter(({ severity }) => severity === "error").length).toBeGreaterThan(0);
  expect(list.findings.every((finding) => finding.file === file && 0 < finding.line)).toBe(true);
});

test("the drawings are named, and the one that is wanted is given", async () => {
  const editor = await inProcess({});
  editor.open(file, fits);
  const ask = (id?: string) => editor.connection.sendRequest<DrawingsAnswer>("scantling/drawings", { uri: file, id });
  const first = await ask();
  expect(first.titles.length).toBeGreaterThan(0);
  expect(first.drawing?.id).toBe(first.titles[0]?.id);
  const last = await ask(first.titles.at(-1)?.id);
  expect(last.drawing?.id).toBe(first.titles.at(-1)?.id);
  expect(last.drawing?.svg).toMatch(/^<svg /);
  expect((await ask("nothing of the kind")).drawing).toEqual(first.drawing);
  editor.change(file, "inches", 2);
  expect(await ask()).toEqual({ titles: [], drawing: null });
});

test("a file that the server cannot read is asked of the editor, and only once while it is missing", async () => {
  const asked: string[] = [];
  const readFile = (uri: string): string | null => {
    asked.push(uri);
    return uri.endsWith("/rack.scant") ? rack : null;
  };
  const far = "memfs:/shop/drawer.scant";
  const editor = await inProcess({ readDisk: neverRead }, { folders: ["memfs:/shop"], readFile });
  editor.open(far, job);
  expect(await editor.diagnosticsOf(far, 1)).toEqual([]);
  expect(asked).toEqual(["memfs:/shop/rack.scant"]);

  editor.change(far, job.replace("rack.scant", "shelf.scant"), 2);
  expect((await editor.diagnosticsOf(far, 2)).map((one) => one.code)).toContain("use/missing");
  editor.change(far, `${job.replace("rack.scant", "shelf.scant")}\n`, 3);
  await editor.diagnosticsOf(far, 3);
  expect(asked.filter((uri) => uri.endsWith("shelf.scant"))).toHaveLength(1);
});

test("an editor that does not know how to read files still gets the findings", async () => {
  const far = "memfs:/shop/drawer.scant";
  const editor = await inProcess({}, { folders: ["memfs:/shop"] });
  editor.open(far, job);
  expect((await editor.diagnosticsOf(far, 1)).map((one) => one.code)).toContain("use/missing");
});

test("what is asked of a file that is not open is answered from disk", async () => {
  const editor = await inProcess({ readDisk: async (uri) => (uri === file ? fits : undefined) });
  const answer = await rod(editor.connection.sendRequest("scantling/rod", { uri: file }));
  expect(answer?.view.pieces).toBe(5);
  expect(answer?.stale).toBe(false);
});

function rod(answer: Promise<unknown>): Promise<RodResult> {
  return answer as Promise<RodResult>;
}

async function neverRead(): Promise<undefined> {
  throw new Error("asked to read what is not on this machine");
}

function sourcesIn(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(folder, name));
}
