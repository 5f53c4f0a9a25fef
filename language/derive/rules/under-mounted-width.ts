import type { Length } from "../../core/length.ts";
import { add, subtract, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "box width",
  formula: "{opening width} − {inside deduction} + 2 × {side thickness}",
  tag: "common practice",
  source: "common practice, no source: 21 mm from the case to the inside of the box",
};

/** Outside width of an under-mounted box: its inside is the opening less the slides' deduction, its sides come on top. 15 less 42 mm plus twice 5/8 is 14.596. */
export function underMountedWidth(
  opening: Sourced<Length>,
  inside: Sourced<Length>,
  side: Sourced<Length>,
): Sourced<Length> {
  return derived(rule, { "opening width": opening, "inside deduction": inside, "side thickness": side }, (of) =>
    add(subtract(of["opening width"], of["inside deduction"]), times(of["side thickness"], 2)),
  );
}
