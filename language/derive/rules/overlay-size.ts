import type { Length } from "../../core/length.ts";
import { add } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "front over its opening",
  formula: "{opening} + {one overlay} + {other overlay}",
  tag: "geometry",
};

/** A front over its opening: the opening and both overlays. 15 1/2 and twice 1/2 is 16 1/2. */
export function overlaySize(
  opening: Sourced<Length>,
  first: Sourced<Length>,
  second: Sourced<Length>,
): Sourced<Length> {
  return derived(rule, { opening: opening, "one overlay": first, "other overlay": second }, (of) =>
    add(add(of.opening, of["one overlay"]), of["other overlay"]),
  );
}
