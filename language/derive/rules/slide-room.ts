import type { Length } from "../../core/length.ts";
import { subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "room for the slide", formula: "{opening depth} − {behind}", tag: "common practice" };

/** Depth that a slide may take: the opening's depth less the room behind. 22 less 1/2 is 21 1/2. */
export function slideRoom(depth: Sourced<Length>, behind: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "opening depth": depth, behind: behind }, (of) => subtract(of["opening depth"], of.behind));
}
