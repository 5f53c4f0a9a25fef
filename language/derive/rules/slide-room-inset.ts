import type { Length } from "../../core/length.ts";
import { subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "room for the slide",
  formula: "{opening depth} − {behind} − {front thickness}",
  tag: "common practice",
};

/** Depth that a slide may take behind an inset front: the front's thickness comes off as well. */
export function slideRoomInset(
  depth: Sourced<Length>,
  behind: Sourced<Length>,
  front: Sourced<Length>,
): Sourced<Length> {
  return derived(rule, { "opening depth": depth, behind: behind, "front thickness": front }, (of) =>
    subtract(subtract(of["opening depth"], of.behind), of["front thickness"]),
  );
}
