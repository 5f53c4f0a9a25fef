import type { BlockWord } from "../core/vocabulary.ts";
import { propertiesOf } from "../core/vocabulary.ts";
import { following } from "./following.ts";
import type { Form, Leaf } from "./forms.ts";
import { readForm } from "./forms.ts";
import type { Outline } from "./outline.ts";
import type { Spot } from "./spot.ts";
import { formsAt, spotAt } from "./spot.ts";
import { cutWords, layoutWords, shownForm, statements } from "./statements.ts";

/** One way to write what is being written, with its words as places in it. */
export interface Signature {
  readonly form: string;
  readonly means: string;
  readonly parts: readonly { readonly from: number; readonly to: number }[];
  /** The part that is to be written at the cursor; `undefined` where nothing more belongs to it. */
  readonly active: number | undefined;
}

export interface Signatures {
  readonly all: readonly Signature[];
  /** The one that fits what is written so far. */
  readonly active: number;
}

/** The ways to write the property or statement at an offset; `undefined` where none is being written. */
export function signaturesAt(outline: Outline, offset: number): Signatures | undefined {
  const spot = spotAt(outline, offset);
  if (spot?.key === undefined || isElsewhere(outline, spot)) return undefined;
  const all = formsAt(spot).map((form) => signatureOf(spot, form));
  if (all.length === 0) return undefined;
  const fits = all.findIndex(({ active }) => active !== undefined);
  // Behind a whole property the next one is what comes.
  if (fits < 0 && spot.word.text === "") return undefined;
  return { all, active: Math.max(0, fits) };
}

/** On a line of its own something new begins, unless what stands before it asks for more. */
function isElsewhere({ text }: Outline, { last, word }: Spot): boolean {
  return last !== undefined && /[\n\r]/.test(text.slice(last.end, word.start)) && last.text !== ",";
}

function signatureOf(spot: Spot, text: string): Signature {
  const form = readForm(text);
  const leaves = leavesOf(form.rest);
  const { next } = following(form.rest, spot.said);
  const at = next[0] === undefined ? -1 : leaves.findIndex((leaf) => isAt(leaf, next[0]!.leaf));
  const shown = shownForm(text);
  return {
    form: shown,
    means: meaningOf(spot),
    parts: placesIn(shown, leaves),
    active: at < 0 ? undefined : at,
  };
}

function isAt(a: Leaf, b: Leaf): boolean {
  return a.from === b.from && a.to === b.to;
}

/** Each word of a form once, in its order; one that stands for several choices is one. */
function leavesOf(form: Form): readonly Leaf[] {
  const all = gathered(form).toSorted((a, b) => a.from - b.from);
  return all.filter((leaf, index) => index === 0 || !isAt(leaf, all[index - 1]!));
}

function gathered(form: Form): readonly Leaf[] {
  switch (form.kind) {
    case "row":
      return form.items.flatMap(gathered);
    case "ways":
      return form.ways.flatMap(gathered);
    case "maybe":
    case "list":
      return gathered(form.of);
    default:
      return [form];
  }
}

/** The places of words in a form as it is shown, where some are shorter than they were. */
function placesIn(shown: string, leaves: readonly Leaf[]): Signature["parts"] {
  const words = [...shown.matchAll(/\{ \.\.\. \}|[[\]|,=]|[^\s[\]|,=]+/g)].filter(
    ({ 0: word }) => !/^[[\]|]$/.test(word),
  );
  // The first word is the key; what repeats (`, ...`) is none of the leaves.
  return leaves.map((_, index) => {
    const match = words[index + 1];
    return match === undefined ? { from: 0, to: 0 } : { from: match.index, to: match.index + match[0].length };
  });
}

function meaningOf({ block, key }: Spot): string {
  const word = key!.text;
  const entry =
    block === undefined || word === "allow"
      ? statements[word]
      : block.word === "cut"
        ? cutWords[word]
        : (propertyOf(block.word as BlockWord, word) ?? layoutWords[word]);
  const means = entry?.means ?? "";
  return `${means.charAt(0).toUpperCase()}${means.slice(1)}${means.endsWith(".") ? "" : "."}`;
}

function propertyOf(block: string | undefined, word: string): { readonly means: string } | undefined {
  if (block === undefined || block === "across" || block === "down") return undefined;
  return propertiesOf(block as BlockWord).get(word);
}
