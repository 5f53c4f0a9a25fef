import type { Length } from "../../core/length.ts";
import { add, subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = {
  gives: "depth of the bottom",
  formula: "{inside depth} + {groove depth} + {back thickness} − {play}",
  tag: "geometry",
};

/** Depth of a bottom that slides in under the back: inside, one groove, the back's thickness, less its play. */
export function bottomFromBehind(
  inside: Sourced<Length>,
  groove: Sourced<Length>,
  back: Sourced<Length>,
  play: Sourced<Length>,
): Sourced<Length> {
  return derived(rule, { "inside depth": inside, "groove depth": groove, "back thickness": back, play: play }, (of) =>
    subtract(add(add(of["inside depth"], of["groove depth"]), of["back thickness"]), of.play),
  );
}
