import type { Finding, Fix } from "../core/finding.ts";
import type { Length } from "../core/length.ts";
import { withUnit, writtenText } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { divide, floor, isPositive, times } from "../core/rational.ts";
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

/** A finding whose `related` and `fixes` may be left out. */
export function finding(
  said: Omit<Finding, "related" | "fixes"> & Partial<Pick<Finding, "related" | "fixes">>,
): Finding {
  return { related: [], fixes: [], ...said };
}

/** A length in the words of the file. */
export function say(context: Context, length: Length): string {
  return withUnit(length, context.units);
}

/** The word to change: where the value itself is written, or else the nearest written thing that it hangs on. */
export function placeOf(value: Sourced<unknown>, otherwise: Span): Span {
  return writtenPlaces(value)[0] ?? otherwise;
}

/** A fix that the maker should look at: another text at a place. */
export function rewrite(span: Span, text: string, title = `Write ${text}`): Fix {
  return { title, edits: [{ span, text }], safe: false };
}

/** As `rewrite`, for a text that is right whatever else is meant: it may be applied with all others unseen. */
export function rewriteSafely(span: Span, text: string, title = `Write ${text}`): Fix {
  return { title, edits: [{ span, text }], safe: true };
}

/** As it is written in the file, at most the length: whole steps of the file's reading. `undefined` for less than a step. */
export function textBelow(context: Context, length: Length): string | undefined {
  const steps = floor(divide(length, context.reading.step) ?? length);
  const rounded = times(context.reading.step, steps);
  return isPositive(rounded) ? writtenText(rounded, context.units) : undefined;
}

/** As `textBelow`, at least the length. */
export function textAbove(context: Context, length: Length): string {
  const steps = divide({ n: -length.n, d: length.d }, context.reading.step) ?? length;
  return writtenText(times(context.reading.step, -floor(steps)), context.units);
}

/** A part as it is talked of: by its own name where it stands alone, else with its owner. */
export function nameOf({ name, of }: Pick<Part, "name" | "of">): string {
  return of === `part ${name}` ? `part "${name}"` : `the ${name} of ${of}`;
}

/** A length that was worked out in doubles (a sag, a swelling), in the units of the file: to a hundredth of an inch or a tenth of a millimetre. */
export function sayRoughly(context: Context, inches: number): string {
  return context.units === "inches" ? `${number(inches, 2)} in` : `${number(inches * 25.4)} mm`;
}

/** An amount that is no length, as a person says it: at most `places` decimals, no noughts behind. */
export function number(value: number, places = 1): string {
  return String(Number(value.toFixed(places)));
}
