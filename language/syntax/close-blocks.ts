import type { Token, Tokens } from "./tokens.ts";
import { endsJoint, errorAt, isWord, tokenBehind } from "./tokens.ts";

/**
 * Closes what is open where a statement begins that stands in no block: a bracket that was forgotten, or is not typed
 * yet, then costs its own block only. Each is an error of no length at the place where the bracket should stand.
 */
export function closeBlocks({ tokens, errors }: Tokens, bracket: Token["tokenType"]): Tokens {
  const closed: Token[] = [];
  const found = [...errors];
  let depth = 0;
  tokens.forEach((token, index) => {
    const before = tokens[index - 1];
    if (0 < depth && before !== undefined && beginsStatement(tokens, index)) {
      const message = 'the block is not closed: "}" is missing here';
      found.push(errorAt(before, { code: "syntax/unreadable", message }, "behind"));
      for (; 0 < depth; depth--) closed.push(tokenBehind(before, bracket, "}"));
    }
    if (token.image === "{") depth++;
    if (token.image === "}" && 0 < depth) depth--;
    closed.push(token);
  });
  return { tokens: closed, errors: found };
}

/** Whether a statement begins here that never stands inside a block. */
export function beginsStatement(tokens: readonly Token[], index: number): boolean {
  const token = tokens[index]!;
  const begins = beginnings.get(token.image);
  if (begins === undefined || !isWord(token) || endsJoint(tokens, index)) return false;
  return begins(tokens[index + 1]?.image ?? "", tokens[index + 2]?.image ?? "");
}

type Begins = (second: string, third: string) => boolean;

const goesFor: Begins = (second) => second === "for";
const goesForOrSpans: Begins = (second) => second === "for" || second === "spanning";
const isNamedBlock: Begins = (_second, third) => third === "{";
const hasText: Begins = (second) => second.startsWith('"');

/** What stands behind a word where it begins such a statement. */
const beginnings: ReadonlyMap<string, Begins> = new Map<string, Begins>([
  ["box", goesFor],
  ["door", goesForOrSpans],
  ["front", goesForOrSpans],
  ["shelf", (second) => second === "in"],
  ["false", (second, third) => second === "front" && third === "for"],
  ["let", (_second, third) => third === "="],
  ["project", hasText],
  ["use", hasText],
  ...["sheet", "board", "edging", "slides", "hinges", "screws", "case", "part"].map(
    (word) => [word, isNamedBlock] as const,
  ),
]);
