import type { Finding } from "../../core/finding.ts";
import { asCut } from "../../core/interval.ts";
import type { Length } from "../../core/length.ts";
import { add, equal, less, over, subtract, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";
import type { Context } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { BoxModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { forgives } from "../slide/forgives.ts";
import { isSideMounted } from "../slide/side-mounted.ts";
import { fitFinding, ranging } from "./judge.ts";

/** A box, as it will come out of the saw and the glue, must leave its slides their room. */
export const boxMustFitSlidesAsMade: Check = {
  codes: ["fit/slides"],
  run: (context, { boxes }) => boxes.filter(isSideMounted).flatMap((box) => check(context, box)),
};

const rule: Rule = {
  gives: "room for each slide",
  formula: "({opening} − the box as made of {front} and its sides) ÷ 2",
  tag: "geometry",
};

function check(context: Context, box: BoxModel): readonly Finding[] {
  const { opening, slides, sides } = box;
  const front = box.parts.find((part) => part.name === "front");
  const { more, less: under } = forgives(slides);
  // An opening that is out of parallel, and a width that is written wrong, have findings of their own.
  const uneven = less(times(more, 2), subtract(opening.widest.value, opening.wide.value));
  if (front === undefined || uneven || box.whole.wide !== undefined) return [];
  const name = `thickness of "${sides.name}"`;
  const low = opening.wide.low ?? opening.wide.value;
  const high = opening.widest.high ?? opening.widest.value;
  const inputs: Record<string, Sourced<Length>> = {
    [`opening "${opening.name.text}"`]: ranging(opening.wide, low, high),
    front: asCut(front.length, fallback("cut.tolerance")),
    [name]: sides.thickness,
  };
  const isFullWidth = equal(front.length.value, box.wide.value);
  const outside = (length: Length, thickness: Length): Length =>
    isFullWidth ? length : add(length, times(thickness, 2));
  const housed = subtract(outside(front.length.value, sides.thickness.value), box.wide.value);
  const value = derived(rule, inputs, (of) => {
    const made = subtract(outside(of.front!, of[name]!), housed);
    return over(subtract(of[`opening "${opening.name.text}"`]!, made), 2);
  });
  return fitFinding(context, {
    code: "fit/slides",
    value,
    bounds: { least: subtract(slides.clearance.value, under), most: add(slides.clearance.value, more) },
    what: `the room for each slide of "${opening.name.text}"`,
    reason: "A slide that is squeezed binds; one that is spread past what it forgives falls out of its track.",
    remedy: "Measure what is uncertain, or cut the front and back last, to the sides and the opening as they are.",
    place: box.whole.slides?.name.span ?? box.block.head,
    related: [],
  });
}
