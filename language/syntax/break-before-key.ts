import type { Token } from "./tokens.ts";
import { isWord, tokenBehind } from "./tokens.ts";

/**
 * Puts a token of no length before a `bottom`, `back`, `front` or `top` that begins a property behind a measure: `wide 11
 * bottom ply under`. These words are edges of a measure too, and a name behind one could be the next measure; whoever
 * writes them so means the property. The edge of a measure has a comma, a number, another property or a bracket behind it.
 */
export function breakBeforeKeys(
  tokens: readonly Token[],
  keys: ReadonlySet<string>,
  type: Token["tokenType"],
): readonly Token[] {
  // What is cut is written in records, of which the next may begin so.
  let isRecords = false;
  const broken = tokens.flatMap((token, index) => {
    if (token.image === "{" && tokens[index - 1]?.image === "cut") isRecords = true;
    if (token.image === "}") isRecords = false;
    if (isRecords || !beginsProperty(tokens, index) || !followsMeasure(tokens, index, keys)) return [token];
    return [tokenBehind(tokens[index - 1]!, type, ""), token];
  });
  return broken.length === tokens.length ? tokens : broken;
}

/** What stands behind each of these words where it begins a property, besides the name of a stock. */
const behind: Readonly<Record<string, readonly string[]>> = {
  bottom: [],
  back: [],
  front: [],
  top: ["panel", "stretchers", "none"],
};

function beginsProperty(tokens: readonly Token[], index: number): boolean {
  const [token, next] = [tokens[index]!, tokens[index + 1]];
  const words = isWord(token) ? behind[token.image] : undefined;
  if (words === undefined || next === undefined) return false;
  return token.image === "top" ? words.includes(next.image) && isWord(next) : !isWord(next);
}

/** Whether only what a measure is made of stands between here and a word that has measures. */
function followsMeasure(tokens: readonly Token[], index: number, keys: ReadonlySet<string>): boolean {
  for (let at = index - 1; 0 <= at; at--) {
    const token = tokens[at]!;
    // A `wide` or `deep` behind its number, as in `2 wide`, has no measure behind it.
    if (isWord(token) && keys.has(token.image)) return beginsMeasure(tokens[at + 1]!);
    if (!isOfMeasure(token)) return false;
  }
  return false;
}

function beginsMeasure({ image, tokenType }: Token): boolean {
  return ["COUNT", "ID", "TOLERANCE_SIGN"].includes(tokenType.name) || image === "(" || image === "-";
}

function isOfMeasure({ image, tokenType }: Token): boolean {
  return parts.has(tokenType.name) || parts.has(image);
}

const parts = new Set([
  ...["COUNT", "ID", "TOLERANCE_SIGN", "INCH_MARK", "FOOT_MARK"],
  ...["+", "-", "*", "/", "(", ")", ".", ",", "±", "to", "in", "ft", "mm", "cm", "m"],
  ...["left", "right", "top", "bottom", "front", "back", "round", "between"],
]);
