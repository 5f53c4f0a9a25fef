import type { Finding, Fix } from "../core/finding.ts";
import type { Length } from "../core/length.ts";
import { withUnit, writtenText } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { divide, floor, less as isLess, isPositive, times, zero } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { walk, writtenPlaces } from "../core/sourced.ts";
import type { Span } from "../core/span.ts";
import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import { poundInKilograms } from "../published/lifting.ts";

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

/** As `placeOf` where something is too large: the largest written length that it hangs on, and not the thickness of a stock. */
export function placeOfLargest(value: Sourced<Length>, otherwise: Span): Span {
  let place: Span | undefined;
  let most: Length = zero;
  walk(value, (origin, at) => {
    const span = origin.kind === "written" ? origin.span : origin.kind === "derived" ? origin.at : undefined;
    const length = at.value as Length;
    if (span === undefined || (place !== undefined && !isLess(most, length))) return;
    [place, most] = [span, length];
  });
  return place ?? otherwise;
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

/** Two such lengths of which one is more: with as many decimals as tell them apart, four at most. */
export function sayApart(context: Context, one: number, other: number): readonly [string, string] {
  const isInches = context.units === "inches";
  const texts = (places: number): readonly [string, string] => {
    const text = (inches: number) =>
      isInches ? `${number(inches, places)} in` : `${number(inches * 25.4, places)} mm`;
    return [text(one), text(other)];
  };
  for (let places = isInches ? 2 : 1; places < 4; places++) {
    const [first, second] = texts(places);
    if (first !== second) return [first, second];
  }
  return texts(4);
}

/** Pounds as the file's maker weighs: whole pounds, or kilograms, to a tenth where they are few. */
export function sayWeight({ units }: Context, pounds: number): string {
  if (units === "inches") return `${number(pounds, 0)} lb`;
  const kilograms = pounds * poundInKilograms;
  return `${number(kilograms, kilograms < 10 ? 1 : 0)} kg`;
}

/** A load of pounds per square foot in the units of the file: `15 lb per square foot`, `73 kg per square metre`. */
export function sayLoad(context: Context, pounds: number): string {
  if (context.units === "inches") return `${number(pounds)} lb per square foot`;
  return `${number((pounds * poundInKilograms) / squareFoot, 0)} kg per square metre`;
}

/** In square metres. */
const squareFoot = 0.3048 ** 2;

/** Cubic inches in the units of the file, as furniture is reckoned: `8.5 cubic feet`, `241 litres`. */
export function sayVolume(context: Context, cubicInches: number): string {
  if (context.units === "inches") return `${number(cubicInches / 1728)} cubic feet`;
  return `${number(cubicInches * 0.0254 ** 3 * 1000, 0)} litres`;
}

/** An amount that is no length, as a person says it: at most `places` decimals, no noughts behind. */
export function number(value: number, places = 1): string {
  return String(Number(value.toFixed(places)));
}
