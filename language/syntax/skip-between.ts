import { beginsStatement } from "./close-blocks.ts";
import type { Token, TokenError, Tokens } from "./tokens.ts";
import { errorAt, isWord } from "./tokens.ts";

/**
 * Leaves out what stands where only a statement can begin: at the start of the file and behind a block; and the head of
 * a block that is not typed to its bracket yet, where the next statement begins. Each stretch is one error. The parser
 * would stumble over every word of it, call itself each time, and take what follows along.
 */
export function skipBetween({ tokens, errors }: Tokens, starters: ReadonlySet<string>): Tokens {
  const found: TokenError[] = [...errors];
  const kept: Token[] = [];
  let depth = 0;
  let between = true;
  let strayed: readonly Token[] = [];
  /** Where in `kept` the head of a block began that has no bracket yet. */
  let head: number | undefined;
  tokens.forEach((token, index) => {
    if (depth === 0 && between && !(isWord(token) && starters.has(token.image))) {
      strayed = [...(strayed.length < 2 ? strayed : strayed.slice(0, 1)), token];
      return;
    }
    if (0 < strayed.length) found.push(stray(strayed));
    strayed = [];
    if (head !== undefined && kept.length !== head && begins(tokens, index)) {
      found.push(unfinished(kept.slice(head)));
      kept.length = head;
      head = undefined;
    }
    if (depth === 0 && head === undefined && isWord(token) && heads.has(token.image)) head = kept.length;
    between = false;
    if (token.image === "{") {
      depth++;
      head = undefined;
    }
    if (token.image === "}") {
      // With the bracket that opens a block missing, the one that closes it still ends it.
      depth = Math.max(0, depth - 1);
      between = depth === 0;
      head = undefined;
    }
    kept.push(token);
  });
  if (0 < strayed.length) found.push(stray(strayed));
  return kept.length === tokens.length ? { tokens, errors } : { tokens: kept, errors: found };
}

const heads = new Set([
  ...["sheet", "board", "edging", "slides", "hinges", "screws", "case", "opening", "part"],
  ...["saw", "grooves", "pockets", "place", "times", "cut"],
  ...["box", "front", "door", "false", "shelf"],
]);

/** At the top of a file an opening begins a statement too. */
function begins(tokens: readonly Token[], index: number): boolean {
  if (tokens[index - 1]?.image === "false") return false;
  return (
    beginsStatement(tokens, index) ||
    (isWord(tokens[index]!) && tokens[index]!.image === "opening" && tokens[index + 2]?.image === "{")
  );
}

function stray(tokens: readonly Token[]): TokenError {
  const first = tokens[0]!;
  const why = first.image === "}" ? "no block is open here" : "a statement begins with a word such as case or box";
  return reaching(
    errorAt(first, { code: "syntax/unreadable", message: `"${first.image}" was not expected here: ${why}` }),
    tokens,
  );
}

function unfinished(tokens: readonly Token[]): TokenError {
  const message = `"${tokens[0]!.image}" is not finished: what follows begins something else`;
  return reaching(errorAt(tokens[0]!, { code: "syntax/unreadable", message }), tokens);
}

function reaching(error: TokenError, tokens: readonly Token[]): TokenError {
  const last = tokens.at(-1)!;
  return { ...error, length: last.startOffset + last.image.length - error.offset };
}
