// A job of ten thousand parts over forty files: that list, plan and papers come to an end, how long each takes, and how
// soon a plan that is under way can be called off. `--smoke` for three files.
import { spawnSync } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { CancellationTokenSource } from "vscode-languageserver-protocol/node";
import { benchFolder, served, shipped } from "./programs.ts";
import { atMost, type Row, say, smoke } from "./row.ts";
import { caseText, shopText } from "./texts.ts";

const files = smoke ? 3 : 40;
const casesInEach = smoke ? 2 : 6;
const seconds = smoke ? 1 : 5;

const folder = benchFolder();
const [server, commandLine] = [await shipped("server/main.ts", folder), await shipped("server/cli/main.ts", folder)];
const text = writeJob();
const list = cli("list", "job-0.scant", "--json");
const parts = (JSON.parse(list.out) as { parts: readonly { quantity: number }[] }).parts.reduce(
  (sum, { quantity }) => sum + quantity,
  0,
);
const plan = cli("plan", "job-0.scant", "--seconds", String(seconds));
mkdirSync(join(folder, "papers"));
const papers = cli("papers", "job-0.scant", "-o", "papers", "--only", "packet,labels,lists");
const planning = await calledOff();

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
    what: `${what}: a plan asked of the server tells how far it is`,
    result: `${planning.told} times until it was called off`,
    aim: "at least once",
    holds: 0 < planning.told,
  },
  atMost(`${what}: from calling it off to the server being free`, planning.ms, 1_000, "ms"),
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

function cli(...words: readonly string[]): { readonly out: string; readonly ms: number } {
  const began = performance.now();
  const { status, stdout, stderr } = spawnSync(process.execPath, [commandLine, ...words], {
    cwd: folder,
    encoding: "utf8",
    maxBuffer: 1 << 30,
  });
  if (status !== 0) throw new Error(`${words.join(" ")} ended in ${status}: ${stderr.slice(0, 2_000)}`);
  return { out: stdout, ms: performance.now() - began };
}

/** Asks the server for a plan that would be searched for minutes, and calls it off after some seconds. */
async function calledOff(): Promise<{ readonly ms: number; readonly told: number }> {
  const editor = await served(server, pathToFileURL(folder).href);
  const uri = pathToFileURL(join(folder, "job-0.scant")).href;
  let told = 0;
  editor.connection.onProgress({ __: [undefined, undefined], _pr: undefined } as never, "far", () => {
    told++;
  });
  const found = editor.findings(uri, 1);
  editor.open(uri, text);
  await found;
  const source = new CancellationTokenSource();
  const params = { uri, seconds: 600, keepBest: false, workDoneToken: "far" };
  const answer = editor.connection.sendRequest("scantling/plan", params, source.token).then(
    () => "answered",
    () => "called off",
  );
  await new Promise((go) => setTimeout(go, 1_000 * seconds));
  while (told === 0) await new Promise((go) => setTimeout(go, 50));
  const began = performance.now();
  source.cancel();
  if ((await answer) !== "called off") throw new Error("the plan was answered though it was called off");
  const ms = performance.now() - began;
  editor.end();
  return { ms, told };
}
