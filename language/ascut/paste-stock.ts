import { countWords } from "./count-words.ts";
import { sizeIn } from "./measured.ts";
import { type NumberToken, numbersIn, ofOneUnit } from "./paste-numbers.ts";
import type { Book } from "./record.ts";

/** A line of the `cut` block about what was taken from the rack, and what was understood. */
export interface StockItem {
  readonly line: string;
  readonly says: string;
}

const kinds = /^(?:(?:used|cut|broke|broken|down|up|the|an?)\s+)*(?:\S+\s+)?(sheet|board|offcut)s?\b/i;

/** Reads `1 sheet birch-34`, `board ash 2`, `offcut of birch-34 20 x 31`; nothing where an item is of something else. */
export function readStock({ context, model, made }: Book, item: string): StockItem | string | undefined {
  const kind = kinds.exec(item)?.[1]?.toLowerCase();
  const words = item.match(/[\p{L}][\p{L}\p{N}_-]*/gu) ?? [];
  const stock = words.flatMap((word) => model.stocks.get(word) ?? [])[0];
  // A part may be called so.
  const isPart = made.counts.some(({ wanted }) => `${wanted.of} ${wanted.name}`.split(" ").includes(kind ?? ""));
  if (kind === undefined || (stock === undefined && isPart)) return undefined;
  // A number can stand in a stock's name.
  const [before = "", after = ""] = stock === undefined ? [item] : item.split(stock.name, 2);
  if (stock === undefined) return `"${item}" names no ${kind === "offcut" ? "stock" : kind} that there is`;
  const tokens = [...numbersIn(before), ...numbersIn(after)];
  if (kind === "offcut") {
    const written = ofOneUnit(tokens.map(({ text }) => text)).map((text) => sizeIn(text, context.units));
    const wrong = written.find((size) => typeof size === "string");
    if (wrong !== undefined) return `"${item}": ${wrong}`;
    const [width, height] = written.flatMap((size) => (typeof size === "string" ? [] : [size.text]));
    if (written.length !== 2)
      return `"${item}": an offcut has two sizes, as it is stated: offcut of ${stock.name} 20 x 31`;
    return {
      line: `offcut of ${stock.name} ${width} x ${height}`,
      says: `the offcut of ${stock.name}, ${width} × ${height}`,
    };
  }
  if (stock.kind !== kind) return `"${item}": ${stock.name} is no ${kind}`;
  const count = countIn(words, tokens);
  if (count === undefined) return `"${item}": how many ${kind}s were broken down must be one whole number`;
  return { line: `${kind} ${stock.name} ${count}`, says: `${count} × ${kind} ${stock.name}, broken down` };
}

function countIn(words: readonly string[], tokens: readonly NumberToken[]): number | undefined {
  const inWords = words.map((word) => countWords.indexOf(word.toLowerCase())).find((index) => 0 < index);
  const [first, ...rest] = tokens;
  if (first === undefined) return inWords ?? 1;
  const isWhole = /^\d{1,3}$/.test(first.text) && !first.hasUnit && 0 < Number(first.text);
  return isWhole && rest.length === 0 && inWords === undefined ? Number(first.text) : undefined;
}
