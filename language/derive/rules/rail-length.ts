import type { Length } from "../../core/length.ts";
import { add, subtract, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "rail length",
  formula: "{outside width} − 2 × {stile width} + 2 × {tongue}",
  tag: "geometry",
};

/** A rail between two stiles with a tongue at each end. 17 less twice 2 plus twice 3/8 is 13 3/4. */
export function railLength(outside: Sourced<Length>, stile: Sourced<Length>, tongue: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "outside width": outside, "stile width": stile, tongue: tongue }, (of) =>
    add(subtract(of["outside width"], times(of["stile width"], 2)), times(of.tongue, 2)),
  );
}
