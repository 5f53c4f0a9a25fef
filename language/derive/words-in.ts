import { oncePer } from "../core/once-per.ts";
import type { Word } from "../core/span.ts";

/** The words of a block, but for those that say which property it is. */
export interface WordsIn {
  /** Wherever they stand: more than the names in it, never less. */
  readonly said: ReadonlySet<string>;
  /** Those that stand where a name is used, first words of readings among them; the name that it gives itself is none. */
  readonly used: ReadonlySet<string>;
}

interface Gathered {
  readonly said: Set<string>;
  readonly used: Set<string>;
}

/** A block that did not change says what it said before: each is gone through once. */
export const wordsIn = oncePer((block: object): WordsIn => {
  const words: Gathered = { said: new Set(), used: new Set() };
  gather(block, words, true);
  return words;
});

/** Goes through a block, its own lists and what is in them. Inside a word nothing is used a second time. */
function gather(value: object, words: Gathered, uses: boolean): void {
  if (Array.isArray(value)) {
    for (const item of value) if (isObject(item)) gather(item, words, uses);
    return;
  }
  for (const key of Object.keys(value)) {
    const inner: unknown = (value as Readonly<Record<string, unknown>>)[key];
    if (key === "text" && typeof inner === "string") words.said.add(inner);
    if (!isObject(inner) || passedOver.has(key)) continue;
    const isUse = uses && !ofOtherThings.has(key);
    if (key === "path" && isUse) words.used.add((inner as readonly Word[])[0]?.text ?? "");
    const isWord = "text" in inner && "span" in inner && !("value" in inner);
    if (isWord && isUse && !isGiven(key, value)) words.used.add((inner as Word).text);
    gather(inner, words, isUse && !isWord && key !== "path");
  }
}

function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}

/** Places, and words of the language that hold no name. */
const passedOver = new Set(["span", "head", "open", "key"]);

/** Findings and allowances speak of other things than names. */
const ofOtherThings = new Set(["findings", "allows", "uses"]);

/** The name of a block is given there; anywhere else a word is a use: slides, hinges and screws of a box, front or pocket. */
function isGiven(key: string, owner: object): boolean {
  return key === "name" && ("kind" in owner || !("length" in owner || "count" in owner));
}
