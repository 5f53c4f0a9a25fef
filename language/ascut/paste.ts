import { compare, isPositive } from "../core/rational.ts";
import { nearest } from "../derive/names.ts";
import { type CutRow, cutList } from "../plan/cut-list.ts";
import type { AsCut, Count } from "./as-cut.ts";
import { countWords } from "./count-words.ts";
import { nameOf, pluralOf, sizesText } from "./findings/words.ts";
import { type Measured, sizeIn } from "./measured.ts";
import { type NumberToken, numbersIn, ofOneUnit } from "./paste-numbers.ts";
import { readStock, type StockItem } from "./paste-stock.ts";
import { type Book, type Recording, type RecordRequest, recordEdits } from "./record.ts";

/** A line as it comes from a phone, read: the edits that write it down, what was understood, and what was not. */
export interface ReadLine {
  readonly edits: Extract<Recording, { readonly edits: unknown }>["edits"];
  /** `2 sides of box plan-1` */
  readonly understood: readonly string[];
  /** One sentence for each piece of the line that could not be read; it is left out, the rest is taken. */
  readonly problems: readonly string[];
}

/** Longer than anyone types; what is beyond it is not read. */
const longestLine = 20_000;

/** Reads `2 side plan-1; 1 rail inks 13 11/16; spoiled stile rollers`. Words may stand in any order, in the plural, with or without box or door. */
export function readCuts(book: Book, text: string): ReadLine {
  const items = text
    .slice(0, longestLine)
    .split(/[;\n\r]+|,\s+/)
    .map((item) => item.trim())
    .filter((item) => item !== "");
  const read = items.map((item) => readItem(book, item));
  const requests = read.flatMap((one) => (typeof one === "string" || !("request" in one) ? [] : [one.request]));
  const lines = read.flatMap((one) => (typeof one === "string" || !("line" in one) ? [] : [one.line]));
  const problems = read.filter((one) => typeof one === "string");
  if (items.length === 0) problems.push("nothing is written here: write it as 2 side plan-1; 1 rail inks 13 11/16");
  const recording = recordEdits(book, requests, lines);
  if ("refused" in recording) return { edits: [], understood: [], problems: [...problems, recording.refused] };
  return {
    edits: recording.edits,
    understood: read.flatMap((one) => (typeof one === "string" ? [] : [one.says])),
    problems,
  };
}

interface Item {
  readonly request: RecordRequest;
  readonly says: string;
}

const spoiledWords = new Set(["spoiled", "spoilt", "ruined", "bad"]);
const fillers = new Set([
  "of",
  "for",
  "the",
  "a",
  "an",
  "and",
  "at",
  "in",
  "is",
  "are",
  "was",
  "cut",
  "made",
  "done",
  "by",
  "x",
  "×",
  "from",
]);

