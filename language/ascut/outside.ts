import type { Length } from "../core/length.ts";
import { add, isPositive, largest, less, over, ratio, smallest, subtract, times, zero } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Span } from "../core/span.ts";
import { type Context, givenSize } from "../derive/context.ts";
import { fallback } from "../derive/defaults.ts";
import type { BoxModel, CaseModel, FrontModel, Model } from "../derive/model.ts";
import { say } from "../fit/check.ts";
import { limits } from "../fit/limits.ts";
import { forgives } from "../fit/slide/forgives.ts";
import { isSideMounted } from "../fit/slide/side-mounted.ts";

/** One outside size of a thing that is put together, and how much smaller it may come out where it goes. */
export interface Outside {
  readonly word: "wide" | "high" | "deep";
  readonly size: Sourced<Length>;
  /** The least that what stands round it forgives: inches. */
  readonly least: Length;
  /** What it meets there, for a related place. */
  readonly place: Span;
  /** How it meets that, coming out at this size. */
  readonly says: (size: Length) => string;
}

/** From memory: less than a quarter inch of overlay shows the opening's edge as soon as a front hangs a little askew. */
const leastCover = ratio(1, 4);

/** From memory: what the gap beside a front may differ by before the eye sees it. */
const unseen = ratio(1, 32);

/** The outside sizes of everything that is put together of parts, by what it is called: `box plan-1`. */
export function outsidesOf(context: Context, model: Model): ReadonlyMap<string, readonly Outside[]> {
  return new Map([
    ...model.cases.map((one) => [`case ${one.name}`, caseSizes(context, one)] as const),
    ...model.boxes.map((box) => [box.of, boxSizes(context, box)] as const),
    ...model.fronts.map((front) => [front.of, frontSizes(context, front)] as const),
  ]);
}

/** A case is what it is written to be: everything in it and on it was derived from that. */
function caseSizes(context: Context, { wide, high, deep, block }: CaseModel): readonly Outside[] {
  const held = (word: Outside["word"], size: Sourced<Length>): Outside => ({
    word,
    size,
    least: size.value,
    place: block.name.span,
    says: (at) =>
      `the case would be ${say(context, at)} ${word}, and all that goes into it and on it was derived from ${say(context, size.value)}`,
  });
  return [held("wide", wide), held("high", high), held("deep", deep)];
}

function boxSizes(context: Context, box: BoxModel): readonly Outside[] {
  return [boxWide(context, box), boxHigh(context, box), boxDeep(context, box)];
}

/** A box may be narrower by what its slides take up. */
function boxWide(context: Context, box: BoxModel): Outside {
  const { opening, slides } = box;
  const { more } = isSideMounted(box) ? forgives(slides) : { more: limits.slideForgives.value };
  const room = (at: Length): Length => add(slides.clearance.value, over(subtract(box.wide.value, at), 2));
  const most = add(slides.clearance.value, more);
  // An opening that is wider somewhere has used up part of it already.
  const used = subtract(opening.widest.value, opening.wide.value);
  const spare = largest(zero, subtract(times(more, 2), used));
  return {
    word: "wide",
    size: box.wide,
    least: subtract(box.wide.value, spare),
    place: isSideMounted(box) ? slides.block.name.span : opening.name.span,
    says: (at) =>
      isSideMounted(box)
        ? `its slides get ${say(context, room(at))} on each side, and take ${say(context, most)} at most`
        : `it comes out ${say(context, at)} wide, and its slides take up ${say(context, spare)} in all`,
  };
}

/** A lower box runs the same, while its slide still lies on its sides. */
function boxHigh(context: Context, box: BoxModel): Outside {
  const slide = givenSize(context, box.slides.block.high) ?? fallback("slides.high");
  const wall = box.parts.find(({ name }) => name === "side")?.width.value ?? box.high.value;
  const spare = isSideMounted(box) ? largest(zero, subtract(wall, slide.value)) : zero;
  return {
    word: "high",
    size: box.high,
    least: subtract(box.high.value, spare),
    place: box.opening.name.span,
    says: (at) =>
      `the box comes out ${say(context, at)} high, and its slides want ${say(context, subtract(box.high.value, spare))} at least`,
  };
}

/** A box may be shorter while its slides do not pass it. */
function boxDeep(context: Context, box: BoxModel): Outside {
  const { slides, deep } = box;
  const least = smallest(deep.value, slides.length?.value ?? deep.value);
  return {
    word: "deep",
    size: deep,
    least,
    place: slides.block.name.span,
    says: (at) => `the box comes out ${say(context, at)} deep, and its slides are ${say(context, least)} long`,
  };
}

function frontSizes(context: Context, front: FrontModel): readonly Outside[] {
  const sized = (word: "wide" | "high"): Outside => {
    const size = front[word];
    const least = isLaidOn(front) ? leastCovering(front, word) : subtract(size.value, unseen);
    const place = front.openings[0]?.name.span ?? front.block.head;
    return { word, size, least, place, says: saying(context, front, word, least) };
  };
  return [sized("wide"), sized("high")];
}

/** Fronts that lie on a frame may cover less of it; others show what they lack as a wider gap. */
function isLaidOn({ whole, openings, leaves }: FrontModel): boolean {
  if (whole.inset !== undefined || whole.fullOverlay !== undefined || leaves !== 1) return false;
  return whole.overlay !== undefined || openings.every(({ framed }) => framed);
}

/** Hinges hold their edge at its overlay: what is lacking shows at the other. Without them it is shared. */
function leastCovering(front: FrontModel, word: "wide" | "high"): Length {
  const free = freeEdges(front, word);
  const spares = free.map((overlay) => largest(zero, subtract(overlay, leastCover)));
  const [first, ...rest] = spares;
  return first === undefined
    ? front[word].value
    : subtract(front[word].value, times(smallest(first, ...rest), spares.length));
}

function freeEdges({ overlays, whole }: FrontModel, word: "wide" | "high"): readonly Length[] {
  const edges = word === "wide" ? (["left", "right"] as const) : (["top", "bottom"] as const);
  return edges.filter((edge) => whole.hinged?.value !== edge).flatMap((edge) => overlays[edge]?.value ?? []);
}

function saying(context: Context, front: FrontModel, word: "wide" | "high", least: Length): Outside["says"] {
  return (at) => {
    const lacking = subtract(front[word].value, at);
    const free = freeEdges(front, word);
    if (!isLaidOn(front) || free.length === 0) {
      const bound = less(at, least)
        ? `; ${say(context, subtract(front[word].value, least))} is what the eye lets pass`
        : "";
      return `it comes out ${say(context, at)} ${word}, and the gap beside it ${say(context, lacking)} wider in all${bound}`;
    }
    const cover = subtract(smallest(free[0]!, ...free.slice(1)), over(lacking, free.length));
    const where = word === "wide" ? "beside" : "above or below";
    return isPositive(cover)
      ? `it comes out ${say(context, at)} ${word}, and covers ${say(context, cover)} ${where} its opening; ${say(context, leastCover)} is the least`
      : `it would come out ${say(context, at)} ${word}, and no longer cover its opening`;
  };
}
