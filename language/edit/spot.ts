import type { BlockWord } from "../core/vocabulary.ts";
import { propertiesOf } from "../core/vocabulary.ts";
import type { TextToken } from "../syntax/text-tokens.ts";
import type { Following } from "./following.ts";
import { following } from "./following.ts";
import { readForm } from "./forms.ts";
import type { Outline, OutlineBlock, OutlineItem } from "./outline.ts";
import { blockAt, tokenBefore } from "./outline.ts";
import { cutWords, layoutWords, statements } from "./statements.ts";

/** A place where something is being typed, and what stands before it. */
export interface Spot {
  /** The word that is being typed, the letters behind the cursor with it; of no length between two words. */
  readonly word: { readonly start: number; readonly end: number; readonly text: string };
  /** The innermost block that the place is in. */
  readonly block: OutlineBlock | undefined;
  /** The first word of the statement or property that may go on here; `undefined` where nothing goes on. */
  readonly key: { readonly text: string } | undefined;
  /** The words behind that one, as far as the place. */
  readonly said: readonly TextToken[];
  /** The last word before the place, in whatever statement. */
  readonly last: TextToken | undefined;
}

/** What is being typed at an offset; `undefined` inside comments and quoted texts. */
export function spotAt(outline: Outline, offset: number): Spot | undefined {
  const { tokens } = outline;
  const at = tokenBefore(outline, offset);
  const touching = tokens[at];
  const inside = touching !== undefined && offset <= touching.end;
  if (inside && isClosedTo(touching, offset)) return undefined;
  const isWord = inside && isTyped(touching, offset);
  const word = isWord ? touching : { start: offset, end: offset, text: "" };
  let before = isWord ? at - 1 : at;
  while (0 <= before && tokens[before]!.kind === "comment") before--;
  const block = blockAt(outline, word.start);
  const key = block?.word === "cut" ? cutKey(outline, block, before) : keyBefore(outline, block, before);
  return {
    word,
    block,
    key: key === undefined ? undefined : tokens[key],
    said: key === undefined ? [] : tokens.slice(key + 1, before + 1).filter((token) => token.kind !== "comment"),
    last: tokens[before],
  };
}

/** Whether the cursor is in or right behind a word that could still be changed. A sign is done once it is typed. */
function isTyped({ kind, text, end }: TextToken, offset: number): boolean {
  if (kind === "word" || kind === "name" || kind === "other") return true;
  if (kind === "unit") return /^[a-z]/.test(text);
  // Behind `13 3/4` the number may go on; between its figures nothing is proposed.
  return kind === "number" && (offset === end || !/\s/.test(text));
}

function isClosedTo({ kind, text, start, end }: TextToken, offset: number): boolean {
  if (kind === "comment") return text.startsWith("//") || offset < end || !text.endsWith("*/");
  return kind === "text" && start < offset && !(offset === end && 1 < text.length && text.endsWith('"'));
}

/** The last statement or property of the block that begins before the place and has not been closed by a bracket. */
function keyBefore({ items, tokens }: Outline, block: OutlineBlock | undefined, before: number): number | undefined {
  const item = (block?.items ?? items).findLast((one: OutlineItem) => one.key <= before);
  if (item === undefined) return undefined;
  if (item.block !== undefined && item.block.open <= before) return undefined;
  return tokens[item.key]!.kind === "word" ? item.key : undefined;
}

/** A record of a cut begins at the beginning of its line, or where one before it on the line is whole. */
function cutKey({ tokens }: Outline, block: OutlineBlock, before: number): number | undefined {
  const starts: number[] = [];
  for (let at = before; block.open < at; at--) {
    const token = tokens[at]!;
    if (token.kind === "word" && Object.hasOwn(cutWords, token.text)) starts.unshift(at);
    if (tokens[at - 1] === undefined || tokens[at - 1]!.endLine < token.line || at - 1 === block.open) break;
  }
  const said = (from: number): readonly TextToken[] =>
    tokens.slice(from + 1, before + 1).filter((token) => token.kind !== "comment");
  return starts.findLast((start) => {
    const { next, ended } = followingAll(cutWords[tokens[start]!.text]!.forms, said(start));
    return ended || 0 < next.length;
  });
}

/** The forms of what goes on at a spot; none where nothing goes on, or where nothing is known of it. */
export function formsAt({ block, key }: Spot): readonly string[] {
  if (key === undefined) return [];
  const word = key.text;
  const of = (table: Readonly<Record<string, { readonly forms: readonly string[] }>>): readonly string[] =>
    Object.hasOwn(table, word) ? table[word]!.forms : [];
  if (block === undefined || word === "allow") return of(statements);
  if (block.word === "cut") return of(cutWords);
  const property = isLaidOut(block) ? of(layoutWords) : [];
  if (block.word === undefined || block.word === "across" || block.word === "down") return property;
  const form = propertiesOf(block.word).get(word)?.form;
  return form === undefined ? property : [form];
}

/** What can come next at a spot, by all of its forms together. */
export function followingAt(spot: Spot): Following {
  return followingAll(formsAt(spot), spot.said);
}

function followingAll(forms: readonly string[], said: readonly TextToken[]): Following {
  const all = forms.map((form) => following(readForm(form).rest, said));
  const ended = all.some((one) => one.ended);
  // Two forms that begin alike say the same word next.
  const next = all.flatMap((one) => one.next);
  const once = next.filter(
    (one, index) => next.findIndex(({ leaf }) => leaf.text === one.leaf.text && leaf.from === one.leaf.from) === index,
  );
  return { ended, next: once.map((one) => ({ ...one, must: !ended })) };
}

/** Whether openings are laid out in a block. */
export function isLaidOut({ word }: OutlineBlock): boolean {
  return word !== undefined && ["case", "rear", "face frame", "across", "down"].includes(word);
}

/** The properties that a block takes; an opening of a layout takes its width and height from there. */
export function takenBy(block: OutlineBlock): readonly string[] {
  const { word, parent } = block;
  if (word === undefined || word === "across" || word === "down" || word === "cut") return [];
  if (word === "opening" && parent !== undefined) return ["deep"];
  return [...propertiesOf(word as BlockWord).keys()];
}

/** The names in the head of a block: the openings that a box is for, or its own name. */
export function headNames({ tokens }: Outline, block: Pick<OutlineBlock, "head" | "open">): readonly string[] {
  const head = tokens.slice(block.head + 1, block.open).filter((token) => token.kind !== "comment");
  const like = head.findIndex((token) => token.text === "like" && token.kind === "word");
  return (like < 0 ? head : head.slice(0, like)).flatMap((token) => (token.kind === "name" ? [token.text] : []));
}
