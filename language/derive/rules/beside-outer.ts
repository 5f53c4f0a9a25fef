import type { Length } from "../../core/length.ts";
import { subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "behind the opening's edge",
  formula: "{stile width} − {panel thickness}",
  tag: "geometry",
};

/** How far the case side lies behind the opening's edge when side and stile are flush outside. 2 less 45/64 is 1 19/64. */
export function besideOuter(stile: Sourced<Length>, panel: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "stile width": stile, "panel thickness": panel }, (of) =>
    subtract(of["stile width"], of["panel thickness"]),
  );
}
