import type { LengthUnit } from "../core/length.ts";
import { inUnit, inUnits, parseCount } from "../core/length.ts";
import type { Span } from "../core/span.ts";
import type { BlockWord } from "../core/vocabulary.ts";
import { propertiesOf, vocabulary } from "../core/vocabulary.ts";
import { isTrouble } from "../derive/evaluate.ts";
import { explained, otherUnits, sizeText } from "./explain.ts";
import { aboutName } from "./hover-name.ts";
import { aboutHead, aboutProperty } from "./hover-property.ts";
import type { OutlineBlock, OutlineItem } from "./outline.ts";
import { blocksOf, tokenBefore } from "./outline.ts";
import { headOf, spanOfTokens } from "./places.ts";
import type { Scene } from "./scene.ts";
import { shareSizes } from "./shares.ts";
import type { Statement } from "./statements.ts";
import { cutWords, layoutWords, shownForm, statements } from "./statements.ts";

/** What is said of a place, in Markdown, and what it is said of. */
export interface Hover {
  readonly span: Span;
  readonly markdown: string;
}

/** What there is to say of the word at a place; `undefined` for blanks, comments and what says nothing. */
export function hoverAt(scene: Scene, offset: number): Hover | undefined {
  const index = touched(scene, offset);
  const token = index === undefined ? undefined : scene.outline.tokens[index];
  if (index === undefined || token === undefined) return undefined;
  const say = (markdown: string | undefined): Hover | undefined =>
    markdown === undefined || markdown === ""
      ? undefined
      : { span: spanOfTokens(scene.uri, token, token), markdown: withLegend(markdown) };
  const name = scene.names.at(scene.uri, token.start);
  const read = token.kind === "name" || token.kind === "word" ? pathAround(scene, index) : undefined;
  if (read !== undefined) return read;
  if (name !== undefined && name.span.start === token.start) return say(aboutName(scene, name));
  if (token.kind === "number") return say(aboutNumber(scene, index));
  if (token.kind !== "word") return undefined;
  return say(aboutShare(scene, token.start) ?? aboutWord(scene, index));
}

/** Says once what the sign behind a rounded size means. */
function withLegend(markdown: string): string {
  return /\d −(?= (×|in\b|mm\b)|\*\*)/.test(markdown)
    ? `${markdown}\n\n*−: a hair more than is shown; what is worked out goes on with the exact size.*`
    : markdown;
}

function touched({ outline }: Scene, offset: number): number | undefined {
  const { tokens } = outline;
  return [tokenBefore(outline, offset + 1), tokenBefore(outline, offset)].find((index) => {
    const token = tokens[index];
    return token !== undefined && token.kind !== "comment" && token.start <= offset && offset <= token.end;
  });
}

/** `tools.width` as a whole, wherever in it one points. */
function pathAround(scene: Scene, index: number): Hover | undefined {
  const { tokens } = scene.outline;
  const isDot = (at: number): boolean => tokens[at]?.text === "." && tokens[at]?.kind === "sign";
  let [from, to] = [index, index];
  while (isDot(from - 1) && 1 < from) from -= 2;
  while (isDot(to + 1) && tokens[to + 2] !== undefined) to += 2;
  if (from === to) return undefined;
  const words = tokens.slice(from, to + 1).filter((_, at) => at % 2 === 0);
  const path = words.map((word) => ({ text: word.text, span: spanOfTokens(scene.uri, word, word) }));
  const value = scene.context.lookUp(path);
  if (isTrouble(value)) return undefined;
  const text = path.map((word) => word.text).join(".");
  const head = `**${text}** ${sizeText(value.value, scene.reading)} (${otherUnits(value.value, scene.reading)})`;
  return {
    span: spanOfTokens(scene.uri, tokens[from]!, tokens[to]!),
    markdown: `${head}\n\n${explained(text, value, scene)}`,
  };
}

/** A number in the other units. Nothing where it counts something. */
function aboutNumber({ outline, context, uri, designs }: Scene, index: number): string | undefined {
  const { tokens } = outline;
  const [token, next] = [tokens[index]!, tokens[index + 1]];
  const count = parseCount(token.text.replace(/\s+/g, " "));
  if (count === undefined) return undefined;
  const own = designs.find((design) => design.uri === uri);
  const units = own?.units ?? context.units;
  const unit = next?.kind === "unit" ? unitOf[next.text] : undefined;
  if (next?.kind === "unit" && unit === undefined) return undefined;
  if (
    unit === undefined &&
    !isLengthBeside(outline.tokens.slice(Math.max(0, index - 4), index).map(({ text }) => text))
  )
    return undefined;
  const length = unit === undefined ? inUnits(count, units) : inUnit(count, unit);
  const metric = unit === undefined ? units === "millimetres" : unit !== "in" && unit !== "ft";
  const said = `${token.text}${next?.kind === "unit" ? ` ${next.text}` : units === "inches" ? " in" : " mm"}`;
  const other = otherUnits(length, { units: metric ? "millimetres" : "inches", step: { n: 0n, d: 1n } });
  return `${said} = ${other}`;
}

