import type { Design, FillBlock, NamedBlock } from "../../core/design.ts";
import type { Edit } from "../../core/finding.ts";
import type { Word } from "../../core/span.ts";
import { holds } from "../../core/span.ts";
import type { Outline, OutlineBlock } from "../outline.ts";
import { outlineOf } from "../outline.ts";
import { spanOfTokens } from "../places.ts";
import type { Scene } from "../scene.ts";
import type { Asked, Offer } from "./action.ts";
import { marginOf } from "./inside.ts";

/** Writes into a block all that it takes over from the one that it is like, and takes the `like` away. */
export const expandLike: Offer = (asked) => {
  const { scene, start } = asked;
  const own = scene.designs.find((design) => design.uri === scene.uri);
  const found = own === undefined ? undefined : likableAt(own, scene.uri, start);
  const chain = found === undefined ? undefined : modelsOf(scene, found);
  if (found?.block.like === undefined || chain === undefined) return [];
  const taken = takenOver(asked, found.block, chain);
  if (taken === undefined) return [];
  const edits = [...withoutLike(scene, found.block), ...written(scene, found.block, taken)];
  return [{ title: `Write out what it takes over from ${found.block.like.text}`, kind: "inline", edits }];
};

type Likable = FillBlock | NamedBlock;

interface Found {
  readonly block: Likable;
  /** Every block that it could be like, in this file and those that it uses. */
  readonly all: (design: Design) => readonly Likable[];
}

const kinds: readonly Found["all"][] = [
  (design) => design.boxes,
  (design) => design.fronts,
  (design) => design.shelves,
  (design) => design.sheets,
  (design) => design.boards,
  (design) => design.edgings,
  (design) => design.slides,
  (design) => design.hinges,
  (design) => design.screws,
  (design) => design.openings,
  // What a case takes over of a face frame goes into its own: only a frameless one is plain.
  (design) => design.cases.filter(({ frame }) => frame === undefined),
];

function likableAt(own: Design, uri: string, at: number): Found | undefined {
  for (const all of kinds) {
    const block = all(own).find((one) => one.like !== undefined && holds(one.head, uri, at));
    if (block !== undefined) return { block, all };
  }
  return undefined;
}

/** The block that it is like, the one that that is like, and so on; `undefined` where one is missing or the way leads round. */
function modelsOf({ designs }: Scene, { block, all }: Found): readonly Likable[] | undefined {
  const candidates = designs.flatMap(all);
  const chain: Likable[] = [];
  for (let next: Word | undefined = block.like; next !== undefined; next = chain.at(-1)!.like) {
    const { text } = next;
    const model = candidates.find((one) => namesOf(one).includes(text));
    if (model === undefined || model === block || chain.includes(model)) return undefined;
    chain.push(model);
  }
  return chain;
}

function namesOf(block: Likable): readonly string[] {
  return "openings" in block ? block.openings.map(({ text }) => text) : [block.name.text];
}

/** The properties that the block does not have itself, as they are written; `undefined` where they would mean something else here. */
function takenOver({ scene, textOf }: Asked, block: Likable, chain: readonly Likable[]): readonly string[] | undefined {
  const own = outlineBlock(scene.outline, block);
  if (own === undefined || !own.closed) return undefined;
  const present = new Set(own.items.map(({ key }) => scene.outline.tokens[key]!.text));
  const taken: string[] = [];
  for (const model of chain) {
    const text = textOf(model.span.uri);
    const outline = text === undefined ? undefined : outlineOf(text);
    const from = outline === undefined ? undefined : outlineBlock(outline, model);
    if (outline === undefined || from === undefined || !isSameUnits(scene, model)) return undefined;
    const added = from.items.flatMap(({ key, end, block: inner }) => {
      const word = outline.tokens[key]!.text;
      if (present.has(word) || inner !== undefined || word === "allow") return [];
      return [{ word, text: outline.text.slice(outline.tokens[key]!.start, lastWord(outline, key, end)) }];
    });
    for (const { word } of added) present.add(word);
    taken.push(...added.map((one) => one.text));
  }
  return taken;
}

/** Where a property ends, without a comment behind it. */
function lastWord({ tokens }: Outline, key: number, end: number): number {
  return tokens.slice(key, end).findLast(({ kind }) => kind !== "comment")!.end;
}

function outlineBlock({ items, tokens }: Outline, { span }: Likable): OutlineBlock | undefined {
  return items.find(({ key }) => tokens[key]!.start === span.start)?.block;
}

function isSameUnits({ designs, uri }: Scene, { span }: Likable): boolean {
  const unitsOf = (of: string) => designs.find((design) => design.uri === of)?.units;
  return unitsOf(uri) === unitsOf(span.uri);
}

/** ` like plan-1`, with the blanks before it. */
function withoutLike({ outline, uri }: Scene, { like }: Likable): readonly Edit[] {
  const { tokens } = outline;
  const name = tokens.findIndex(({ start }) => start === like!.span.start);
  const [before, word, last] = [tokens[name - 2], tokens[name - 1], tokens[name]];
  if (before === undefined || word?.text !== "like" || last === undefined) return [];
  const span = { ...spanOfTokens(uri, word, last), start: before.end, line: before.endLine, column: before.endColumn };
  return [{ span, text: "" }];
}

function written(scene: Scene, block: Likable, lines: readonly string[]): readonly Edit[] {
  const { outline, text, uri } = scene;
  const own = outlineBlock(outline, block)!;
  const { tokens } = outline;
  const [last, close] = [tokens[own.close - 1]!, tokens[own.close]!];
  const margin = marginOf(text, tokens[own.head]!.start);
  const gap = { ...spanOfTokens(uri, last, close), start: last.end, line: last.endLine, column: last.endColumn };
  const span = { ...gap, end: close.start, endLine: close.line, endColumn: close.column };
  const body = lines.map((line) => `\n${margin}  ${line}`).join("");
  return lines.length === 0 ? [] : [{ span, text: `${body}\n${margin}` }];
}
