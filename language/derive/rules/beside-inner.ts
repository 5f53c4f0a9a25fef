import type { Length } from "../../core/length.ts";
import { over, subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "behind the opening's edge",
  formula: "({stile width} − {partition thickness}) ÷ 2",
  tag: "geometry",
};

/** How far a partition in the middle of a stile lies behind the opening's edge. */
export function besideInner(stile: Sourced<Length>, panel: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "stile width": stile, "partition thickness": panel }, (of) =>
    over(subtract(of["stile width"], of["partition thickness"]), 2),
  );
}
