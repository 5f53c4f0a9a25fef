import type { Finding } from "../../core/finding.ts";
import { asCut } from "../../core/interval.ts";
import type { Length } from "../../core/length.ts";
import { add, negate, ratio, subtract, times } from "../../core/rational.ts";
import { derived, type Rule, type Sourced } from "../../core/sourced.ts";
import type { Context } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { CaseModel, Model } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { fitFinding } from "./judge.ts";

/** A face frame should come out flush with the case that it is put on. */
export const frameShouldBeFlushWithCase: Check = {
  codes: ["fit/frame-flush"],
  run: (context, model) => model.cases.flatMap((one) => check(context, model, one)),
};

const rule: Rule = { gives: "frame past the case", formula: "{frame} − the case as made", tag: "geometry" };

/** From memory: what is planed off a face frame, or eased away, without showing. */
const flush = ratio(1, 32);

function check(context: Context, model: Model, { block, name, panels, wide }: CaseModel): readonly Finding[] {
  const bottom = model.parts.find((part) => part.of === `case ${name}` && part.name === "bottom");
  if (block.frame === undefined || panels === undefined || bottom === undefined) return [];
  const tolerance = fallback("cut.tolerance");
  const thickness = `thickness of "${panels.name}"`;
  const inputs: Record<string, Sourced<Length>> = {
    frame: asCut(wide, tolerance),
    bottom: asCut(bottom.length, tolerance),
    [thickness]: panels.thickness,
  };
  const made = (length: Length, thick: Length): Length => add(length, times(thick, 2));
  const housed = subtract(made(bottom.length.value, panels.thickness.value), wide.value);
  const value = derived(rule, inputs, (of) => subtract(of.frame!, subtract(made(of.bottom!, of[thickness]!), housed)));
  return fitFinding(context, {
    code: "fit/frame-flush",
    value,
    bounds: { least: negate(flush), most: flush },
    what: `what the face frame of "${name}" stands past its case`,
    reason: "A frame that stands back shows the edge of the side; one that stands out meets the next case.",
    remedy: "Measure the panels, or make the frame a little large and plane it flush.",
    place: block.frame.word.span,
    related: [],
  });
}
