import type { Length } from "../../core/length.ts";
import { subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "wood in front of the groove",
  formula: "{frame thickness} − {panel thickness}",
  tag: "geometry",
};

/** What stays in front of a groove for a panel that ends flush with the frame's back. */
export function grooveInFront(stock: Sourced<Length>, panel: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "frame thickness": stock, "panel thickness": panel }, (of) =>
    subtract(of["frame thickness"], of["panel thickness"]),
  );
}
