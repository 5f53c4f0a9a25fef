import type { Length } from "../../core/length.ts";
import { largest, subtract, zero } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "travel", formula: "{slide length} − {stays inside}", tag: "published" };

/** How far a standard extension comes out: all but what stays inside, never less than nought. A 20 that keeps 6 comes out 14. */
export function standardTravel(slide: Sourced<Length>, stays: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "slide length": slide, "stays inside": stays }, (of) =>
    largest(zero, subtract(of["slide length"], of["stays inside"])),
  );
}
