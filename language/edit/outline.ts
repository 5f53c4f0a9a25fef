import type { BlockWord } from "../core/vocabulary.ts";
import { propertiesOf, vocabulary } from "../core/vocabulary.ts";
import type { TextToken } from "../syntax/text-tokens.ts";
import { textTokens } from "../syntax/text-tokens.ts";

/** What a pair of curly brackets holds; `undefined` where nothing before it says so. */
export type OutlineWord = BlockWord | "across" | "down" | "cut" | undefined;

/** A statement or a property: from its first word to the token behind its last one. Both count tokens. */
export interface OutlineItem {
  readonly key: number;
  end: number;
  block: OutlineBlock | undefined;
}

/** A pair of curly brackets with its head. Counts tokens; `close` is the first token behind what it holds. */
export interface OutlineBlock {
  readonly word: OutlineWord;
  readonly head: number;
  readonly open: number;
  close: number;
  closed: boolean;
  readonly parent: OutlineBlock | undefined;
  readonly items: OutlineItem[];
}

/** How a text is divided, found without its grammar, so that half a text is divided as its maker sees it. */
export interface Outline {
  readonly text: string;
  readonly tokens: readonly TextToken[];
  /** The statements of the file. */
  readonly items: readonly OutlineItem[];
}

/** The division of any text; never throws. */
export function outlineOf(text: string): Outline {
  const tokens = textTokens(text);
  const walk: Walk = { tokens, top: [], open: undefined, item: undefined, before: -1 };
  tokens.forEach((token, index) => {
    if (token.kind === "comment") return;
    if (token.begins) while (walk.open !== undefined) closeBlock(walk, index);
    take(walk, token, index);
    walk.before = index;
  });
  while (walk.open !== undefined) closeBlock(walk, tokens.length);
  return { text, tokens, items: walk.top };
}

interface Walk {
  readonly tokens: readonly TextToken[];
  readonly top: OutlineItem[];
  open: OutlineBlock | undefined;
  item: OutlineItem | undefined;
  /** The last token that is no comment. */
  before: number;
}

function take(walk: Walk, token: TextToken, index: number): void {
  if (token.text === "{") {
    openBlock(walk, index);
  } else if (token.text === "}") {
    if (walk.open === undefined) return;
    walk.open.closed = true;
    closeBlock(walk, index);
    if (walk.item !== undefined) walk.item.end = index + 1;
    walk.item = undefined;
  } else if (isKey(walk, token, index)) {
    walk.item = { key: index, end: index + 1, block: undefined };
    (walk.open?.items ?? walk.top).push(walk.item);
  } else if (walk.item !== undefined) {
    walk.item.end = index + 1;
  }
}

function openBlock(walk: Walk, index: number): void {
  const { item, open } = walk;
  const fresh = item?.block === undefined ? item : undefined;
  const key = fresh === undefined ? undefined : walk.tokens[fresh.key]!.text;
  const head = fresh?.key ?? index;
  const block: OutlineBlock = {
    word: wordOf(key),
    head,
    open: index,
    close: index,
    closed: false,
    parent: open,
    items: [],
  };
  if (fresh === undefined) (open?.items ?? walk.top).push({ key: index, end: index + 1, block });
  else fresh.block = block;
  walk.open = block;
  walk.item = undefined;
}

function closeBlock(walk: Walk, index: number): void {
  const block = walk.open!;
  block.close = index;
  walk.open = block.parent;
  const home = block.parent?.items ?? walk.top;
  walk.item = home.at(-1);
  if (walk.item !== undefined) walk.item.end = Math.max(walk.item.end, index);
}

function wordOf(key: string | undefined): OutlineWord {
  if (key === "frame") return "face frame";
  if (key === "false") return "front";
  if (key === "across" || key === "down" || key === "cut") return key;
  return key !== undefined && Object.hasOwn(vocabulary, key) ? (key as BlockWord) : undefined;
}

