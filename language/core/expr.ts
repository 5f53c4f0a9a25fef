import type { LengthUnit, Units } from "./length.ts";
import type { Rational } from "./rational.ts";
import type { Span, Word } from "./span.ts";

/** An expression as written, free of the syntax tree. */
export type Expr = NumberExpr | NameExpr | BinaryExpr | NegateExpr | BrokenExpr;

/** A number; without a unit it means the units of its file, or a plain count where it multiplies. */
export interface NumberExpr {
  readonly kind: "number";
  readonly value: Rational;
  readonly unit: LengthUnit | undefined;
  readonly units: Units;
  readonly span: Span;
}

/** A name (`gap`) or a reading of a named thing (`runner.clearance`). */
export interface NameExpr {
  readonly kind: "name";
  readonly path: readonly Word[];
  readonly span: Span;
}

export interface BinaryExpr {
  readonly kind: "binary";
  readonly operator: "+" | "-" | "*" | "/";
  readonly left: Expr;
  readonly right: Expr;
  readonly span: Span;
}

export interface NegateExpr {
  readonly kind: "negate";
  readonly of: Expr;
  readonly span: Span;
}

/** Half a line: what was meant is not known yet. */
export interface BrokenExpr {
  readonly kind: "broken";
  readonly span: Span;
}

/** A length as written: a value with its tolerances (both counted positive), or the range from `value` to `to`. */
export interface Measure {
  readonly value: Expr;
  readonly plus: Expr | undefined;
  readonly minus: Expr | undefined;
  readonly to: Expr | undefined;
  readonly units: Units;
  readonly text: string;
  readonly span: Span;
}
