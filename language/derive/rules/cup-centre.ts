import type { Length } from "../../core/length.ts";
import { add, over } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "cup centre from the edge",
  formula: "{boring distance} + {cup diameter} ÷ 2",
  tag: "common practice",
  source: "common practice, no source: C = B + 17.5 mm for a 35 mm cup",
};

/** Centre of a hinge's cup from the door's edge: the boring distance and half of the cup. 5 mm and 17.5 mm is 22.5 mm. */
export function cupCentre(bore: Sourced<Length>, cup: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "boring distance": bore, "cup diameter": cup }, (of) =>
    add(of["boring distance"], over(of["cup diameter"], 2)),
  );
}
