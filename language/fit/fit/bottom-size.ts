import type { Finding } from "../../core/finding.ts";
import { asCut } from "../../core/interval.ts";
import type { Length } from "../../core/length.ts";
import { add, equal, subtract, times, zero } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";
import type { Context } from "../../derive/context.ts";
import { givenSize } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { BoxModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { fitFinding } from "./judge.ts";

/** A bottom in grooves must be small enough to let the corners close, as it will be cut. */
export const bottomMustLetCornersClose: Check = {
  codes: ["fit/bottom-size"],
  run: (context, { boxes }) => boxes.flatMap((box) => check(context, box)),
};

const rule: Rule = { gives: "play of the bottom", formula: "inside and grooves as made − {bottom}", tag: "geometry" };

function check(context: Context, box: BoxModel): readonly Finding[] {
  const front = box.parts.find((part) => part.name === "front");
  const bottom = box.parts.find((part) => part.name === "bottom");
  const groove = box.whole.bottom?.fittings.find((one) => one.word === "groove");
  if (front === undefined || bottom === undefined || groove === undefined) return [];
  const tolerance = fallback("cut.tolerance");
  const play = (givenSize(context, box.whole.play) ?? fallback("bottom.play")).value;
  const name = `thickness of "${box.sides.name}"`;
  const inputs: Record<string, Sourced<Length>> = {
    front: asCut(front.length, tolerance),
    bottom: asCut(bottom.width, tolerance),
    [name]: box.sides.thickness,
  };
  // Ends that run over the sides or are dovetailed to them leave the sides' thickness inside their length.
  const isFullWidth = equal(front.length.value, box.wide.value);
  const room = (length: Length, thickness: Length, width: Length): Length =>
    subtract(subtract(length, isFullWidth ? times(thickness, 2) : zero), width);
  const joints = subtract(play, room(front.length.value, box.sides.thickness.value, bottom.width.value));
  const value = derived(rule, inputs, (of) => add(room(of.front!, of[name]!, of.bottom!), joints));
  return fitFinding(context, {
    code: "fit/bottom-size",
    value,
    bounds: { least: zero, most: undefined },
    what: `the play of the bottom of "${box.opening.name.text}"`,
    reason: "A bottom that is a hair too wide holds the corners open, and no clamp closes them.",
    remedy: "Leave the play out and it is derived, or cut the bottom last.",
    place: box.whole.play?.measure.span ?? groove.span,
    related: [],
  });
}
