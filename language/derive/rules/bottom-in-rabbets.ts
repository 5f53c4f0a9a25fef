import type { Length } from "../../core/length.ts";
import { add, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "bottom in its rabbets", formula: "{inside} + 2 × {rabbet}", tag: "geometry" };

/** A bottom in rabbets all round: the inside and the depth of both rabbets. */
export function bottomInRabbets(inside: Sourced<Length>, rabbet: Sourced<Length>): Sourced<Length> {
  return derived(rule, { inside: inside, rabbet: rabbet }, (of) => add(of.inside, times(of.rabbet, 2)));
}
