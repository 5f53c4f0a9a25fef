import type { Length } from "../../core/length.ts";
import { subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "length between two pieces",
  formula: "{outside} − {one thickness} − {other thickness}",
  tag: "geometry",
};

/** What is left between two pieces of different thickness. */
export function betweenUnlike(
  whole: Sourced<Length>,
  first: Sourced<Length>,
  second: Sourced<Length>,
): Sourced<Length> {
  return derived(rule, { outside: whole, "one thickness": first, "other thickness": second }, (of) =>
    subtract(subtract(of.outside, of["one thickness"]), of["other thickness"]),
  );
}
