import type { Token, TokenError, Tokens } from "./tokens.ts";
import { errorAt, isWord } from "./tokens.ts";

/**
 * Takes `17,8` for 17.8 where a comma can part nothing, or would part two readings that no one thing has. Who writes
 * decimals with a comma writes no blank behind it, and all that hangs on the size would be wrong by as much.
 */
export function readDecimalCommas({ tokens, errors }: Tokens): Tokens {
  const found: TokenError[] = [];
  const read: Token[] = [];
  const seen = (at: number): Seen | undefined => (tokens[at] === undefined ? undefined : seenOf(tokens[at]));
  for (let at = 0; at < tokens.length; at++) {
    const [token, last] = [tokens[at]!, tokens[at + 2]];
    if (last === undefined || !isDecimalComma(at + 1, seen)) {
      read.push(token);
      continue;
    }
    const number = asOne(token, last);
    read.push(number);
    found.push(errorAt(number, told(`${token.image},${last.image}`, number.image)));
    at += 2;
  }
  return found.length === 0 ? { tokens, errors } : { tokens: read, errors: [...errors, ...found] };
}

/** What has to be known of a word or sign of a text. */
export interface Seen {
  readonly text: string;
  readonly start: number;
  readonly word: boolean;
}

/** Whether the sign at a place is a comma that stands in a decimal. */
export function isDecimalComma(at: number, seen: (at: number) => Seen | undefined): boolean {
  const [before, comma, behind] = [seen(at - 1), seen(at), seen(at + 1)];
  if (before === undefined || behind === undefined || comma?.text !== ",") return false;
  if (before.start + before.text.length !== comma.start || comma.start + 1 !== behind.start) return false;
  if (!digits.test(before.text) || !digits.test(behind.text)) return false;
  return partsNothing(before.text, behind.text, keyBefore(at - 1, seen));
}

const digits = /^[0-9]{1,9}$/;

function seenOf(token: Token): Seen {
  return { text: token.image, start: token.startOffset, word: isWord(token) && /^[a-z]/i.test(token.image) };
}

/** The word that the number belongs to. */
function keyBefore(at: number, seen: (at: number) => Seen | undefined): string {
  for (let index = at - 1; 0 <= index; index--) {
    const one = seen(index);
    if (one === undefined || one.text === "{" || one.text === "}") return "";
    if (one.word && !units.has(one.text)) return one.text;
  }
  return "";
}

const units = new Set(["mm", "cm", "m", "in", "ft"]);

/** Words behind which several sizes can stand, parted by commas. */
const lists = new Set(["wide", "high", "deep", "long", "measures", "thick", "rails", "lengths"]);
/** Of these, thicknesses are read to less than a whole millimetre. */
const fine = new Set(["measures", "thick"]);

function partsNothing(first: string, second: string, key: string): boolean {
  if (Number(first) === 0) return true;
  // `1,200` is as likely to be twelve hundred.
  if (second.length === 3) return false;
  if (!lists.has(key)) return true;
  if (fine.has(key) && second.length === 1) return true;
  // Readings of one thing, and sizes sold one after the other, are not so far apart.
  return Number(second) * 2 < Number(first) || Number(first) * 10 < Number(second);
}

function asOne(first: Token, last: Token): Token {
  return {
    ...first,
    image: `${first.image}.${last.image}`,
    ...(last.endOffset === undefined ? {} : { endOffset: last.endOffset }),
    ...(last.endColumn === undefined ? {} : { endColumn: last.endColumn }),
  };
}

function told(written: string, number: string) {
  return {
    code: "length/decimal-comma" as const,
    message: `"${written}" is taken for ${number}: a comma parts readings and names, a decimal has a point`,
    reason: "Read as two, one size would be two readings, and whatever hangs on it wrong by as much as they differ.",
    remedy: `Write ${number}. Two readings have a blank behind the comma: ${written.replace(",", ", ")}.`,
    instead: number,
  };
}
