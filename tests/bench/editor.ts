// npm run bench:editor: how long the server takes to answer an editor on a file of 1,000 lines, over a connection within
// this process, beside langium's bare parse of the same text in the same run. `--smoke` asks a few times only, to see that
// it still runs.
import { PassThrough } from "node:stream";
import { createConnection } from "vscode-languageserver/node";
import type { Hover, Location, MessageConnection } from "vscode-languageserver-protocol/node";
import { createMessageConnection, StreamMessageReader, StreamMessageWriter } from "vscode-languageserver-protocol/node";
import { TextDocument } from "vscode-languageserver-textdocument";
import { serve } from "../../server/connection.ts";
import { bareParse } from "../support/bare-parse.ts";
import { longFile } from "./thousand-lines.ts";

const smoke = process.argv.includes("--smoke");
const rounds = smoke ? 3 : 200;
const changes = smoke ? 2 : 60;
/** Milliseconds from one change's findings to the next change: few people type faster than five letters a second. */
const pause = smoke ? 0 : 150;
/** Milliseconds that an answer may take for an editor to seem at once, 19 times out of 20. */
const most = 50;

const uri = "file:///bench/bench.scant";
const text = longFile(smoke ? 200 : 1000);
const document = TextDocument.create(uri, "scantling", 1, text);

interface Question {
  readonly name: string;
  readonly method: string;
  /** Words that the cursor is put behind, at each place where they stand. */
  readonly at: readonly string[];
  /** Whether an answer says what it should. */
  readonly isAnswer: (answer: unknown) => boolean;
}

const questions: readonly Question[] = [
  {
    name: "hover",
    method: "textDocument/hover",
    at: ["\nbox", "\nfront", "sides pl", "slides", "box for draw", "overlay", "case ba"],
    isAnswer: (answer) => JSON.stringify((answer as Hover | null)?.contents ?? "").length > 60,
  },
  {
    name: "completion",
    method: "textDocument/completion",
    at: ["box for ", "sides ", "\n  slides ", "corners rabbet 3/8\n  ", "slab ", "case base-1 {\n  ", "overlay "],
    isAnswer: (answer) => ((answer as { items?: unknown[] } | null)?.items?.length ?? 0) > 0,
  },
  {
    name: "go to definition",
    method: "textDocument/definition",
    at: ["box for draw", "sides pl", "slides pla", "front for draw", "overlay li", "slab pl"],
    isAnswer: (answer) => (answer as Location[] | null)?.length === 1,
  },
];

const { connection, nextCheck } = await open();
const parsed = percentile(
  timesOf(smoke ? 2 : 25, () => void bareParse(text)),
  50,
);

console.log(`${text.split("\n").length} lines; langium's bare parse of them: ${parsed.toFixed(1)} ms (median)\n`);
console.log("answer to                          asked   median ms   p95 ms   p95 / parse");
let late = 0;
for (const question of questions) {
  const p95 = report(question.name, await unchanged(question));
  if (most < p95 && !smoke) late++;
  // The text has to be read anew first, and the findings' turn may come before the answer is sent: shown, not judged.
  report(`${question.name}, after a change`, await changed(question));
}
const check = await checkTimes();
console.log(
  `\nfrom a change to its findings, the wait for the next letter counted in: ${percentile(check, 50).toFixed(0)} ms (median)`,
);
console.log(
  `\n${questions.length - late} passed, ${late} failed: p95 on a file that lies still is to be at most ${most} ms`,
);
connection.dispose();
process.exitCode = late === 0 ? 0 : 1;

/** Prints a line; returns the p95. */
function report(name: string, times: readonly number[]): number {
  const p95 = percentile(times, 95);
  const figures = [
    String(times.length).padStart(5),
    percentile(times, 50).toFixed(1).padStart(11),
    p95.toFixed(1).padStart(8),
  ];
  console.log(`${name.padEnd(34)} ${figures.join(" ")} ${(p95 / parsed).toFixed(2).padStart(11)} ×`);
  return p95;
}

