import type { Finding, Severity } from "../../core/finding.ts";
import type { Contribution, Interval } from "../../core/interval.ts";
import { intervalOf } from "../../core/interval.ts";
import type { Length } from "../../core/length.ts";
import { less, subtract, sum, toNumber, zero } from "../../core/rational.ts";
import type { Sourced } from "../../core/sourced.ts";
import type { Span } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import { finding, number, say } from "../check.ts";

/** How a fit comes out over the whole interval that its sizes can take. */
export type Verdict = "fits" | "fits only if the work is better than usual" | "does not fit";

/** What a fit must lie within; an end that is missing does not matter. Inches. */
export interface Bounds {
  readonly least: Length | undefined;
  readonly most: Length | undefined;
}

/** Misses by no more than a cut's own tolerance are forgiven: a pass of the plane takes them off. */
export function judge({ low, high }: Interval, { least, most }: Bounds): Verdict {
  const forgiven = fallback("cut.tolerance").value;
  const isNever = (least !== undefined && less(high, least)) || (most !== undefined && less(most, low));
  if (isNever) return "does not fit";
  const short = least === undefined ? zero : subtract(least, low);
  const over = most === undefined ? zero : subtract(high, most);
  return less(forgiven, short) || less(forgiven, over) ? "fits only if the work is better than usual" : "fits";
}

/** One fit of a build: what must lie within which bounds, and how it is talked of. */
export interface Fit {
  readonly code: string;
  readonly value: Sourced<Length>;
  readonly bounds: Bounds;
  /** `the room for each slide of "inks"`. */
  readonly what: string;
  readonly reason: string;
  readonly remedy: string;
  /** Where nothing uncertain is written. */
  readonly place: Span;
  readonly related: Finding["related"];
}

/** A finding where a fit does not hold on its worst case, on the size that does most to it. */
export function fitFinding(context: Context, fit: Fit): readonly Finding[] {
  const interval = intervalOf(fit.value);
  const verdict = judge(interval, fit.bounds);
  if (verdict === "fits") return [];
  const severity: Severity = verdict === "does not fit" ? "error" : "warning";
  const first = interval.contributions[0];
  return [
    finding({
      code: fit.code,
      severity,
      span: placeFor(first) ?? fit.place,
      message: `${verdict}: ${fit.what} comes to ${between(context, interval.low, interval.high)}, and should be ${wanted(context, fit.bounds)}${share(interval)}`,
      reason: fit.reason,
      remedy: fit.remedy,
      related: [{ span: fit.place, message: "the fit is made here" }, ...fit.related],
    }),
  ];
}

function placeFor(first: Contribution | undefined): Span | undefined {
  return first === undefined || isCut(first) ? undefined : first.place;
}

function isCut({ leaf }: Contribution): boolean {
  return leaf.origin.kind === "derived" && leaf.origin.rule.gives === "as cut";
}

function share({ contributions }: Interval): string {
  const first = contributions[0];
  if (first === undefined) return "";
  const all = toNumber(sum(contributions.map((one) => one.spread)));
  const part = number((100 * toNumber(first.spread)) / all, 0);
  const name = isCut(first) ? `cut of the ${first.name}` : first.name;
  return contributions.length === 1 ? `; all of it comes from the ${name}` : `; ${part} % of it comes from the ${name}`;
}

function between(context: Context, low: Length, high: Length): string {
  return `${say(context, low)} to ${say(context, high)}`;
}

function wanted(context: Context, { least, most }: Bounds): string {
  if (least === undefined) return `${say(context, most ?? zero)} at most`;
  return most === undefined ? `${say(context, least)} at least` : between(context, least, most);
}

/** A length with the range between two others: the readings of an opening, say. */
export function ranging(value: Sourced<Length>, low: Length, high: Length): Sourced<Length> {
  return { ...value, low, high };
}
