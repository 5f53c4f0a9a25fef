import type { Length } from "../../core/length.ts";
import { subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "height of the sides", formula: "{box height} − {bottom thickness}", tag: "geometry" };

/** Height of a box's sides over a bottom that lies under them: the box less the bottom. 5 1/2 less 15/32 is 5 1/32. */
export function sideHeight(height: Sourced<Length>, bottom: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "box height": height, "bottom thickness": bottom }, (of) =>
    subtract(of["box height"], of["bottom thickness"]),
  );
}
