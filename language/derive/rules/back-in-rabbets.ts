import type { Length } from "../../core/length.ts";
import { subtract, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "back in its rabbets",
  formula: "{outside width} − 2 × ({panel thickness} − {rabbet})",
  tag: "geometry",
};

/** A back in the sides' rabbets: the outside less what is left of each side beyond its rabbet. 48 less twice (45/64 less 3/8). */
export function backInRabbets(
  outside: Sourced<Length>,
  panel: Sourced<Length>,
  rabbet: Sourced<Length>,
): Sourced<Length> {
  return derived(rule, { "outside width": outside, "panel thickness": panel, rabbet: rabbet }, (of) =>
    subtract(of["outside width"], times(subtract(of["panel thickness"], of.rabbet), 2)),
  );
}