function readItem(book: Book, typed: string): Item | StockItem | string {
  if (/^[-−–]\s?\d/.test(typed) && !/^[-−–]\s/.test(typed))
    return `"${typed}": a count below nought takes nothing off; change the record in the cut block`;
  // 700x350 is two sizes.
  const item = typed.replace(/(\d|[¼½¾⅐-⅞"″]|mm|cm|in)\s*[x×]\s*(?=[\d.¼½¾⅐-⅞])/gi, "$1 x ");
  const words = item.toLowerCase().match(/[a-zà-öø-ſ][a-zà-öø-ſ0-9_-]*/g) ?? [];
  const spoiled = words.some((word) => spoiledWords.has(word));
  const stock = readStock(book, item);
  if (stock !== undefined) return stock;
  const tokens = numbersIn(item);
  const names = words.filter(
    (word) => !spoiledWords.has(word) && !fillers.has(word) && !isUnit(word) && !countWords.includes(word),
  );
  const row = rowMeant(book, item, names);
  if (row === undefined && names.length === 0) return `"${item}" names no part`;
  const found = row === undefined ? meantBy(book.made, names, item) : countsOf(book.made, row);
  if (typeof found === "string") return found;
  const amounts = amountsIn(item, tokens, words, row === undefined ? found : [row]);
  const written = ofOneUnit(amounts.sizes);
  const sizes = written.map((text) => sizeIn(text, book.context.units));
  const wrong = sizes.find((size) => typeof size === "string");
  if (wrong !== undefined) return `"${item}": ${wrong}`;
  if (2 < sizes.length) return `"${item}": a piece has two sizes at most, its length and its width`;
  const [length, width] = written;
  const size = length === undefined ? {} : { size: width === undefined ? { length } : { length, width } };
  if (row !== undefined) {
    const request = { part: row.mark, count: amounts.count, ...size, ...(spoiled ? { spoiled } : {}) };
    const names = [...new Set(row.parts.map(({ name }) => name))].join(" and ");
    return { request, says: `${amounts.count} × ${row.mark}, ${names}${spoiled ? ", spoiled" : ""}` };
  }
  const count = sizedBest(found, sizes as Measured[]);
  if (count === undefined)
    return `"${item}" may be ${found.map((one) => sized(book, one)).join(", or ")}: write its size too`;
  return {
    request: { part: count.wanted.key, count: amounts.count, ...size, ...(spoiled ? { spoiled } : {}) },
    says: `${amounts.count} × ${nameOf(count.wanted)}${spoiled ? ", spoiled" : ""}`,
  };
}

/**
 * The row of the list whose mark an item names: what stands on the wood. In capitals, or alone; in place of the part's
 * name, and with the figure that says that it is cut to another size now.
 */
function rowMeant({ model, made }: Book, item: string, names: readonly string[]): CutRow | undefined {
  const rows = cutList(model).flatMap((batch) => batch.rows);
  const row = (mark: string): CutRow | undefined => rows.find((one) => one.mark === mark.replace(/\d+$/, ""));
  const capitals = item.match(/(?<![\p{L}\p{N}_-])[A-Z]{1,2}\d?(?![\p{L}\p{N}_-])/gu) ?? [];
  const [only] = capitals.length === 1 ? capitals : names.length === 1 ? [names[0]!.toUpperCase()] : [];
  const found = only === undefined ? undefined : row(only);
  const isPart = made.counts.some(({ wanted }) =>
    wordsOf(wanted)
      .flat()
      .includes(only?.toLowerCase() ?? ""),
  );
  return isPart || names.some((name) => name !== only?.toLowerCase()) ? undefined : found;
}

function countsOf({ counts }: AsCut, row: CutRow): readonly Count[] {
  return counts.filter(({ wanted }) => wanted.parts.some((part) => row.parts.includes(part)));
}

function isUnit(word: string): boolean {
  return ["mm", "cm", "m", "in", "inch", "inches"].includes(word);
}

/** How many, and the sizes: the number in front counts, or one before `at`; a lone one, or the first of three, where so many are wanted. */
function amountsIn(
  item: string,
  tokens: readonly NumberToken[],
  words: readonly string[],
  found: readonly (Count | CutRow)[],
): { readonly count: number; readonly sizes: readonly string[] } {
  const [first, ...rest] = tokens;
  const inWords = words.map((word) => countWords.indexOf(word)).find((index) => 0 < index);
  if (first === undefined || inWords !== undefined)
    return { count: inWords ?? 1, sizes: tokens.map(({ text }) => text) };
  const whole = /^\d+$/.test(first.text) && !first.hasUnit ? Number(first.text) : undefined;
  const leads = item
    .slice(0, first.start)
    .toLowerCase()
    .split(/\s+/)
    .every((word) => word === "" || spoiledWords.has(word));
  const beforeAt = /^\s+at\b/i.test(item.slice(first.end));
  const most = Math.max(...found.map((one) => ("wanted" in one ? one.wanted.quantity : one.quantity)));
  // Three numbers are a count and two sizes.
  const isFew = (rest.length === 0 || rest.length === 2) && whole !== undefined && whole <= most;
  if (whole !== undefined && (leads || beforeAt || isFew)) return { count: whole, sizes: rest.map(({ text }) => text) };
  return { count: 1, sizes: tokens.map(({ text }) => text) };
}

/** The parts that the words may mean; a sentence where none does or several unlike ones do. */
function meantBy({ counts }: AsCut, words: readonly string[], item: string): readonly Count[] | string {
  const fitting = counts
    .map((count) => ({ count, score: scoreOf(count, counts, words) }))
    .filter(({ score }) => 0 < score);
  const best = Math.max(0, ...fitting.map(({ score }) => score));
  const found = fitting.filter(({ score }) => score === best).map(({ count }) => count);
  if (found.length === 0) return unknown(counts, words, item);
  const names = new Set(found.map(({ wanted }) => nameOf(wanted)));
  if (names.size === 1) return found;
  const shown = [...names].slice(0, 4).join(", or ");
  return `"${item}" may be ${shown}${4 < names.size ? ", or another" : ""}: say which`;
}

/** Every word must be one of the part's; the more of its own words are said, the better. */
function scoreOf({ wanted }: Count, counts: readonly Count[], words: readonly string[]): number {
  const [kind, on, name] = wordsOf(wanted);
  const own = [...kind, on, ...name, wanted.part.stock.toLowerCase()];
  if (!words.every((word) => own.some((one) => isForm(word, one)))) return 0;
  const says = (one: string): boolean => words.some((word) => isForm(word, one));
  const isOnly = counts.every((other) => other.wanted.of !== wanted.of || other.wanted.name === wanted.name);
  const isNamed = name.every(says);
  if (!isNamed && !isOnly) return 0;
  return 1 + (isNamed ? 2 : 0) + (says(on) ? 4 : 0) + (kind.every(says) ? 1 : 0);
}

function wordsOf({ of, name }: Count["wanted"]): readonly [readonly string[], string, readonly string[]] {
  const words = of.toLowerCase().split(" ");
  return [words.slice(0, -1), words.at(-1)!, name.toLowerCase().split(" ")];
}

/** The word itself or its plural. */
function isForm(word: string, of: string): boolean {
  return word === of || word === `${of}s` || word === pluralOf(of);
}

function unknown(counts: readonly Count[], words: readonly string[], item: string): string {
  const known = new Set(counts.flatMap(({ wanted }) => wordsOf(wanted).flat()));
  const strange = words.find((word) => ![...known].some((one) => isForm(word, one)));
  if (strange === undefined) {
    const on = words.find((word) => counts.some(({ wanted }) => wordsOf(wanted)[1] === word));
    const there = [
      ...new Set(counts.filter(({ wanted }) => wordsOf(wanted)[1] === on).map(({ wanted }) => wanted.name)),
    ];
    return `"${item}" names no part that there is${there.length === 0 ? "" : `; of ${on} there are: ${there.join(", ")}`}`;
  }
  const meant = nearest(strange, known);
  return `"${item}": nothing is called "${strange}"${meant === undefined ? "" : `; is ${meant} meant?`}`;
}

/** Of parts of one name the one that the size comes nearest to; without a size only where they are all alike. */
function sizedBest(found: readonly Count[], sizes: readonly Measured[]): Count | undefined {
  if (found.length === 1) return found[0];
  const [length] = sizes;
  if (length === undefined) {
    const open = found.filter(({ left }) => 0 < left);
    return open.length === 1 ? open[0] : undefined;
  }
  const off = ({ wanted }: Count) => {
    const { n, d } = wanted.part.length.value;
    const difference = { n: n * length.value.d - length.value.n * d, d: d * length.value.d };
    return isPositive(difference) ? difference : { n: -difference.n, d: difference.d };
  };
  const best = found.reduce((least, one) => (compare(off(one), off(least)) < 0 ? one : least));
  const ties = found.filter((one) => compare(off(one), off(best)) === 0);
  return ties.length === 1 ? best : undefined;
}

function sized({ context }: Book, { wanted }: Count): string {
  const { length, width, stock } = wanted.part;
  return `${nameOf(wanted)}, ${sizesText(context, length.value, width.value)} of ${stock}`;
}
