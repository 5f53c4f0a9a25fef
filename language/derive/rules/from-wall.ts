import type { Length } from "../../core/length.ts";
import { subtract } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "clear of the trim", formula: "{to the wall} − {trim}", tag: "geometry" };

/** What a trim leaves of the way to its wall: less than nought where it stands before the case. */
export function fromWall(away: Sourced<Length>, trim: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "to the wall": away, trim }, (of) => subtract(of["to the wall"], of.trim));
}