/** Asked about places all over a file that lies still. */
async function unchanged(question: Question): Promise<readonly number[]> {
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) times.push(await asked(question, round));
  return times;
}

/** Asked at once after each change of a size that all of the file must be derived anew for. */
async function changed(question: Question): Promise<readonly number[]> {
  const times: number[] = [];
  for (let round = 0; round < changes; round++) {
    const checked = change();
    times.push(await asked(question, round));
    await checked;
    await new Promise((go) => setTimeout(go, pause));
  }
  return times;
}

async function checkTimes(): Promise<readonly number[]> {
  const times: number[] = [];
  for (let round = 0; round < (smoke ? 1 : 10); round++) {
    const start = performance.now();
    await change();
    times.push(performance.now() - start);
  }
  return times;
}

async function asked({ name, method, at, isAnswer }: Question, round: number): Promise<number> {
  const position = document.positionAt(placeOf(at, round));
  const start = performance.now();
  const answer = await connection.sendRequest(method, { textDocument: { uri }, position });
  const ms = performance.now() - start;
  if (!isAnswer(answer)) throw new Error(`no ${name} at ${position.line + 1}:${position.character + 1}`);
  return ms;
}

/** Behind one of the words, each time at another place of the file. */
function placeOf(words: readonly string[], round: number): number {
  const word = words[round % words.length]!;
  const places: number[] = [];
  for (let at = text.indexOf(word); 0 <= at; at = text.indexOf(word, at + 1)) places.push(at + word.length);
  const place = places[(round * 7) % places.length];
  if (place === undefined) throw new Error(`the bench's own text has no "${word}"`);
  return place;
}

/** Writes another size over the first, of as many letters; resolves when the file has been checked. */
function change(): Promise<void> {
  const version = document.version + 1;
  const start = document.positionAt(text.indexOf("45/64"));
  const end = { line: start.line, character: start.character + 5 };
  const edit = { range: { start, end }, text: version % 2 === 0 ? "46/64" : "45/64" };
  TextDocument.update(document, [edit], version);
  const checked = nextCheck(version);
  void connection.sendNotification("textDocument/didChange", {
    textDocument: { uri, version },
    contentChanges: [edit],
  });
  return checked;
}

interface Opened {
  readonly connection: MessageConnection;
  /** Resolves when the findings of a version are published. */
  readonly nextCheck: (version: number) => Promise<void>;
}

/** A server at one end, an editor that has opened the file at the other. */
async function open(): Promise<Opened> {
  const [toServer, toEditor] = [new PassThrough(), new PassThrough()];
  serve(createConnection(new StreamMessageReader(toServer), new StreamMessageWriter(toEditor)), {});
  const own = createMessageConnection(new StreamMessageReader(toEditor), new StreamMessageWriter(toServer));
  const waiting = new Map<number, () => void>();
  own.onNotification("textDocument/publishDiagnostics", ({ version }: { version?: number }) => {
    if (version !== undefined) waiting.get(version)?.();
  });
  own.listen();
  await own.sendRequest("initialize", {
    processId: null,
    rootUri: null,
    capabilities: { textDocument: { completion: { completionItem: { snippetSupport: true } } } },
    workspaceFolders: [],
  });
  await own.sendNotification("initialized", {});
  const checkOf = (version: number): Promise<void> => new Promise((resolve) => void waiting.set(version, resolve));
  const checked = checkOf(1);
  await own.sendNotification("textDocument/didOpen", {
    textDocument: { uri, languageId: "scantling", version: 1, text },
  });
  await checked;
  return { connection: own, nextCheck: checkOf };
}

function timesOf(count: number, run: () => void): readonly number[] {
  return Array.from({ length: count }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  });
}

function percentile(times: readonly number[], percent: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.ceil((percent / 100) * sorted.length) - 1)] ?? 0;
}
