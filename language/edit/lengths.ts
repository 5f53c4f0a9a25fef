import type { Design } from "../core/design.ts";
import type { Expr, Measure, NumberExpr } from "../core/expr.ts";
import { visit } from "./names.ts";

/** An expression that states a length by itself, and the measure that it is a part of. */
export interface LengthRoot {
  readonly expr: Expr;
  /** `undefined` where the language takes no tolerance, as for the length of a slide. */
  readonly measure: Measure | undefined;
}

/** Every length that a design states, each once: values, tolerances and the ends of ranges. */
export function lengthRoots(design: Design): readonly LengthRoot[] {
  const found = new Map<number, LengthRoot>();
  const put = (expr: unknown, measure: Measure | undefined): void => {
    const of = expr as Expr | undefined;
    if (of !== undefined && !found.has(of.span.start)) found.set(of.span.start, { expr: of, measure });
  };
  visit(design, (value) => {
    if (isMeasure(value)) for (const part of [value.value, value.plus, value.minus, value.to]) put(part, value);
  });
  for (const { lengths } of design.slides) {
    if (lengths === undefined) continue;
    for (const expr of [lengths.first, lengths.last, lengths.step, ...lengths.more]) put(expr, undefined);
  }
  for (const { slides } of design.boxes) put(slides?.length, undefined);
  return [...found.values()].toSorted((a, b) => a.expr.span.start - b.expr.span.start);
}

function isMeasure(value: object): value is Measure {
  return "plus" in value && "minus" in value && "to" in value;
}

/** The numbers without a unit that are lengths in an expression: those that only multiply are counts. */
export function bareLengths(expr: Expr): readonly NumberExpr[] {
  return lengthsIn(expr).filter((one): one is NumberExpr => one.kind === "number" && one.unit === undefined);
}

/** Every part of an expression that is a length, the whole first. */
export function lengthsIn(expr: Expr): readonly Expr[] {
  const found: Expr[] = [];
  gather(expr, meansLength, found);
  return found;
}

const meansLength = true;

/** `wanted`: whether a plain number that the expression comes to would be a length. */
function gather(expr: Expr, wanted: boolean, found: Expr[]): void {
  const own = dimensionOf(expr);
  if (own === "length" || (own === "bare" && wanted)) found.push(expr);
  if (expr.kind === "negate") gather(expr.of, wanted, found);
  if (expr.kind !== "binary") return;
  const [left, right] = [dimensionOf(expr.left), dimensionOf(expr.right)];
  const bare = left === "bare" && right === "bare";
  const isScaled = bare && (expr.operator === "*" || expr.operator === "/");
  const [ofLeft, ofRight] = isScaled
    ? scaled(expr, wanted)
    : wantedOf(expr.operator, left, right, own === "length" || wanted);
  gather(expr.left, ofLeft, found);
  gather(expr.right, ofRight, found);
}

type Dimension = "bare" | "length" | "count";

/** Whether a plain number on either side would be a length. */
function wantedOf(
  operator: "+" | "-" | "*" | "/",
  left: Dimension,
  right: Dimension,
  wanted: boolean,
): readonly [boolean, boolean] {
  const sums = operator === "+" || operator === "-";
  if (sums) return left === "count" || right === "count" ? [false, false] : [wanted, wanted];
  return [left === "length", right === "length"];
}

/** Of two plain numbers one is the length and the other says how often: the whole one of `2 * 7 3/4`. */
function scaled({ operator, left }: Extract<Expr, { kind: "binary" }>, wanted: boolean): readonly [boolean, boolean] {
  const timesFirst = operator === "*" && left.kind === "number" && left.value.d === 1n;
  return timesFirst ? [false, wanted] : [wanted, false];
}

/** What an expression comes to, as far as one can say without its values. */
function dimensionOf(expr: Expr): Dimension {
  switch (expr.kind) {
    case "number":
      return expr.unit === undefined ? "bare" : "length";
    case "name":
      return "length";
    case "negate":
      return dimensionOf(expr.of);
    case "binary":
      return combined(expr.operator, dimensionOf(expr.left), dimensionOf(expr.right));
    case "broken":
      return "count";
  }
}

function combined(operator: "+" | "-" | "*" | "/", left: Dimension, right: Dimension): Dimension {
  if (operator === "/" && left === "length" && right === "length") return "count";
  if (left === "length" || right === "length") return "length";
  return left === "count" || right === "count" ? "count" : "bare";
}
