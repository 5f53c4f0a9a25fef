import type { Length } from "../../core/length.ts";
import { subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "box height", formula: "{opening height} − {above} − {below}", tag: "common practice" };

/** Height of a box, bottom counted in: the opening less the room above and below. 6 less 1/4 and 1/4 is 5 1/2. */
export function boxHeight(opening: Sourced<Length>, above: Sourced<Length>, below: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "opening height": opening, above: above, below: below }, (of) =>
    subtract(subtract(of["opening height"], of.above), of.below),
  );
}
