import { beginsStatement } from "./close-blocks.ts";
import type { Token, TokenError, Tokens } from "./tokens.ts";
import { errorAt } from "./tokens.ts";

/**
 * The parser calls itself for each bracket inside another. These are far more than any build file has, and far less
 * than what the call stack holds.
 */
const deepest = 64;
const mostSigns = 32;
const mostOperators = 500;

/** Leaves out what is nested too deeply and what goes on for too long in one length; each stretch is one error. */
export function withinLimits({ tokens, errors }: Tokens): Tokens {
  const walk: Walk = { open: [], signs: 0, operators: 0, told: undefined };
  const found: TokenError[] = [...errors];
  const kept = tokens.filter((token, index) => {
    if (0 < walk.open.length && beginsStatement(tokens, index)) walk.open.length = 0;
    const message = tooMuch(walk, token);
    if (message !== undefined && message !== walk.told)
      found.push(errorAt(token, { code: "syntax/too-much", message }));
    walk.told = message;
    return message === undefined;
  });
  return kept.length === tokens.length ? { tokens, errors } : { tokens: kept, errors: found };
}

interface Walk {
  /** The brackets that are open, outermost first. */
  readonly open: string[];
  /** Signs in a row, and signs of arithmetic in one expression. */
  signs: number;
  operators: number;
  /** What the last token was left out for. */
  told: string | undefined;
}

function tooMuch(walk: Walk, token: Token): string | undefined {
  const nested = isTooDeep(walk, token);
  const sign = token.image === "+" || token.image === "-";
  walk.signs = sign ? walk.signs + 1 : 0;
  const operator = sign || token.image === "*" || token.image === "/";
  walk.operators = operator ? walk.operators + 1 : isOfExpression(token) ? walk.operators : 0;
  if (nested) return `this is nested more than ${deepest} deep`;
  if (mostSigns < walk.signs) return `more than ${mostSigns} signs stand in a row here`;
  if (mostOperators < walk.operators) return `this length has more than ${mostOperators} signs of arithmetic`;
  return undefined;
}

/** Opens and closes brackets; one that is too deep is left out with all that it holds and with the one that closes it. */
function isTooDeep({ open }: Walk, { image }: Token): boolean {
  if (image === "(" || image === "{") open.push(image);
  const deep = deepest < open.length;
  if (image === ")" && open.at(-1) === "(") open.pop();
  if (image === "}") {
    while (open.at(-1) === "(") open.pop();
    open.pop();
  }
  return deep;
}

function isOfExpression({ image, tokenType }: Token): boolean {
  return measuring.has(tokenType.name) || among.has(image);
}

const measuring = new Set(["COUNT", "ID", "INCH_MARK", "FOOT_MARK"]);
const among = new Set(["(", ")", ".", "in", "ft", "mm", "cm", "m"]);