function isKey(walk: Walk, token: TextToken, index: number): boolean {
  if (token.kind !== "word") return false;
  if (walk.open === undefined) return statementWords.has(token.text) && walk.tokens[walk.before]?.text !== "false";
  const { word } = walk.open;
  if (word === "cut") {
    const next = walk.tokens[index + 1];
    return token.text === "offcut" ? next?.text === "of" : owners.has(token.text) && next?.kind === "name";
  }
  if (token.text === "allow") return true;
  if (word === undefined) return anyProperty.has(token.text);
  if (laidOut.has(word) && layoutWords.has(token.text)) return true;
  if (word === "across" || word === "down") return false;
  return propertiesOf(word).has(token.text) && !belongsBefore(walk, token);
}

/** Whether a word that could begin a property goes on with the one before: `kick 4 high 3 deep`, `on front, back`. */
function belongsBefore({ tokens, item, before }: Walk, { text }: TextToken): boolean {
  if (item === undefined || item.block !== undefined) return false;
  const last = tokens[before]?.text ?? "";
  if (tokens[before]?.kind === "word" && (leads.has(last) || (before === item.key && firsts.has(last)))) return true;
  const key = tokens[item.key]!.text;
  const said = tokens.slice(item.key + 1, item.end).map((token) => token.text);
  if (key === "kick") return text === "high" || text === "deep" ? !said.includes(text) && 0 < said.length : false;
  if (key === "frame") return text === "wide" && 1 < said.length && !said.includes("wide");
  if (key === "openings") return ["rails", "stiles", "partitions"].includes(text) && !said.includes(text);
  return last === "," && said.includes("on");
}

/** Words behind which a word goes on, wherever they stand: `ends over sides`, `in groove`. */
const leads = new Set(["on", "over", "flush", "pocket", "half-blind", "in"]);
/** Words behind which one goes on where they begin a property: `mid rails`, `joint mitred`; but `hinged top  pulls 1`. */
const firsts = new Set(["mid", "top", "joint", "hinged", "corners", "grain"]);

/** Blocks in which openings are laid out. */
const laidOut = new Set<OutlineWord>(["case", "rear", "face frame", "across", "down"]);
const layoutWords = new Set(["across", "down", "rail", "stile", "partition", "opening", "openings"]);
const owners = new Set(["box", "front", "door", "shelf", "case", "part", "sheet", "board"]);
const anyProperty = new Set(Object.values(vocabulary).flatMap(({ properties }) => Object.keys(properties)));

export const statementWords: ReadonlySet<string> = new Set([
  ...["project", "inches", "millimetres", "read", "use", "let", "allow", "lift", "offcut"],
  ...["sheet", "board", "edging", "slides", "hinges", "screws", "case", "opening", "part"],
  ...["saw", "grooves", "pockets", "place", "times", "box", "front", "door", "false", "shelf", "cut"],
]);

/** The innermost block whose brackets hold the offset. */
export function blockAt(outline: Outline, offset: number): OutlineBlock | undefined {
  const inside = (items: readonly OutlineItem[]): OutlineBlock | undefined => {
    for (const { block } of items) {
      if (block === undefined || offset < outline.tokens[block.open]!.end) continue;
      if (endOf(outline, block) < offset) continue;
      return inside(block.items) ?? block;
    }
    return undefined;
  };
  return inside(outline.items);
}

/** Where what a block holds ends: at its bracket, or where the next statement begins. */
function endOf({ tokens, text }: Outline, block: OutlineBlock): number {
  const close = tokens[block.close];
  if (close === undefined) return text.length;
  return block.closed ? close.start : close.start - 1;
}

/** Every block, outer ones first. */
export function blocksOf(outline: Outline): readonly OutlineBlock[] {
  const found: OutlineBlock[] = [];
  const visit = (items: readonly OutlineItem[]): void => {
    for (const { block } of items) {
      if (block === undefined) continue;
      found.push(block);
      visit(block.items);
    }
  };
  visit(outline.items);
  return found;
}

/** The token that the offset stands in or right behind, the one before it where two meet; an index. */
export function tokenBefore({ tokens }: Pick<Outline, "tokens">, offset: number): number {
  let [low, high] = [0, tokens.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (tokens[middle]!.start < offset) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
