import type { Length } from "../../core/length.ts";
import { subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "core under its edging", formula: "{finished size} − {edging}", tag: "geometry" };

/** A core under its edging: the finished size less a band at each edge that has one. */
export function coreLessEdging(finished: Sourced<Length>, band: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "finished size": finished, edging: band }, (of) => subtract(of["finished size"], of.edging));
}
