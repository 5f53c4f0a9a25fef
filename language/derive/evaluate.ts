import type { Expr, Measure } from "../core/expr.ts";
import type { Length, Units } from "../core/length.ts";
import { inUnit, inUnits, writtenText } from "../core/length.ts";
import type { Rational } from "../core/rational.ts";
import { add, divide, less, multiply, negate, over, subtract, toText } from "../core/rational.ts";
import type { Rule, Sourced } from "../core/sourced.ts";
import { type Span, spanFrom, type Word } from "../core/span.ts";

/**
 * What a number is while an expression is worked out. A bare number is a count where it multiplies and a length, in
 * its file's units, where it meets one; a `count` is the ratio of two lengths, which can only multiply.
 */
interface Amount {
  readonly dimension: "bare" | "length" | "count";
  readonly value: Rational;
  readonly units: Units;
}

export interface Trouble {
  readonly code:
    | "length/over-nothing"
    | "length/not-a-length"
    | "length/broken"
    | "length/too-many-digits"
    | "name/unknown-length"
    | "length/circular"
    | "length/too-far";
  readonly span: Span;
  readonly message: string;
  /** The name that stands for no length. */
  readonly name?: string;
}

/** Finds what a name or a reading stands for; a `Trouble` where there is no such thing. */
export type LookUp = (path: readonly Word[]) => Sourced<Length> | Trouble;

/** The length that a measure states, or what stands in the way. */
export function lengthOf(measure: Measure, lookUp: LookUp): Sourced<Length> | Trouble {
  const value = evaluated(measure.value, measure.text, lookUp);
  if (isTrouble(value)) return value;
  if (measure.to !== undefined) return rangeOf(measure, value, lookUp);
  if (measure.plus === undefined && measure.minus === undefined) return value;
  const plus = part(measure.plus, lookUp);
  const minus = part(measure.minus, lookUp);
  if (isTrouble(plus)) return plus;
  if (isTrouble(minus)) return minus;
  return { ...value, low: subtract(value.value, minus), high: add(value.value, plus) };
}

/** A number that counts something: pieces, pounds, percents. Lengths are refused. */
export function countOf(expr: Expr): Rational | Trouble {
  const amount = amountOf(expr, (path) => unknownName(path));
  if (isTrouble(amount)) return amount;
  if (amount.dimension !== "length") return amount.value;
  return { code: "length/not-a-length", span: expr.span, message: "a plain number is wanted here, not a length" };
}

/** An expression that states a length, such as the length of a slide. */
export function lengthOfExpr(expr: Expr, units: Units, lookUp: LookUp): Sourced<Length> | Trouble {
  const value = evaluated(expr, "", lookUp);
  if (isTrouble(value)) return value;
  if (value.origin.kind !== "written") return value;
  return { ...value, origin: { ...value.origin, text: writtenText(value.value, units) } };
}

export function isTrouble<T>(value: T | Trouble): value is Trouble {
  return typeof value === "object" && value !== null && "code" in value && "message" in value;
}

/** A name or a reading as it is written: `chest.wide`. */
export function nameOf(path: readonly Word[]): string {
  return path.map((word) => word.text).join(".");
}

export function unknownName(path: readonly Word[]): Trouble {
  const last = path.at(-1);
  return {
    code: "name/unknown-length",
    span: path.length === 1 ? path[0]!.span : spanFrom(path[0]!.span, last!.span),
    message: `there is no length called "${nameOf(path)}"`,
    name: nameOf(path),
  };
}

function part(expr: Expr | undefined, lookUp: LookUp): Length | Trouble {
  if (expr === undefined) return { n: 0n, d: 1n };
  const found = evaluated(expr, "", lookUp);
  return isTrouble(found) ? found : found.value;
}

/** A measured range is used at its middle and keeps both ends. */
function rangeOf(measure: Measure, from: Sourced<Length>, lookUp: LookUp): Sourced<Length> | Trouble {
  const to = evaluated(measure.to!, measure.text, lookUp);
  if (isTrouble(to)) return to;
  const [low, high] = less(to.value, from.value) ? [to.value, from.value] : [from.value, to.value];
  return {
    value: over(add(low, high), 2),
    origin: { kind: "written", span: measure.span, text: measure.text },
    low,
    high,
  };
}

function evaluated(expr: Expr, text: string, lookUp: LookUp): Sourced<Length> | Trouble {
  const inputs: Record<string, Sourced<Length>> = {};
  const amount = amountOf(expr, (path) => {
    const found = lookUp(path);
    if (!isTrouble(found)) inputs[nameOf(path)] = found;
    return found;
  });
  if (isTrouble(amount)) return amount;
  const length = asLength(amount, expr.span);
  if (isTrouble(length)) return length;
  if (Object.keys(inputs).length === 0) {
    return { value: length.value, origin: { kind: "written", span: expr.span, text } };
  }
  return {
    value: length.value,
    origin: { kind: "derived", rule: asWritten(expr), inputs, at: expr.span, apply: again(expr) },
  };
}

function asWritten(expr: Expr): Rule {
  return { gives: "as written", formula: formulaOf(expr), tag: "geometry" };
}

