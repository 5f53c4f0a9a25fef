import type { Finding } from "../../core/finding.ts";
import type { Span, Word } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import type { Check } from "../check.ts";
import { finding } from "../check.ts";
import { isSettled } from "../stock/used.ts";

/** A name that a build gives should be used by it. The shop's own file may name more. */
export const nameShouldBeUsed: Check = {
  codes: ["name/unused"],
  run: (context, model) => (isSettled(context, model) ? check(context) : []),
};

interface Given {
  readonly name: Word;
  readonly span: Span;
  readonly what: string;
}

function check({ design }: Context): readonly Finding[] {
  const given: readonly Given[] = [
    ...design.lets.map((one) => ({ ...one, what: "length" })),
    ...design.slides.map((one) => ({ name: one.name, span: one.span, what: "slide" })),
    ...design.hinges.map((one) => ({ name: one.name, span: one.span, what: "hinge" })),
    ...design.screws.map((one) => ({ name: one.name, span: one.span, what: "screw" })),
  ].filter(({ span }) => span.uri === design.uri);
  if (given.length === 0) return [];
  const used = wordsUsed(design);
  return given
    .filter(({ name }) => !used.has(name.text))
    .map(({ name, span, what }) =>
      finding({
        code: "name/unused",
        severity: "hint",
        span: name.span,
        message: `nothing uses the ${what} "${name.text}"`,
        reason: "What is described and not used is often meant to be, under another name.",
        remedy: "Take it out, or move it to the shop's own file.",
        fixes: [{ title: "Take it out", edits: [{ span, text: "" }], safe: false }],
      }),
    );
}

/** Every word of a design that stands where a name is used, first words of readings among them. */
function wordsUsed(design: Context["design"]): ReadonlySet<string> {
  const used = new Set<string>();
  const { shop, ...lists } = design;
  for (const [field, value] of [...Object.entries(lists), ...Object.entries(shop)]) {
    if (notNames.has(field)) continue;
    if (!Array.isArray(value)) gather(value, used);
    // A block that did not change uses what it used before.
    else for (const block of value) for (const word of usedIn(block)) used.add(word);
  }
  return used;
}

const known = new WeakMap<object, ReadonlySet<string>>();

function usedIn(block: object): ReadonlySet<string> {
  const words = known.get(block) ?? gather(block, new Set());
  known.set(block, words);
  return words;
}

function gather(value: unknown, used: Set<string>): ReadonlySet<string> {
  if (typeof value !== "object" || value === null) return used;
  if (Array.isArray(value)) {
    for (const item of value) gather(item, used);
    return used;
  }
  for (const [key, inner] of Object.entries(value)) {
    if (notNames.has(key)) continue;
    if (key === "path") used.add((inner as readonly Word[])[0]?.text ?? "");
    else if (isWord(inner)) noted(used, key, value, inner);
    else gather(inner, used);
  }
  return used;
}

/** Spans hold no names, and findings and allowances speak of other things. */
const notNames = new Set(["span", "head", "open", "findings", "allows", "uses", "key"]);

function isWord(value: unknown): value is Word {
  return typeof value === "object" && value !== null && "text" in value && "span" in value && !("value" in value);
}

/** The name of a block is given there; anywhere else a word is a use: slides, hinges and screws of a box, front or pocket. */
function noted(used: Set<string>, key: string, owner: object, word: Word): void {
  const isGiven = key === "name" && ("kind" in owner || !("length" in owner || "count" in owner));
  if (!isGiven) used.add(word.text);
}
