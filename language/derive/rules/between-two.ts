import type { Length } from "../../core/length.ts";
import { subtract, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "length between two pieces", formula: "{outside} − 2 × {thickness}", tag: "geometry" };

/** What is left between two pieces of one thickness: the whole less twice the thickness. 14 1/2 less twice 45/64 is 13 3/32. */
export function betweenTwo(whole: Sourced<Length>, thickness: Sourced<Length>): Sourced<Length> {
  return derived(rule, { outside: whole, thickness: thickness }, (of) => subtract(of.outside, times(of.thickness, 2)));
}
