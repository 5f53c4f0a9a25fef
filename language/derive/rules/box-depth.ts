import type { Length } from "../../core/length.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";

const rule: Rule = { gives: "box depth", formula: "{slide length}", tag: "common practice" };

/** A box is as deep as its slide unless it is said otherwise. */
export function boxDepth(slide: Sourced<Length>): Sourced<Length> {
  return derived(rule, { "slide length": slide }, (of) => of["slide length"]);
}
