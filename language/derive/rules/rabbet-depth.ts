import type { Length } from "../../core/length.ts";
import { subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "depth of the rabbet", formula: "{panel thickness} − {groove width}", tag: "geometry" };

/** How deep a panel is rabbeted so that its tongue fills the groove. */
export function rabbetDepth(panel: Sourced<Length>, groove: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "panel thickness": panel, "groove width": groove }, (of) =>
    subtract(of["panel thickness"], of["groove width"]),
  );
}
