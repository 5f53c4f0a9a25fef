import type { BoxBlock, LengthSeries, SlidesBlock } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import { writtenText } from "../core/length.ts";
import { add, compare, equal, less as isLess, isPositive, toNumber } from "../core/rational.ts";
import type { Rule, Sourced } from "../core/sourced.ts";
import { derived } from "../core/sourced.ts";
import type { Span } from "../core/span.ts";
import type { Context } from "./context.ts";
import { found, givenDistance, givenSize, lengthIn } from "./context.ts";
import { fallback } from "./defaults.ts";
import type { Opening, SlideModel } from "./model.ts";
import { less } from "./rules/less.ts";
import { slideRoom } from "./rules/slide-room.ts";
import { slideRoomInset } from "./rules/slide-room-inset.ts";
import { standardTravel } from "./rules/standard-travel.ts";

/** More lengths than any series has: guards against a step written too small. */
const mostLengths = 200;

/** The slides of a box in an opening: their room, the series, and the length used. */
export function slidesFor(
  context: Context,
  block: SlidesBlock,
  use: NonNullable<BoxBlock["slides"]>,
  opening: Opening,
  insetFront: Sourced<Length> | undefined,
): SlideModel {
  const under = block.mount?.value === "under";
  const behind = givenDistance(context, block.behind) ?? fallback(under ? "under.behind" : "slides.behind");
  const boxRoom = roomFor(opening, behind, insetFront);
  const longer = givenDistance(context, block.longer);
  // A slide is sold by a length that it may pass; the box goes by the name.
  const room = boxRoom === undefined || longer === undefined ? boxRoom : less(boxRoom, longer);
  const series = knownSeries(context, block);
  const named = use.length === undefined ? undefined : lengthIn(context, use.length);
  const length = named ?? longestOf(series, room);
  return {
    block,
    name: block.name.text,
    length,
    room,
    boxRoom,
    series,
    // A centre slide lies under the box: beside it there is only what a box needs to go in.
    clearance:
      givenDistance(context, block.clearance) ??
      fallback(block.mount?.value === "centre" ? "shelf.endGap" : "slides.clearance"),
    above: givenDistance(context, block.above) ?? fallback(under ? "under.above" : "slides.above"),
    below: givenDistance(context, block.below) ?? fallback(under ? "under.below" : "slides.below"),
    behind,
    travel: givenSize(context, block.travel) ?? comesOut(block, length, "slides.staysIn"),
    farthest: givenSize(context, block.travel) ?? comesOut(block, length, "slides.staysLeast"),
  };
}

/** How far a slide of this length comes out: a standard extension keeps some of it inside, any other nothing. */
function comesOut(
  block: SlidesBlock,
  length: Sourced<Length> | undefined,
  stays: "slides.staysIn" | "slides.staysLeast",
): Sourced<Length> | undefined {
  return length === undefined || block.extension?.value !== "standard"
    ? length
    : standardTravel(length, fallback(stays));
}

function roomFor(
  opening: Opening,
  behind: Sourced<Length>,
  insetFront: Sourced<Length> | undefined,
): Sourced<Length> | undefined {
  if (opening.deep === undefined) return undefined;
  return insetFront === undefined ? slideRoom(opening.deep, behind) : slideRoomInset(opening.deep, behind, insetFront);
}

const longestRule: Rule = {
  gives: "slide length",
  formula: "the longest of the series not over {room}",
  tag: "common practice",
};

/** The longest of the series that the room allows; without a depth nothing can be chosen. */
function longestOf(series: readonly Sourced<Length>[], room: Sourced<Length> | undefined): Sourced<Length> | undefined {
  if (room === undefined) return undefined;
  const fitting = series.filter((length) => compare(length.value, room.value) <= 0).at(-1);
  if (fitting === undefined) return undefined;
  return derived(longestRule, { room, "of the series": fitting }, (of) => of["of the series"]);
}

/** Worked out once for all boxes of a design. */
function knownSeries(context: Context, block: SlidesBlock): readonly Sourced<Length>[] {
  const known = context.series.get(block) ?? seriesOf(context, block.lengths);
  context.series.set(block, known);
  return known;
}

/** The lengths of a series, shortest first. */
export function seriesOf(context: Context, series: LengthSeries | undefined): readonly Sourced<Length>[] {
  if (series === undefined) return [];
  const first = lengthIn(context, series.first);
  if (first === undefined) return [];
  const lengths =
    series.last === undefined
      ? [first, ...series.more.flatMap((expr) => lengthIn(context, expr) ?? [])]
      : stepped(context, series, first);
  const positive = lengths.filter((length) => isPositive(length.value));
  if (positive.length < lengths.length) badSeries(context, series.span, "a length of nought or less is not sold");
  return [...positive].sort((a, b) => compare(a.value, b.value));
}

function stepped(context: Context, series: LengthSeries, first: Sourced<Length>): readonly Sourced<Length>[] {
  const last = lengthIn(context, series.last!);
  const step = series.step === undefined ? undefined : lengthIn(context, series.step);
  if (last === undefined || step === undefined) return [first];
  if (!isPositive(step.value) || isLess(last.value, first.value)) {
    badSeries(context, series.span, "this series does not count upwards");
    return [first];
  }
  if (mostLengths < (toNumber(last.value) - toNumber(first.value)) / toNumber(step.value)) {
    badSeries(context, series.span, `this series has more than ${mostLengths} lengths`);
    return [first];
  }
  const lengths: Sourced<Length>[] = [];
  for (let at = first.value; compare(at, last.value) <= 0; at = add(at, step.value)) {
    lengths.push({ value: at, origin: { kind: "written", span: series.span, text: writtenText(at, context.units) } });
  }
  return lengths;
}

function badSeries(context: Context, span: Span, message: string): void {
  if (context.findings.some((finding) => finding.code === "slide/bad-series" && finding.span.start === span.start))
    return;
  found(context, {
    code: "slide/bad-series",
    severity: "error",
    span,
    message,
    reason: "Slides are chosen from the lengths that can be bought.",
    remedy: "Write the shortest, the longest and the step: lengths 10 to 28 by 2, or list them.",
  });
}

/** Whether a length is one of the series. */
export function inSeries(slides: SlideModel): boolean {
  return (
    slides.length === undefined ||
    slides.series.length === 0 ||
    slides.series.some((length) => equal(length.value, slides.length!.value))
  );
}

/** The longest of the series that fits, for messages and fixes. */
export function longestThatFits(slides: SlideModel): Sourced<Length> | undefined {
  return slides.room === undefined
    ? undefined
    : slides.series.filter((length) => compare(length.value, slides.room!.value) <= 0).at(-1);
}
