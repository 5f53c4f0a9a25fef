import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { buildFiles } from "../build-files.ts";
import { type Depth, faultsOf, workspaceWith } from "./judge.ts";
import { type Random, seeded } from "./random.ts";
import { shrunk } from "./shrink.ts";

/** Texts that were once borne badly. Each is `{ "found": what it did, "text": the text }`, since a text may hold anything. */
const kept = fileURLToPath(new URL("../../fixtures/fuzz/", import.meta.url));

/** Every build file of the project, and those that the others use, by their names. */
const files = buildFiles();
export const corpus: readonly string[] = files.map(({ text }) => text);
/** The short ones: most of what can go wrong needs little text. */
export const shortCorpus: readonly string[] = corpus.filter((text) => text.length < 900);
export const others: ReadonlyMap<string, string> = new Map(
  files
    .filter(({ name }) => name.endsWith("/rack.scant") || name.endsWith("/shop.scant"))
    .map(({ name, text }) => [name.slice(name.lastIndexOf("/") + 1), text]),
);

/** What one text did wrong, made as small as it will go. */
export interface Failure {
  readonly seed: number;
  readonly index: number;
  readonly faults: readonly string[];
  readonly text: string;
}

/**
 * Makes texts and judges each; stops at the fifth that is borne badly. `SCANTLING_KEEP=1` writes those down as fixtures.
 * Every case is made from the seed and its own count alone, so that one can be looked at without those before it.
 */
export function fuzz(seed: number, count: number, make: (random: Random) => string): readonly Failure[] {
  const workspace = workspaceWith(others);
  const failures: Failure[] = [];
  for (let index = 0; index < count && failures.length < 5; index++) {
    const text = make(caseOf(seed, index));
    const depth: Depth = index % 50 === 0 ? "all" : index % 3 === 0 ? "format" : "usual";
    if (faultsOf(text, workspace, depth).length === 0) continue;
    const failure = failureOf({ seed, index, text });
    failures.push(failure);
    if (process.env["SCANTLING_KEEP"] === "1") keep(failure);
  }
  return failures;
}

/** The numbers that one case is made of. */
export function caseOf(seed: number, index: number): Random {
  return seeded(Math.imul(seed, 1_000_003) + index);
}

function failureOf({ seed, index, text }: { seed: number; index: number; text: string }): Failure {
  const judge = (of: string): readonly string[] => faultsOf(of, workspaceWith(others), "all");
  const small = shrunk(text, (less) => 0 < judge(less).length);
  return { seed, index, text: small, faults: judge(small) };
}

function keep({ seed, index, text, faults }: Failure): void {
  mkdirSync(kept, { recursive: true });
  const found = (faults[0] ?? "something that the texts before it had a part in").split("\n")[0];
  writeFileSync(`${kept}${seed}-${index}.json`, `${JSON.stringify({ found, text }, undefined, 2)}\n`);
}

export function keptTexts(): readonly { readonly name: string; readonly text: string }[] {
  return readdirSync(kept)
    .filter((name) => name.endsWith(".json"))
    .map((name) => ({ name, text: (JSON.parse(readFileSync(kept + name, "utf8")) as { text: string }).text }));
}
