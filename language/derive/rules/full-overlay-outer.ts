import type { Length } from "../../core/length.ts";
import { subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "overlay at the outside", formula: "{member width} − {reveal}", tag: "geometry" };

/** Overlay at the outside of a case: the member's whole width less the reveal. */
export function fullOverlayOuter(member: Sourced<Length>, reveal: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "member width": member, reveal: reveal }, (of) => subtract(of["member width"], of.reveal));
}