const unitOf: Readonly<Record<string, LengthUnit>> = {
  '"': "in",
  "″": "in",
  in: "in",
  "'": "ft",
  "′": "ft",
  ft: "ft",
  mm: "mm",
  cm: "cm",
  m: "m",
};

/** Whether none of the words before says that the number counts something. */
function isLengthBeside(before: readonly string[]): boolean {
  const last = before.findLast((text) => /^[a-z]/.test(text)) ?? "";
  return ![
    "have",
    "pulls",
    "faces",
    "count",
    "density",
    "costs",
    "per",
    "dividers",
    "carries",
    "holds",
    "moisture",
    "lift",
  ].includes(last);
}

/** What a `rest` or `equal` comes to. */
function aboutShare(scene: Scene, start: number): string | undefined {
  const found = shareSizes(scene).find(({ share }) => share.span.start === start && share.kind !== "size");
  if (found === undefined) return undefined;
  const name = found.share.kind === "rest" ? "the rest" : "an equal share";
  const chain = found.value === undefined ? [] : [explained(name, found.value, scene)];
  return [`${name}: **${sizeText(found.size, scene.reading)}**`, ...chain].join("\n\n");
}

function aboutWord(scene: Scene, index: number): string | undefined {
  const found = itemAt(scene, index);
  if (found === undefined) return undefined;
  const { item, block } = found;
  const { tokens } = scene.outline;
  const word = tokens[item.key]!.text;
  if (item.block !== undefined && item.block.head === item.key && block === undefined)
    return aboutBlock(scene, item.block);
  if (block?.word === undefined) return index === item.key ? saidOf(statements, word) : undefined;
  if (item.block?.word === "face frame" && index === item.key) return aboutBlock(scene, item.block);
  const properties =
    block.word === "across" || block.word === "down" || block.word === "cut" ? undefined : propertiesOf(block.word);
  const said = properties?.get(word);
  if (said === undefined) {
    const table = block.word === "cut" ? cutWords : word === "allow" ? statements : layoutWords;
    return index === item.key ? saidOf(table, word) : undefined;
  }
  const first = `\`${said.form}\`\n\n${capital(said.means)}.`;
  const sizes = aboutProperty(scene, block, item);
  return [first, ...(sizes === undefined ? [] : [sizes])].join("\n\n");
}

/** The statement or property that a token belongs to, and the block that it stands in. */
export function itemAt(
  { outline }: Scene,
  index: number,
): { readonly item: OutlineItem; readonly block: OutlineBlock | undefined } | undefined {
  const holds = (items: readonly OutlineItem[]): OutlineItem | undefined =>
    items.findLast((item) => item.key <= index && index < item.end);
  const inner = blocksOf(outline).findLast((block) => block.open < index && index < block.close);
  const item = holds(inner?.items ?? outline.items);
  if (item !== undefined) return { item, block: inner };
  return undefined;
}

function aboutBlock(scene: Scene, block: OutlineBlock): string | undefined {
  if (block.word === undefined || block.word === "across" || block.word === "down" || block.word === "cut")
    return undefined;
  const entry = vocabulary[block.word as BlockWord];
  const first = `\`${entry.form}\`\n\nGives ${entry.gives}.`;
  const made = aboutHead(scene, scene.outline.tokens[block.head]!.start);
  return [first, ...(made === undefined ? [] : [made])].join("\n\n");
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** How a statement, or an item of a layout, is written and what it says. */
function saidOf(table: Readonly<Record<string, Statement>>, word: string): string | undefined {
  const entry = Object.hasOwn(table, word) ? table[word] : undefined;
  if (entry === undefined) return undefined;
  return `${entry.forms.map((form) => `\`${shownForm(form)}\``).join("  \n")}\n\n${entry.means}`;
}

/** The head of a statement as it is written. */
export function headText(scene: Scene, item: OutlineItem): string {
  return headOf(scene.outline, item)
    .map((token) => token.text)
    .join(" ");
}
