import type { Length } from "../../core/length.ts";
import { subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "what is left", formula: "{whole} − {less}", tag: "geometry" };

/** One length less another. */
export function less(whole: Sourced<Length>, part: Sourced<Length>): Sourced<Length> {
  return derived(rule, { whole: whole, less: part }, (of) => subtract(of.whole, of.less));
}
