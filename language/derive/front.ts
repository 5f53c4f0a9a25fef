import type { FrontBlock, GivenList } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import { withUnit } from "../core/length.ts";
import { equal, isPositive } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { spanFrom } from "../core/span.ts";
import type { Context } from "./context.ts";
import { distance, found, givenDistance, givenSize, resolve } from "./context.ts";
import { fallback } from "./defaults.ts";
import { gapBetween, gapRound } from "./front-gap.ts";
import { frontParts } from "./front-parts.ts";
import type { FrontModel, Opening, OpeningTable, Side, Stock } from "./model.ts";
import { openingAngle } from "./opening-angle.ts";
import { fullOverlayInner } from "./rules/full-overlay-inner.ts";
import { fullOverlayOpen } from "./rules/full-overlay-open.ts";
import { fullOverlayOuter } from "./rules/full-overlay-outer.ts";
import { insetSize } from "./rules/inset-size.ts";
import { overlaySize } from "./rules/overlay-size.ts";
import { pairLeaf } from "./rules/pair-leaf.ts";
import { spanned } from "./spanned.ts";

/** The fronts of one block: one for each opening, or one over all of them. */
export function deriveFronts(
  context: Context,
  block: FrontBlock,
  whole: FrontBlock,
  stocks: ReadonlyMap<string, Stock>,
  openings: OpeningTable,
): readonly FrontModel[] {
  const known = block.openings.flatMap((name) => resolve(context, "opening", name, openings) ?? []);
  const areas = block.spanning
    ? spanned(context, block, known)
    : known.map((opening) => ({ opening, openings: [opening] }));
  const stacked = standStacked(known);
  return areas.flatMap((area) => frontOver(context, block, whole, stocks, { ...area, stacked }) ?? []);
}

/** Whether openings stand in one column; those measured on site, whose places are not known, are taken to. */
function standStacked(openings: readonly Opening[]): boolean {
  const first = openings[0]?.rect;
  return first === undefined || openings.every(({ rect }) => rect !== undefined && equal(rect.x, first.x));
}

const planedToFit = "plane it to its opening once the case stands; the size here is the one expected";

interface Area {
  readonly opening: Opening;
  readonly openings: readonly Opening[];
  readonly stacked: boolean;
}

function frontOver(
  context: Context,
  block: FrontBlock,
  whole: FrontBlock,
  stocks: ReadonlyMap<string, Stock>,
  area: Area,
): FrontModel | undefined {
  const overlays = overlaysOf(context, whole, area.opening);
  const derivedWide = extent(context, whole, area.opening, overlays, "wide");
  const derivedHigh = extent(context, whole, area.opening, overlays, "high");
  const wide = stated(context, whole, "wide", derivedWide);
  const high = stated(context, whole, "high", derivedHigh);
  if (!isPositive(wide.value) || !isPositive(high.value)) {
    found(context, {
      code: "front/no-size",
      severity: "error",
      span: block.head,
      message: `nothing is left for the ${block.kind} of "${area.opening.name.text}"`,
      reason: "The gaps round it take all of the opening.",
      remedy: "Make the gaps smaller or the opening larger.",
    });
    return undefined;
  }
  const leaves = whole.pair === undefined ? 1 : 2;
  const leaf = whole.pair === undefined ? wide : pairLeaf(wide, gapBetween(context, whole) ?? fallback("front.pair"));
  const name = block.spanning ? area.openings.map((opening) => opening.name.text).join("+") : area.opening.name.text;
  const of = `${block.kind} ${name}`;
  const { parts, thickness } = frontParts(context, {
    block,
    whole,
    of,
    wide: leaf,
    high,
    leaves,
    stocks,
    stacked: area.stacked,
    cutToFit: whole.inset === undefined || area.opening.case === undefined ? undefined : planedToFit,
  });
  const opens = openingAngle(context, whole);
  return { block, whole, of, openings: area.openings, wide: leaf, high, leaves, thickness, overlays, opens, parts };
}

