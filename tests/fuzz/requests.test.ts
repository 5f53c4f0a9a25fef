import { expect, test } from "vitest";
import { features } from "../../server/lsp/features.ts";
import { ownMessages } from "../../server/protocol.ts";
import type { Editor } from "../server/editor.ts";
import { inProcess } from "../server/editor.ts";
import { grammarText } from "../support/fuzz/grammar-text.ts";
import { mutated } from "../support/fuzz/mutate.ts";
import { casesOfRun, seedOfRun } from "../support/fuzz/random.ts";
import { type Asked, byAbility, ownRequests, placeIn } from "../support/fuzz/requests.ts";
import { caseOf, corpus, others, shortCorpus } from "../support/fuzz/run.ts";

const seed = seedOfRun();
const texts = Math.ceil(casesOfRun(4_000) / 40);
const folder = "file:///job";
const uri = `${folder}/main.scant`;

const abilities = features
  .flatMap(({ capabilities }) => Object.keys(capabilities))
  .filter((ability) => ability !== "workspace");

test("every ability of the server is tried here", () => {
  expect(abilities.filter((ability) => !byAbility.has(ability))).toEqual([]);
  for (const asked of ownRequests.keys()) expect(ownMessages.map(({ name }) => name)).toContain(asked);
});

test(`every request at places of ${texts} texts, seed ${seed}`, { timeout: 600_000 }, async () => {
  console.log(`fuzz, requests: ${texts} texts, seed ${seed}`);
  const editor = await opened();
  const makers = [...abilities.flatMap((ability) => byAbility.get(ability) ?? []), ...ownRequests.values()];
  const faults: unknown[] = [];
  let asked = 0;
  for (let index = 0; index < texts; index++) {
    const random = caseOf(seed, index);
    const text = random.oneIn(3)
      ? grammarText(random, 1 + random.below(4))
      : mutated(random, random.pick(random.oneIn(8) ? corpus : shortCorpus), corpus);
    editor.change(uri, whole(text), index + 2);
    for (const make of makers) {
      const [start, end] = [placeIn(random, text), placeIn(random, text)];
      for (const each of make({ uri, random, position: start, range: { start, end } })) {
        asked++;
        const fault = await faultOf(editor, each, whole(text));
        if (fault !== undefined) faults.push({ seed, index, ...each, fault, text });
      }
    }
    if (5 < faults.length) break;
  }
  console.log(`fuzz, requests: ${asked} were answered`);
  expect(faults).toEqual([]);
  expect(editor.errors).toEqual([]);
});

/** An editor sends whole characters only. */
function whole(text: string): string {
  return text.replace(/[\ud800-\udfff]/gu, "?");
}

async function opened(): Promise<Editor & { readonly errors: readonly string[] }> {
  const editor = await inProcess(
    { readDisk: async (asked) => others.get(asked.replace(`${folder}/`, "")) },
    { folders: [folder] },
  );
  const errors: string[] = [];
  editor.connection.onNotification("window/logMessage", ({ type, message }: { type: number; message: string }) => {
    if (type === 1) errors.push(message);
  });
  editor.open(uri, "inches\n");
  return { ...editor, errors };
}

const internalError = -32603;

/** What is wrong with the answer to a request; a request may be refused, in words, but not fail. */
async function faultOf(editor: Editor, { method, params }: Asked, text: string): Promise<string | undefined> {
  try {
    return faultOfAnswer(await editor.connection.sendRequest(method, params), text);
  } catch (error) {
    const { code, message } = error as { code?: number; message?: string };
    if (code === undefined || code === internalError) return String(error);
    return message === undefined || message === "" ? "refused without a word" : undefined;
  }
}

/** Every range in an answer must lie in the text, unless it is said to be of another file. */
function faultOfAnswer(answer: unknown, text: string): string | undefined {
  const lines = text.split(/\r\n|\r|\n/);
  const isIn = ({ line, character }: Place): boolean =>
    0 <= line && line < lines.length && 0 <= character && character <= lines[line]!.length;
  const look = (value: unknown): string | undefined => {
    if (typeof value !== "object" || value === null) return undefined;
    if ("uri" in value && value.uri !== uri) return undefined;
    if (isRange(value) && !(isIn(value.start) && isIn(value.end)))
      return `outside the text: ${JSON.stringify({ start: value.start, end: value.end })}`;
    for (const [key, inner] of Object.entries(value)) {
      if (key.includes("://") && key !== uri) continue;
      const fault = look(inner);
      if (fault !== undefined) return fault;
    }
    return undefined;
  };
  return look(answer);
}

interface Place {
  readonly line: number;
  readonly character: number;
}

function isRange(value: object): value is { readonly start: Place; readonly end: Place } {
  const isPlace = (one: unknown): boolean =>
    typeof one === "object" && one !== null && "line" in one && "character" in one;
  return "start" in value && "end" in value && isPlace(value.start) && isPlace(value.end);
}

test("a storm of changes and of requests called off: what is left is what a quiet server says", {
  timeout: 60_000,
}, async () => {
  const { CancellationTokenSource } = await import("vscode-languageserver-protocol");
  const editor = await opened();
  const last =
    others.size === 0 ? "" : corpus.find((text) => text.includes("print room") || text.includes("Print room"))!;
  const makers = [...abilities.flatMap((ability) => byAbility.get(ability) ?? []), ...ownRequests.values()];
  const answers: Promise<unknown>[] = [];
  const outcomes = { answered: 0, calledOff: 0, failed: [] as string[] };
  for (let version = 2; version < 120; version++) {
    const random = caseOf(seed, version);
    const text = whole(mutated(random, last, shortCorpus));
    editor.change(uri, text, version);
    const position = placeIn(random, text);
    for (const each of random.pick(makers)({ uri, random, position, range: { start: position, end: position } })) {
      const source = new CancellationTokenSource();
      answers.push(
        editor.connection.sendRequest(each.method, each.params, source.token).then(
          () => {
            outcomes.answered++;
          },
          (error: { code?: number }) => {
            if (error.code === internalError || error.code === undefined)
              outcomes.failed.push(`${each.method} ${error}`);
            else outcomes.calledOff++;
          },
        ),
      );
      if (!random.oneIn(4)) source.cancel();
    }
    // Now and then the server is let to its turn, in the middle of the storm.
    if (random.oneIn(10)) await new Promise((go) => setTimeout(go, 0));
  }
  editor.change(uri, last, 120);
  await Promise.all(answers);
  expect(outcomes.failed).toEqual([]);
  expect(outcomes.answered + outcomes.calledOff).toBe(answers.length);
  expect(outcomes.calledOff).toBeGreaterThan(10);
  const after = await editor.diagnosticsOf(uri, 120);
  const rod = await editor.connection.sendRequest<{ view: unknown }>("scantling/rod", { uri });

  const quiet = await opened();
  quiet.change(uri, last, 120);
  expect(after).toEqual(await quiet.diagnosticsOf(uri, 120));
  expect(rod.view).toEqual((await quiet.connection.sendRequest<{ view: unknown }>("scantling/rod", { uri })).view);
  expect(editor.errors).toEqual([]);
});
