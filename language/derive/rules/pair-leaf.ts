import type { Length } from "../../core/length.ts";
import { over, subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "one leaf", formula: "({both leaves} − {gap between}) ÷ 2", tag: "geometry" };

/** One leaf of a pair: half of what the gap between them leaves. */
export function pairLeaf(whole: Sourced<Length>, gap: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "both leaves": whole, "gap between": gap }, (of) =>
    over(subtract(of["both leaves"], of["gap between"]), 2),
  );
}
