import type { Expr, Measure } from "../core/expr.ts";
import type { LengthUnit } from "../core/length.ts";
import { inUnit, parseCount } from "../core/length.ts";
import { add } from "../core/rational.ts";
import type { Span } from "../core/span.ts";
import type * as ast from "../generated/ast.ts";
import type { Reader } from "./reader.ts";
import { maybe, report, spanOf, spanOfField, textAt, wordsOf } from "./reader.ts";

/** A measure as written, its tolerances sorted into plus and minus; `undefined` where nothing stands. */
export function lowerMeasure(reader: Reader, node: ast.Measure | undefined): Measure | undefined {
  if (node === undefined || maybe(node.value) === undefined) return undefined;
  const span = spanOf(reader, node);
  const amounts = node.tolerances.map((tolerance) => ({
    sign: tolerance.sign,
    amount: lowerExpr(reader, tolerance.amount, span),
  }));
  const of = (...signs: string[]): Expr | undefined => amounts.find(({ sign }) => signs.includes(sign))?.amount;
  return {
    value: lowerExpr(reader, node.value, span),
    plus: of("+", "±"),
    minus: of("-", "±"),
    to: node.upper === undefined ? undefined : lowerExpr(reader, node.upper, span),
    units: reader.units,
    text: textAt(reader, span),
    span,
  };
}

/** A count or amount that stands alone. */
export function lowerExpr(reader: Reader, node: ast.Expression | undefined, around: Span): Expr {
  if (node === undefined) return { kind: "broken", span: around };
  const span = spanOf(reader, node);
  switch (node.$type) {
    case "Quantity":
      return lowerQuantity(reader, node, span);
    case "Reference":
      return { kind: "name", path: wordsOf(reader, node, "path", node.path), span };
    case "Brackets":
      return lowerBrackets(reader, node, span);
    case "Negation":
      return { kind: "negate", of: lowerExpr(reader, maybe(node.operand), span), span };
    case "Binary":
      return lowerBinary(reader, node, span);
    default:
      return { kind: "broken", span };
  }
}

function lowerQuantity(reader: Reader, node: ast.Quantity, span: Span): Expr {
  const written = [maybe(node.count) ?? "", node.inches ?? ""];
  if (written.some((text) => mostDigits < text.length)) return tooManyDigits(reader, span);
  const value = parseCount(maybe(node.count) ?? "");
  if (value === undefined) {
    if (/\/0+$/.test(node.count ?? "")) overNothing(reader, span);
    return { kind: "broken", span };
  }
  const unit = unitOf(node.unit);
  const inches = node.inches === undefined ? undefined : parseCount(node.inches);
  if (unit === undefined || inches === undefined) {
    return { kind: "number", value, unit, units: reader.units, span };
  }
  return { kind: "number", value: add(inUnit(value, unit), inches), unit: "in", units: reader.units, span };
}

/** More than any size is written with; arithmetic with millions of digits would stop the editor. */
const mostDigits = 200;

function tooManyDigits(reader: Reader, span: Span): Expr {
  report(reader, {
    code: "length/too-many-digits",
    severity: "error",
    span,
    message: `this number is written with more than ${mostDigits} signs`,
    reason: "No tape and no calliper reads so finely, and no workshop is so large.",
    remedy: "Check the number.",
  });
  return { kind: "broken", span };
}

function unitOf(written: string | undefined): LengthUnit | undefined {
  switch (written) {
    case undefined:
      return undefined;
    case '"':
    case "″":
    case "in":
      return "in";
    case "'":
    case "′":
    case "ft":
      return "ft";
    default:
      return written as LengthUnit;
  }
}

export function overNothing(reader: Reader, span: Span): void {
  report(reader, {
    code: "length/over-nothing",
    severity: "error",
    span,
    message: "this divides by nothing",
    reason: "A length over nought has no size.",
    remedy: "Write the number that it should be divided by.",
  });
}

/** A tolerance inside brackets is nearly always a subtraction written too close. */
function lowerBrackets(reader: Reader, node: ast.Brackets, span: Span): Expr {
  const inner = lowerMeasure(reader, maybe(node.inner));
  if (inner === undefined) return { kind: "broken", span };
  if (inner.plus === undefined && inner.minus === undefined && inner.to === undefined) return inner.value;
  const tolerance = node.inner.tolerances[0];
  const sign = tolerance === undefined ? span : spanOfField(reader, tolerance, "sign");
  report(reader, {
    code: "length/tolerance-in-brackets",
    severity: "error",
    span: sign,
    message: "inside brackets this reads as a tolerance",
    reason: "A sign that hugs its number is a tolerance; arithmetic has a space on both sides of the sign.",
    remedy: "Put a space behind the sign to add or subtract.",
    ...(tolerance === undefined || tolerance.sign === "±"
      ? {}
      : {
          fix: {
            title: "Put a space behind the sign",
            edits: [{ span: sign, text: `${tolerance.sign} ` }],
          },
        }),
  });
  return inner.value;
}

function lowerBinary(reader: Reader, node: ast.Binary, span: Span): Expr {
  const left = lowerExpr(reader, maybe(node.left), span);
  const right = lowerExpr(reader, maybe(node.right), span);
  if (node.operator === "-") hintMixedNumber(reader, node, span);
  return { kind: "binary", operator: node.operator, left, right, span };
}

/** `13 - 3/4` is meant as it stands, or was meant as thirteen and three quarters. */
function hintMixedNumber(reader: Reader, node: ast.Binary, span: Span): void {
  const { left, right } = node;
  if (maybe(left)?.$type !== "Quantity" || maybe(right)?.$type !== "Quantity") return;
  const whole = (left as ast.Quantity).count ?? "";
  const part = (right as ast.Quantity).count ?? "";
  if (!/^\d+$/.test(whole) || (left as ast.Quantity).unit !== undefined || !isProperFraction(part)) return;
  report(reader, {
    code: "length/mixed-or-minus",
    severity: "hint",
    span,
    message: `${whole} - ${part} takes ${part} away`,
    reason: "A mixed number is written without spaces round its dash; with spaces the dash subtracts.",
    remedy: `Write ${whole} ${part} for the mixed number, or leave it if the subtraction is meant.`,
    fix: { title: `Write ${whole} ${part}`, edits: [{ span, text: `${whole} ${part}` }], safe: false },
  });
}

function isProperFraction(text: string): boolean {
  const match = /^(\d+)\/(\d+)$/.exec(text);
  return match !== null && BigInt(match[1]!) < BigInt(match[2]!);
}
