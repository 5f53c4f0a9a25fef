import type { Token, Tokens } from "./tokens.ts";
import { errorAt, isWord, tokenBehind } from "./tokens.ts";

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
  if (!isWord(tokens[index]!)) return false;
  const [word, second, third] = [tokens[index]!.image, tokens[index + 1]?.image ?? "", tokens[index + 2]?.image ?? ""];
  if (["box", "front", "door"].includes(word)) return second === "for" || (word === "front" && second === "spanning");
  if (word === "shelf") return second === "in";
  if (word === "false") return second === "front" && third === "for";
  if (word === "let") return third === "=";
  if (word === "project" || word === "use") return second.startsWith('"');
  return ["sheet", "board", "edging", "slides", "hinges", "screws", "case", "part"].includes(word) && third === "{";
}
