import type { FrontBlock } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Span } from "../core/span.ts";
import { type Context, distance } from "./context.ts";

/** The gap round an inset front: the one that says so, or of a single front the one that says nothing else. */
export function gapRound(context: Context, whole: FrontBlock): Sourced<Length> | undefined {
  return distance(context, gapAt(whole, "round")?.measure);
}

/** The gap between the leaves of a pair, or between two full overlays: the one that says so, or says nothing else. */
export function gapBetween(context: Context, whole: FrontBlock): Sourced<Length> | undefined {
  return distance(context, gapAt(whole, "between")?.measure);
}

/** Where the gap round an inset front is written. */
export function gapRoundPlace(whole: FrontBlock): Span | undefined {
  return gapAt(whole, "round")?.measure.span;
}

/** A gap without a word is, of a pair, the one between its leaves. */
function gapAt(whole: FrontBlock, where: "round" | "between") {
  const values = whole.gap?.values ?? [];
  const bare = where === "round" && whole.pair !== undefined ? undefined : values.find((one) => one.edge === undefined);
  return values.find((one) => one.edge?.text === where) ?? bare;
}
