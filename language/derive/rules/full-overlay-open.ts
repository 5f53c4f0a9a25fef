import type { Length } from "../../core/length.ts";
import { negate, over } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "overlay where openings meet", formula: "−{gap between} ÷ 2", tag: "geometry" };

/** Overlay where two openings meet with nothing between them: each front stays back by half of their gap. */
export function fullOverlayOpen(gap: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "gap between": gap }, (of) => negate(over(of["gap between"], 2)));
}
