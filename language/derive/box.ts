import type { BoxBlock } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { compare, isPositive } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Word } from "../core/span.ts";
import { boxParts, boxShape } from "./box-parts.ts";
import type { Context } from "./context.ts";
import { found, givenSize, resolve } from "./context.ts";
import { fallback } from "./defaults.ts";
import type { BoxModel, Opening, OpeningTable, SlideModel, Stock } from "./model.ts";
import { boxDepth } from "./rules/box-depth.ts";
import { boxHeight } from "./rules/box-height.ts";
import { boxWidth } from "./rules/box-width.ts";
import { underMountedWidth } from "./rules/under-mounted-width.ts";
import { slidesFor } from "./slides.ts";

export interface BoxTables {
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly slides: ReadonlyMap<string, BoxModel["slides"]["block"]>;
  readonly openings: OpeningTable;
  /** Thickness of the inset front of an opening, where it has one. */
  readonly insetFronts: ReadonlyMap<string, Sourced<Length>>;
}

/** The boxes of one block, one for each of its openings. `whole` is the block with what it takes over by `like`. */
export function deriveBoxes(
  context: Context,
  block: BoxBlock,
  whole: BoxBlock,
  tables: BoxTables,
): readonly BoxModel[] {
  const slideBlock =
    whole.slides === undefined ? undefined : resolve(context, "slides", whole.slides.name, tables.slides);
  const sides = stockOf(context, whole.sides?.stocks[0], tables);
  const bottom = stockOf(context, whole.bottom?.stocks[0], tables);
  const openings = block.openings.flatMap((name) => resolve(context, "opening", name, tables.openings) ?? []);
  if (whole.slides === undefined)
    lacking(context, block, "slides", "nobody knows how wide, high and deep it may be", "slides NAME");
  if (whole.sides === undefined) lacking(context, block, "sides", "nothing says what it is made of", "sides STOCK");
  if (slideBlock === undefined || sides === undefined || whole.slides === undefined) return [];
  const use = whole.slides;
  return openings.flatMap((opening) => {
    const slides = slidesFor(context, slideBlock, use, opening, tables.insetFronts.get(opening.name.text));
    return boxIn(context, block, whole, opening, slides, sides, bottom, tables) ?? [];
  });
}

function stockOf(context: Context, word: Word | undefined, tables: BoxTables): Stock | undefined {
  return word === undefined ? undefined : resolve(context, "stock", word, tables.stocks);
}

function lacking(context: Context, block: BoxBlock, what: string, reason: string, form: string): void {
  found(context, {
    code: `box/no-${what}`,
    severity: "error",
    span: block.head,
    message: `this box has no ${what}`,
    reason: `Without its ${what} ${reason}.`,
    remedy: `Write ${form} in it, or take it over with like.`,
  });
}

function boxIn(
  context: Context,
  block: BoxBlock,
  whole: BoxBlock,
  opening: Opening,
  slides: SlideModel,
  sides: Stock,
  bottom: Stock | undefined,
  tables: BoxTables,
): BoxModel | undefined {
  const wide = givenSize(context, whole.wide) ?? widthIn(context, opening, slides, sides);
  const high = givenSize(context, whole.high) ?? boxHeight(opening.high, slides.above, slides.below);
  const deep = givenSize(context, whole.deep) ?? (slides.length === undefined ? undefined : boxDepth(slides.length));
  if (deep === undefined) {
    if (slides.room === undefined) depthUnknown(context, block, opening);
    return undefinedBox(block, whole, opening, slides, sides, bottom, wide, high);
  }
  if (![wide, high, deep].every((size) => isPositive(size.value))) {
    noRoom(context, block, opening);
    return undefined;
  }
  const of = `box ${opening.name.text}`;
  const shape = boxShape(context, {
    block,
    whole,
    of,
    opening,
    slides,
    wide,
    high,
    deep,
    sides,
    bottom,
    stocks: tables.stocks,
  });
  const filled = (["wide", "high", "deep"] as const).find((way) => !isPositive(shape.inside[way].value));
  if (filled !== undefined) {
    nothingInside(context, block, whole, opening, filled);
    return undefined;
  }
  const parts: readonly Part[] = boxParts(context, shape);
  return { block, whole, of, opening, slides, wide, high, deep, inside: shape.inside, sides, bottom, parts };
}

/** A box whose slide cannot be chosen is kept for the findings, without parts. */
function undefinedBox(
  block: BoxBlock,
  whole: BoxBlock,
  opening: Opening,
  slides: SlideModel,
  sides: Stock,
  bottom: Stock | undefined,
  wide: Sourced<Length>,
  high: Sourced<Length>,
): BoxModel {
  const deep = slides.boxRoom ?? opening.wide;
  return {
    block,
    whole,
    of: `box ${opening.name.text}`,
    opening,
    slides,
    wide,
    high,
    deep,
    inside: undefined,
    sides,
    bottom,
    parts: [],
  };
}

function widthIn(context: Context, opening: Opening, slides: SlideModel, sides: Stock): Sourced<Length> {
  if (slides.block.mount?.value === "under") {
    const inside = givenSize(context, slides.block.inside) ?? fallback("under.inside");
    return underMountedWidth(opening.wide, inside, sides.thickness);
  }
  return boxWidth(opening.wide, slides.clearance);
}

function depthUnknown(context: Context, block: BoxBlock, opening: Opening): void {
  found(context, {
    code: "opening/no-depth",
    severity: "error",
    span: opening.name.span,
    message: `how deep "${opening.name.text}" is has not been said`,
    reason: "The slide, and with it the depth of the box, is chosen by it.",
    remedy: "Measure from the front edge of the opening to what stands behind, and write deep LENGTH.",
    related: [{ span: block.head, message: "this box goes into it" }],
  });
}

/** The wood of the box alone takes its width, height or depth. Said once, and not of each part that it leaves no room. */
function nothingInside(
  context: Context,
  block: BoxBlock,
  whole: BoxBlock,
  opening: Opening,
  way: "wide" | "high" | "deep",
): void {
  const stated = whole[way]?.measure.span;
  const size = opening[way];
  found(context, {
    code: "opening/too-small",
    severity: "error",
    span: stated ?? (size?.origin.kind === "written" ? size.origin.span : opening.name.span),
    message: `a box in "${opening.name.text}" would have nothing inside: its ${wood[way]} as thick as it is ${way}`,
    reason: "What the slides leave is taken by the wood of the box itself.",
    remedy: "Make the opening larger, or use other slides or thinner stock.",
    related: [{ span: block.head, message: "this box goes into it" }],
  });
}

const wood = {
  wide: "sides together are",
  high: "bottom, and what is below it, is",
  deep: "front and back together are",
} as const;

function noRoom(context: Context, block: BoxBlock, opening: Opening): void {
  const small = compare(opening.wide.value, opening.high.value) < 0 ? opening.wide : opening.high;
  const span = small.origin.kind === "written" ? small.origin.span : opening.name.span;
  found(context, {
    code: "opening/too-small",
    severity: "error",
    span,
    message: `nothing is left of "${opening.name.text}" for a box`,
    reason: "The slides and the room above and below take all of it.",
    remedy: "Make the opening larger, or use other slides.",
    related: [{ span: block.head, message: "this box goes into it" }],
  });
}
