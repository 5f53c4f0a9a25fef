// A job of ten thousand parts over forty files: that list, plan and papers come to an end, how long each takes and how much
// memory the papers, and how soon a plan and papers that are under way can be called off. `--smoke` for three files.
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { CancellationTokenSource } from "vscode-languageserver-protocol/node";
import type { Served } from "./programs.ts";
import { benchFolder, served, shippedCommandLine, shippedServer } from "./programs.ts";
import { atMost, type Row, say, smoke } from "./row.ts";
import { caseText, shopText } from "./texts.ts";

const files = smoke ? 3 : 40;
const casesInEach = smoke ? 2 : 6;
const seconds = smoke ? 1 : 5;

const folder = benchFolder();
const uri = pathToFileURL(join(folder, "job-0.scant")).href;
const [server, commandLine] = [await shippedServer(folder), await shippedCommandLine(folder)];
const text = writeJob();
const list = cli("list", "job-0.scant", "--json");
const parts = (JSON.parse(list.out) as { parts: readonly { quantity: number }[] }).parts.reduce(
  (sum, { quantity }) => sum + quantity,
  0,
);
const plan = cli("plan", "job-0.scant", "--seconds", String(seconds));
mkdirSync(join(folder, "papers"));
const papers = cli("papers", "job-0.scant", "-o", "papers", "--only", "packet,labels,lists");
mkdirSync(join(folder, "labels"));
const labels = cli("papers", "job-0.scant", "-o", "labels", "--only", "labels");
const editor = await opened();
const planning = await calledOff(editor);
const stages = await papersCalledOff(editor);
editor.end();

const what = `${parts} parts over ${files} files`;
const least = smoke ? 100 : 10_000;
const rows: readonly Row[] = [
  {
    what: `${what}: parts listed`,
    result: `${parts}, in ${(list.ms / 1000).toFixed(1)} s`,
    aim: `at least ${least}`,
    holds: least <= parts,
  },
  noted(`${what}: \`plan --seconds ${seconds}\``, plan.ms),
  noted(`${what}: packet, labels and lists written by \`papers\``, papers.ms),
  {
    what: `${what}: the most memory that took; labels alone`,
    result: `${papers.peak.toFixed(0)} MB; ${labels.peak.toFixed(0)} MB`,
    aim: "",
    holds: undefined,
  },
  {
    what: `${what}: a plan asked of the server tells how far it is`,
    result: `${planning.told} times until it was called off`,
    aim: "at least once",
    holds: 0 < planning.told,
  },
  atMost(`${what}: from calling it off to the server being free`, planning.ms, 1_000, "ms"),
  ...stages.map(({ stage, ms }) =>
    atMost(`${what}: the packet called off in the editor while ${stage}, until the server is free`, ms, 1_000, "ms"),
  ),
];
say(rows);
process.exit(0);

function noted(what: string, ms: number): Row {
  return { what, result: `finished in ${(ms / 1000).toFixed(1)} s`, aim: "finishes", holds: true };
}

function writeJob(): string {
  const bodies = Array.from({ length: files }, (_, file) =>
    Array.from({ length: casesInEach }, (_, one) => caseText(`f${file}-c${one}`)).join(""),
  );
  const uses = bodies.slice(1).map((_, index) => `use "job-${index + 1}.scant"\n`);
  const main = shopText + uses.join("") + bodies[0]!;
  writeFileSync(join(folder, "job-0.scant"), main);
  bodies.slice(1).forEach((body, index) => {
    writeFileSync(join(folder, `job-${index + 1}.scant`), `inches\n${body}`);
  });
  return main;
}

/** Runs the command line; the most memory that it took at any time, in MB. */
function cli(...words: readonly string[]): { readonly out: string; readonly ms: number; readonly peak: number } {
  const [note, tell] = [join(folder, "peak.txt"), join(folder, "tell-peak.cjs")];
  const told = `require("node:fs").writeFileSync(${JSON.stringify(note)}, String(process.resourceUsage().maxRSS))`;
  writeFileSync(tell, `process.on("exit", () => ${told});`);
  const began = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, ["--require", tell, commandLine, ...words], {
    cwd: folder,
    encoding: "utf8",
    maxBuffer: 1 << 30,
  });
  if (status !== 0) throw new Error(`${words.join(" ")} ended in ${status}: ${stderr.slice(0, 2_000)}`);
  return { out: stdout, ms: performance.now() - began, peak: Number(readFileSync(note, "utf8")) / 1024 };
}

/** A server with the job open and its findings told. */
async function opened(): Promise<Served> {
  const editor = await served(server, pathToFileURL(folder).href);
  const found = editor.findings(uri, 1);
  editor.open(uri, text);
  await found;
  return editor;
}

/** Hears what is said of a request by its token. */
function listen(editor: Served, token: string, hear: (message: string) => void): void {
  editor.connection.onProgress({ __: [undefined, undefined], _pr: undefined } as never, token, (value: unknown) =>
    hear((value as { readonly message?: string }).message ?? ""),
  );
}

/** Asks for something and calls it off once `when` is over; the milliseconds from then until the server answers anything. */
async function untilFree(
  editor: Served,
  request: readonly [method: string, params: object],
  when: Promise<void>,
): Promise<number> {
  const source = new CancellationTokenSource();
  const answer = editor.connection.sendRequest(...request, source.token).then(
    () => "answered",
    () => "called off",
  );
  await Promise.race([when, answer]);
  const began = performance.now();
  source.cancel();
  if ((await answer) !== "called off") throw new Error(`${request[0]} was answered though it was called off`);
  return performance.now() - began;
}

/** Asks the server for a plan that would be searched for minutes, and calls it off after some seconds. */
async function calledOff(editor: Served): Promise<{ readonly ms: number; readonly told: number }> {
  let told = 0;
  listen(editor, "far", () => {
    told++;
  });
  const some = async (): Promise<void> => {
    await new Promise((go) => setTimeout(go, 1_000 * seconds));
    while (told === 0) await new Promise((go) => setTimeout(go, 50));
  };
  const params = { uri, seconds: 600, keepBest: false, workDoneToken: "far" };
  return { ms: await untilFree(editor, ["scantling/plan", params], some()), told };
}

/** Asks for the packet again and again, and calls it off each time at another stage of its making; the longest of some. */
async function papersCalledOff(editor: Served): Promise<readonly { readonly stage: string; readonly ms: number }[]> {
  const stages: readonly (readonly [stage: string, isThere: (message: string) => boolean, waits: readonly number[]])[] =
    [
      ["its drawings are made", (message) => message.startsWith("drawings of"), smoke ? [0] : [0, 150, 400, 1_100]],
      ["its pages are written", (message) => message.startsWith("page "), smoke ? [0] : [0, 900]],
      ["its PDF is finished", (message) => /^page (\d+) of \1$/.test(message), [0]],
    ];
  const found: { stage: string; ms: number }[] = [];
  for (const [stage, isThere, waits] of stages) {
    const all: number[] = [];
    for (const wait of waits) {
      const token = `${stage} ${wait}`;
      const when = new Promise<void>((go) => {
        listen(editor, token, (message) => {
          if (isThere(message)) setTimeout(go, wait);
        });
      });
      const params = { uri, kinds: ["packet"], workDoneToken: token };
      all.push(await untilFree(editor, ["scantling/papers", params], when));
    }
    found.push({ stage, ms: Math.max(...all) });
  }
  return found;
}
