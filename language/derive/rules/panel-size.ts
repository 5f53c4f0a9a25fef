import type { Length } from "../../core/length.ts";
import { add, subtract, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "panel in its grooves",
  formula: "{clear size} + 2 × {groove depth} − 2 × {float}",
  tag: "geometry",
};

/** A panel in its grooves: the clear size and both grooves, less its float at each edge. */
export function panelSize(clear: Sourced<Length>, groove: Sourced<Length>, float: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "clear size": clear, "groove depth": groove, float: float }, (of) =>
    subtract(add(of["clear size"], times(of["groove depth"], 2)), times(of.float, 2)),
  );
}
