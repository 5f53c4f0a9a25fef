import type { Finding } from "../core/finding.ts";
import type { Length } from "../core/length.ts";
import { withUnit } from "../core/length.ts";
import type { Sourced } from "../core/sourced.ts";
import { writtenPlaces } from "../core/sourced.ts";
import type { Span } from "../core/span.ts";
import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";

/** One thing that can be wrong with a design that could be derived. Each has a file of its own. */
export interface Check {
  /** The codes that it may give. */
  readonly codes: readonly string[];
  readonly run: (context: Context, model: Model) => readonly Finding[];
}

/** A length in the words of the file. */
export function say(context: Context, length: Length): string {
  return withUnit(length, context.units);
}

/** The word to change: where the value itself is written, or else the nearest written thing that it hangs on. */
export function placeOf(value: Sourced<unknown>, otherwise: Span): Span {
  return writtenPlaces(value)[0] ?? otherwise;
}