/** The same arithmetic over other values of its names, for working out tolerances. */
function again(expr: Expr): (values: never) => unknown {
  return (values) => {
    const amount = amountOf(expr, (path) => ({
      value: (values as Record<string, Rational>)[nameOf(path)]!,
      origin: { kind: "written", span: expr.span, text: "" },
    }));
    const length = isTrouble(amount) ? amount : asLength(amount, expr.span);
    return isTrouble(length) ? { n: 0n, d: 1n } : length.value;
  };
}

function formulaOf(expr: Expr): string {
  switch (expr.kind) {
    case "number":
      return expr.unit === undefined ? toText(expr.value) : `${toText(expr.value)} ${expr.unit}`;
    case "name":
      return `{${nameOf(expr.path)}}`;
    case "negate":
      return `−${formulaOf(expr.of)}`;
    case "binary":
      return `${inner(expr.left)} ${signs[expr.operator]} ${inner(expr.right)}`;
    case "broken":
      return "…";
  }
}

const signs = { "+": "+", "-": "−", "*": "×", "/": "÷" } as const;

function inner(expr: Expr): string {
  return expr.kind === "binary" ? `(${formulaOf(expr)})` : formulaOf(expr);
}

function amountOf(expr: Expr, lookUp: LookUp): Amount | Trouble {
  switch (expr.kind) {
    case "number":
      return expr.unit === undefined
        ? { dimension: "bare", value: expr.value, units: expr.units }
        : { dimension: "length", value: inUnit(expr.value, expr.unit), units: expr.units };
    case "name": {
      const found = lookUp(expr.path);
      return isTrouble(found) ? found : { dimension: "length", value: found.value, units: "inches" };
    }
    case "negate": {
      const of = amountOf(expr.of, lookUp);
      return isTrouble(of) ? of : { ...of, value: negate(of.value) };
    }
    case "binary": {
      const left = amountOf(expr.left, lookUp);
      if (isTrouble(left)) return left;
      const right = amountOf(expr.right, lookUp);
      return isTrouble(right) ? right : combined(expr.operator, left, right, expr.span);
    }
    case "broken":
      return { code: "length/broken", span: expr.span, message: "this length is not finished" };
  }
}

/** A bound on numerator and denominator: no size of a workshop comes near, and sums of them stay quick. */
const bound = 1n << 400n;

function combined(operator: "+" | "-" | "*" | "/", left: Amount, right: Amount, span: Span): Amount | Trouble {
  const made = reckoned(operator, left, right, span);
  if (isTrouble(made) || (made.value.d < bound && made.value.n < bound && -bound < made.value.n)) return made;
  return { code: "length/too-many-digits", span, message: "this comes to a number of more than a hundred digits" };
}

function reckoned(operator: "+" | "-" | "*" | "/", left: Amount, right: Amount, span: Span): Amount | Trouble {
  if (operator === "+" || operator === "-") return summed(operator === "+" ? add : subtract, left, right, span);
  return operator === "*" ? product(left, right, span) : quotient(left, right, span);
}

function summed(apply: typeof add, left: Amount, right: Amount, span: Span): Amount | Trouble {
  if (left.dimension === "bare" && right.dimension === "bare")
    return { ...left, value: apply(left.value, right.value) };
  if (left.dimension === "count" || right.dimension === "count") {
    if (left.dimension !== "length" && right.dimension !== "length") {
      return { dimension: "count", value: apply(left.value, right.value), units: left.units };
    }
    return { code: "length/not-a-length", span, message: "a length and a plain count cannot be added or subtracted" };
  }
  return { dimension: "length", value: apply(lengthValue(left), lengthValue(right)), units: left.units };
}

function product(left: Amount, right: Amount, span: Span): Amount | Trouble {
  if (left.dimension === "length" && right.dimension === "length") {
    return { code: "length/not-a-length", span, message: "a length times a length is an area, not a length" };
  }
  const dimension = left.dimension === "length" || right.dimension === "length" ? "length" : strongest(left, right);
  return { dimension, value: multiply(left.value, right.value), units: left.units };
}

function quotient(left: Amount, right: Amount, span: Span): Amount | Trouble {
  const ofLengths = left.dimension === "length" && right.dimension === "length";
  if (right.dimension === "length" && !ofLengths) {
    return { code: "length/not-a-length", span, message: "a plain number cannot be divided by a length" };
  }
  const value = divide(left.value, right.value);
  if (value === undefined) return { code: "length/over-nothing", span, message: "this divides by nothing" };
  if (ofLengths) return { dimension: "count", value, units: left.units };
  return { dimension: left.dimension === "length" ? "length" : strongest(left, right), value, units: left.units };
}

function strongest(left: Amount, right: Amount): "bare" | "count" {
  return left.dimension === "count" || right.dimension === "count" ? "count" : "bare";
}

function lengthValue(amount: Amount): Length {
  return amount.dimension === "bare" ? inUnits(amount.value, amount.units) : amount.value;
}

function asLength(amount: Amount, span: Span): { readonly value: Length } | Trouble {
  if (amount.dimension !== "count") return { value: lengthValue(amount) };
  return { code: "length/not-a-length", span, message: "this is the ratio of two lengths, not a length" };
}
