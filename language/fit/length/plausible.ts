import type { Expr, Measure } from "../../core/expr.ts";
import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { inUnit, inUnits } from "../../core/length.ts";
import { less } from "../../core/rational.ts";
import { behind } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { longest } from "../../derive/context.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say } from "../check.ts";
import { limits } from "../limits.ts";

/** A size without a unit should be one that such a thing can have; far off, the other unit was meant. */
export const sizeShouldBePlausible: Check = {
  codes: ["length/unit-slip"],
  run: (context) => claims(context).flatMap((claim) => check(context, claim)),
};

interface Claim {
  readonly value: Expr | undefined;
  readonly thing: string;
  readonly least: Length;
  readonly most: Length;
}

function claims({ design }: Context): readonly Claim[] {
  const of = (measure: Measure | undefined): Expr | undefined => measure?.value;
  const claim = (value: Expr | undefined, thing: string, least: Length, most: Length): Claim => ({
    value,
    thing,
    least,
    most,
  });
  const { smallestCase, smallestSheet, smallestSlide, largestSlide, largest } = limits;
  return [
    ...design.cases.flatMap((block) =>
      [block.wide, block.high, block.deep].map((list) =>
        claim(of(list?.values[0]?.measure), "case", smallestCase.value, largest.value),
      ),
    ),
    ...design.openings.flatMap((block) =>
      [block.wide, block.high, block.deep].flatMap((list) =>
        (list?.values ?? []).map((one) => claim(one.measure.value, "opening", { n: 1n, d: 1n }, largest.value)),
      ),
    ),
    ...design.sheets.flatMap(({ size }) =>
      [size?.first, size?.second].map((one) => claim(of(one), "sheet", smallestSheet.value, largest.value)),
    ),
    ...design.slides.flatMap(({ lengths }) =>
      [lengths?.first, lengths?.last].map((one) => claim(one, "slide", smallestSlide.value, largestSlide.value)),
    ),
  ];
}

function check(context: Context, { value, thing, least, most }: Claim): readonly Finding[] {
  if (value?.kind !== "number" || value.unit !== undefined || value.value.n <= 0n) return [];
  const length = inUnits(value.value, value.units);
  const isSmall = less(length, least);
  if (!isSmall && !less(most, length)) return [];
  // Past that it is an error already, and no unit would mend it.
  if (less(longest, length)) return [];
  const unit = value.units === "inches" ? "mm" : "in";
  const meant = inUnit(value.value, unit);
  const helps = !less(meant, least) && !less(most, meant);
  return [
    finding({
      code: "length/unit-slip",
      severity: "warning",
      span: value.span,
      message: `this ${thing} would be ${say(context, length)}: ${isSmall ? "smaller" : "larger"} than any ${thing} is`,
      reason: "A bare number means the units of its file; a single size in another unit spoils all that hangs on it.",
      remedy: helps ? `Write its unit: ${value.units === "inches" ? "mm" : "in"}.` : "Check the number.",
      fixes: helps ? [rewrite(behind(value.span), ` ${unit}`, `Write ${unit} behind it`)] : [],
    }),
  ];
}
