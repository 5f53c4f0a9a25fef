import type { Finding, Fix } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { less, over, smallest, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { Side } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say, textBelow } from "../check.ts";
import { limits } from "../limits.ts";
import type { PlacedFront } from "./placed.ts";
import { overlayPlace, placedFronts } from "./placed.ts";

/** Two fronts over one member must not meet, and should keep a gap. */
export const frontMustClearNeighbour: Check = {
  codes: ["front/collide", "front/tight-gap"],
  run: (context, model) =>
    placedFronts(model).flatMap((fronts) => neighbours(fronts).flatMap((pair) => check(context, pair))),
};

/** Two fronts side by side or one above the other, and how far apart: below nought where they would share a place. */
interface Pair {
  readonly one: PlacedFront;
  readonly other: PlacedFront;
  /** The edge of the first that faces the second. */
  readonly side: Side;
  readonly gap: Length;
}

/** Fronts stand sorted by their left edge, so each is only held against those that begin before it ends. */
function neighbours(fronts: readonly PlacedFront[]): readonly Pair[] {
  const pairs: Pair[] = [];
  fronts.forEach((one, index) => {
    for (let at = index + 1; at < fronts.length; at++) {
      const other = fronts[at]!;
      if (isFar(one, other)) continue;
      const across = subtract(other.left, one.right);
      if (!less(across, limits.frontGap.value)) break;
      const pair = pairOf(one, other, across);
      if (pair !== undefined && less(pair.gap, limits.frontGap.value)) pairs.push(pair);
    }
  });
  return pairs;
}

/** More than an inch apart in height. */
function isFar({ rough: a }: PlacedFront, { rough: b }: PlacedFront): boolean {
  return a.top + 1 < b.bottom || b.top + 1 < a.bottom;
}

function pairOf(one: PlacedFront, other: PlacedFront, across: Length): Pair | undefined {
  const above = subtract(other.bottom, one.top);
  const below = subtract(one.bottom, other.top);
  const upright = less(above, below) ? below : above;
  const isBeside = less(upright, across);
  const gap = isBeside ? across : upright;
  // Apart in one direction is apart, unless both are: then they only meet at their corners.
  if (less({ n: 0n, d: 1n }, isBeside ? upright : across)) return undefined;
  const side: Side = isBeside ? "right" : less(above, below) ? "bottom" : "top";
  return { one, other, side, gap };
}

const opposite: Record<Side, Side> = { left: "right", right: "left", top: "bottom", bottom: "top" };

function check(context: Context, pair: Pair): readonly Finding[] {
  const { one, other, side, gap } = pair;
  const place = overlayPlace(other.front.whole, opposite[side]) ?? overlayPlace(one.front.whole, side);
  const span = place ?? other.front.block.head;
  const names = [one, other].map(({ front }) => `"${front.of}"`).join(" and ");
  const related = [{ span: one.front.block.head, message: `${one.front.of} is the other` }];
  const fixes = smaller(context, pair);
  const member = one.front.openings[0]!.bounds[side].member;
  const between = member === undefined ? "" : ` over a member of ${say(context, member.value)}`;
  if (less(gap, { n: 0n, d: 1n })) {
    return [
      finding({
        code: "front/collide",
        severity: "error",
        span,
        message: `${names} overlap by ${say(context, { n: -gap.n, d: gap.d })}${between}`,
        reason: "Two fronts cannot cover the same place: one would keep the other from closing.",
        remedy: "Make the overlays smaller, or the member between the openings wider.",
        related,
        fixes,
      }),
    ];
  }
  return [
    finding({
      code: "front/tight-gap",
      severity: "warning",
      span,
      message: `${names} are ${say(context, gap)} apart${between}`,
      reason: `Fronts that close rub as soon as the case racks or the wood swells. From memory: at least ${say(context, limits.frontGap.value)}.`,
      remedy: "Make the overlays a little smaller.",
      related,
      fixes,
    }),
  ];
}

/** Both overlays are brought down to what the member leaves beside a usual gap, when both are written in one place. */
function smaller(context: Context, { one, other, side }: Pair): readonly Fix[] {
  const member = one.front.openings[0]!.bounds[side].member;
  const mine = overlayPlace(one.front.whole, side);
  const theirs = overlayPlace(other.front.whole, opposite[side]);
  if (member === undefined || mine === undefined || theirs === undefined) return [];
  const gap = smallest(fallback("front.between").value, over(member.value, 4));
  const text = textBelow(context, over(subtract(member.value, gap), 2));
  if (text === undefined) return [];
  const places = mine.start === theirs.start && mine.uri === theirs.uri ? [mine] : [mine, theirs];
  const fix = rewrite(mine, text, `Write ${text} for the overlay`);
  return [{ ...fix, edits: places.map((span) => ({ span, text })) }];
}
