import type { LexerResult } from "langium";

export type Token = LexerResult["tokens"][number];

/** What was wrong with a stretch of text before it was parsed, in our own words. */
export interface Said {
  readonly code: "syntax/unreadable" | "syntax/too-much" | "length/decimal-comma";
  readonly message: string;
  /** Where it is not that it cannot be read. */
  readonly reason?: string;
  readonly remedy?: string;
  /** What should stand there. */
  readonly instead?: string;
}

export type TokenError = LexerResult["errors"][number] & { readonly said?: Said };

export interface Tokens {
  readonly tokens: readonly Token[];
  readonly errors: readonly TokenError[];
}

/** Whether a token is a word of the language, and not a name that happens to be spelled like one. */
export function isWord({ tokenType }: Token): boolean {
  return tokenType.name !== "ID";
}

/** Whether the word `screws` ends the name of a joint here, as in `joint pocket screws`, and so begins no block of its own. */
export function endsJoint(tokens: readonly Token[], index: number): boolean {
  const [before, token] = [tokens[index - 1], tokens[index]];
  if (token?.image !== "screws" || before === undefined || !isWord(before)) return false;
  return before.startLine === token.startLine && ["pocket", "joint", "corners"].includes(before.image);
}

/** An error at a token, or of no length just behind it. */
export function errorAt(token: Token, said: Said, where: "at" | "behind" = "at"): TokenError {
  const { startOffset, startLine, startColumn, image } = token;
  const behind = where === "behind" ? image.length : 0;
  const length = where === "behind" ? 0 : image.length;
  return { offset: startOffset + behind, line: startLine, column: startColumn, length, message: said.message, said };
}

/** A token right behind another, of no length in the text whatever it stands for. */
export function tokenBehind(before: Token, type: Token["tokenType"], image: string): Token {
  const offset = before.startOffset + before.image.length;
  const column = before.startColumn! + before.image.length;
  return {
    image,
    tokenType: type,
    tokenTypeIdx: type.tokenTypeIdx!,
    startOffset: offset,
    endOffset: offset - 1,
    startLine: before.startLine!,
    endLine: before.startLine!,
    startColumn: column,
    endColumn: column - 1,
  };
}
