import type { Length } from "../../core/length.ts";
import { over, subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "overlay over a shared member",
  formula: "({member width} − {gap between}) ÷ 2",
  tag: "geometry",
};

/** Overlay over a member that two fronts share: half of what their gap leaves. */
export function fullOverlayInner(member: Sourced<Length>, gap: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "member width": member, "gap between": gap }, (of) =>
    over(subtract(of["member width"], of["gap between"]), 2),
  );
}
