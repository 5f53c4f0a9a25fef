import type { Length } from "../../core/length.ts";
import { add, subtract, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "length with its housings",
  formula: "{outside} − 2 × {thickness} + 2 × {housing depth}",
  tag: "geometry",
};

/** Length of a piece housed in two: what is left between them and the depth of both housings. 14 1/2 less twice 45/64 plus twice 3/8. */
export function housedBetween(
  whole: Sourced<Length>,
  thickness: Sourced<Length>,
  depth: Sourced<Length>,
): Sourced<Length> {
  return derived(rule, { outside: whole, thickness: thickness, "housing depth": depth }, (of) =>
    add(subtract(of.outside, times(of.thickness, 2)), times(of["housing depth"], 2)),
  );
}
