import type { Length } from "../../core/length.ts";
import { subtract, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "box width", formula: "{opening width} − 2 × {clearance}", tag: "common practice" };

/** Outside width of a side-mounted box: the opening less a slide's room on each side. 15 1/2 less twice 1/2 is 14 1/2. */
export function boxWidth(opening: Sourced<Length>, clearance: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "opening width": opening, clearance: clearance }, (of) =>
    subtract(of["opening width"], times(of.clearance, 2)),
  );
}
