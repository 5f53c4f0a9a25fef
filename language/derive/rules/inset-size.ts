import type { Length } from "../../core/length.ts";
import { subtract, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "front in its opening", formula: "{opening} − 2 × {gap}", tag: "geometry" };

/** A front in its opening: the opening less the gap at both edges. */
export function insetSize(opening: Sourced<Length>, gap: Sourced<Length>): Sourced<Length> {
  return derived(rule, { opening: opening, gap: gap }, (of) => subtract(of.opening, times(of.gap, 2)));
}