type Overlays = Readonly<Record<Side, Sourced<Length> | undefined>>;

const noOverlays: Overlays = { left: undefined, right: undefined, top: undefined, bottom: undefined };

function overlaysOf(context: Context, whole: FrontBlock, opening: Opening): Overlays {
  if (whole.inset !== undefined) return noOverlays;
  const full =
    whole.fullOverlay !== undefined || (whole.overlay === undefined && opening.case !== undefined && !opening.framed);
  const side = (at: Side): Sourced<Length> => {
    const written = edgeValue(context, whole.overlay, at);
    if (written !== undefined) return written;
    return (full ? fullOverlay(context, whole, opening, at) : undefined) ?? fallback("front.overlay");
  };
  return { left: side("left"), right: side("right"), top: side("top"), bottom: side("bottom") };
}

/** The measure for one edge: the one that names it, or the one that names none. */
export function edgeValue(context: Context, list: GivenList | undefined, edge: Side): Sourced<Length> | undefined {
  const values = list?.values ?? [];
  const written = values.find((value) => value.edge?.text === edge) ?? values.find((value) => value.edge === undefined);
  return distance(context, written?.measure);
}

function fullOverlay(context: Context, whole: FrontBlock, opening: Opening, at: Side): Sourced<Length> | undefined {
  const bound = opening.bounds[at];
  const between = (whole.pair === undefined ? gapBetween(context, whole) : undefined) ?? fallback("front.between");
  // In a case, an edge without a member is where two openings meet; of an opening that stands alone nothing is known.
  if (bound.member === undefined) return opening.case === undefined ? undefined : fullOverlayOpen(between);
  if (bound.outer)
    return fullOverlayOuter(bound.member, givenDistance(context, whole.reveal) ?? fallback("front.reveal"));
  return fullOverlayInner(bound.member, between);
}

function extent(
  context: Context,
  whole: FrontBlock,
  opening: Opening,
  overlays: Overlays,
  which: "wide" | "high",
): Sourced<Length> {
  if (whole.inset !== undefined) {
    const gap = gapRound(context, whole) ?? fallback("front.inset");
    return insetSize(which === "wide" ? opening.wide : opening.high, gap);
  }
  const [one, other] = which === "wide" ? [overlays.left, overlays.right] : [overlays.top, overlays.bottom];
  return overlaySize(
    which === "wide" ? opening.widest : opening.highest,
    one ?? fallback("front.overlay"),
    other ?? fallback("front.overlay"),
  );
}

/** A size that is written holds, and is checked against the one derived. */
function stated(
  context: Context,
  whole: FrontBlock,
  which: "wide" | "high",
  derivedSize: Sourced<Length>,
): Sourced<Length> {
  const given = whole[which];
  const written = givenSize(context, given);
  if (written === undefined || given === undefined) return derivedSize;
  const saysWhy = whole.overlay ?? whole.inset ?? whole.fullOverlay;
  if (saysWhy === undefined || equal(written.value, derivedSize.value)) return written;
  const said = "text" in saysWhy ? saysWhy.span : saysWhy.key.span;
  found(context, {
    code: "size/disagree",
    severity: "error",
    span: given.measure.span,
    message: `${which} ${withUnit(written.value, context.units)} is said here, but its overlay or gap gives ${withUnit(derivedSize.value, context.units)}`,
    reason: "Both are written, and both cannot hold; the size is the one that is cut.",
    remedy: `Take one of them out, or write ${withUnit(derivedSize.value, context.units)}.`,
    related: [{ span: said, message: "this says otherwise" }],
    fixes: [
      {
        title: `Take out ${which}`,
        edits: [
          {
            span: spanFrom(given.key.span, given.measure.span),
            text: "",
          },
        ],
        safe: false,
      },
    ],
  });
  return written;
}
