import type { TextToken } from "../syntax/text-tokens.ts";

/** Where something of several words ends; `unfinished` where the words run out in it; `undefined` where it does not begin. */
export type RunEnd = number | "unfinished" | undefined;

const operators = new Set(["+", "-", "*", "/", "±"]);

/** Where a number ends that begins at a token: `2 * (a + 1/8)`, `3/4 +1/64`. */
export function numberEnd(tokens: readonly TextToken[], from: number): RunEnd {
  let at = operandEnd(tokens, from);
  while (typeof at === "number" && at < tokens.length && isOperator(tokens[at]!)) at = operandEnd(tokens, at + 1);
  return at;
}

/** Where a length ends, which may be the range that it was measured in: `45/64 to 23/32`. */
export function lengthEnd(tokens: readonly TextToken[], from: number): RunEnd {
  const end = numberEnd(tokens, from);
  return typeof end === "number" && tokens[end]?.text === "to" && end + 1 < tokens.length
    ? numberEnd(tokens, end + 1)
    : end;
}

function isOperator({ kind, text }: TextToken): boolean {
  return kind === "sign" && operators.has(text);
}

function operandEnd(tokens: readonly TextToken[], from: number): RunEnd {
  const token = tokens[from];
  if (token === undefined) return "unfinished";
  if (token.kind === "sign" && (token.text === "-" || token.text === "+")) return operandEnd(tokens, from + 1);
  if (token.text === "(") return bracketEnd(tokens, from);
  if (token.kind === "number") return quantityEnd(tokens, from);
  if (token.kind !== "name") return undefined;
  let at = from + 1;
  while (tokens[at]?.text === "." && tokens[at]?.kind === "sign") {
    if (tokens[at + 1] === undefined) return "unfinished";
    at += 2;
  }
  return at;
}

function quantityEnd(tokens: readonly TextToken[], from: number): number {
  const unit = tokens[from + 1];
  if (unit?.kind !== "unit" || ["lb", "kg", "%"].includes(unit.text)) return from + 1;
  const isFeet = ["'", "′", "ft"].includes(unit.text);
  const [inches, mark] = [tokens[from + 2], tokens[from + 3]];
  return isFeet && inches?.kind === "number" && mark?.kind === "unit" && ['"', "″", "in"].includes(mark.text)
    ? from + 4
    : from + 2;
}

function bracketEnd(tokens: readonly TextToken[], from: number): RunEnd {
  let depth = 0;
  for (let at = from; at < tokens.length; at++) {
    if (tokens[at]!.text === "(") depth++;
    if (tokens[at]!.text === ")") depth--;
    if (depth === 0) return at + 1;
  }
  return "unfinished";
}

/** Where a list of names ends: `inks, plan-1 to plan-4`. */
export function namesEnd(tokens: readonly TextToken[], from: number): RunEnd {
  let at = from;
  for (;;) {
    if (tokens[at] === undefined) return "unfinished";
    if (tokens[at]!.kind !== "name") return at === from ? undefined : at - 1;
    at++;
    const tie = tokens[at]?.text;
    if (tie !== "," && tie !== "to") return at;
    at++;
  }
}
