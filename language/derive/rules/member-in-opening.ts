import type { Length } from "../../core/length.ts";
import { add, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "length with its tenons", formula: "{clear width} + 2 × {tenon}", tag: "geometry" };

/** A frame member that spans a clear width with a tenon at each end. */
export function memberInOpening(clear: Sourced<Length>, tenon: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "clear width": clear, tenon: tenon }, (of) => add(of["clear width"], times(of.tenon, 2)));
}
