import type { Length } from "../../core/length.ts";
import { add } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "the two together", formula: "{length} + {plus}", tag: "geometry" };

/** One length and another. */
export function plus(first: Sourced<Length>, second: Sourced<Length>): Sourced<Length> {
  return derived(rule, { length: first, plus: second }, (of) => add(of.length, of.plus));
}
