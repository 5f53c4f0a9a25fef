import type { Length } from "../../core/length.ts";
import { add, subtract, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "bottom in its grooves",
  formula: "{inside} + 2 × {groove depth} − {play}",
  tag: "geometry",
};

/** A bottom in grooves all round: the inside and the depth of both grooves, less its play. */
export function bottomInGrooves(
  inside: Sourced<Length>,
  groove: Sourced<Length>,
  play: Sourced<Length>,
): Sourced<Length> {
  return derived(rule, { inside: inside, "groove depth": groove, play: play }, (of) =>
    subtract(add(of.inside, times(of["groove depth"], 2)), of.play),
  );
}
