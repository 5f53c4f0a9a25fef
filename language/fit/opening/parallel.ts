import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { equal, less, subtract, times } from "../../core/rational.ts";
import type { Sourced } from "../../core/sourced.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, placeOf, say } from "../check.ts";
import { forgives } from "../slide/forgives.ts";
import { isSideMounted } from "../slide/side-mounted.ts";

/** The sides of an opening should be parallel within what its slides forgive. */
export const openingShouldBeParallel: Check = {
  codes: ["opening/out-of-parallel"],
  run: (context, { boxes }) => boxes.filter(isSideMounted).flatMap((box) => check(context, box)),
};

function check(context: Context, { opening, slides }: BoxModel): readonly Finding[] {
  const off = subtract(opening.widest.value, opening.wide.value);
  const forgiven = times(forgives(slides).more, 2);
  if (!less(forgiven, off)) return [];
  return [
    finding({
      code: "opening/out-of-parallel",
      severity: "warning",
      span: readingOf(opening.widest, opening.name.span),
      message: `"${opening.name.text}" is ${say(context, off)} wider here than at its narrowest; its slides forgive ${say(context, forgiven)} in all`,
      reason: "A box that fits the narrow place hangs loose in the wide one, and the slides bind between them.",
      remedy: `Pack the wide side out by ${say(context, off)} where it is wide, or measure again.`,
      related: [
        { span: readingOf(opening.wide, opening.name.span), message: "its narrowest" },
        { span: placeOf(slides.clearance, slides.block.name.span), message: "what the slides forgive on each side" },
      ],
    }),
  ];
}

/** The reading that a governing size was taken from. */
export function readingOf(size: Sourced<Length>, otherwise: Finding["span"]): Finding["span"] {
  const inputs = size.origin.kind === "derived" ? Object.values(size.origin.inputs) : [];
  const reading = inputs.find((input) => equal((input as Sourced<Length>).value, size.value));
  return placeOf(reading ?? size, otherwise);
}
