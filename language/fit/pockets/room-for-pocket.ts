import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { writtenText } from "../../core/length.ts";
import type { Part } from "../../core/part.ts";
import { less } from "../../core/rational.ts";
import type { Sourced } from "../../core/sourced.ts";
import type { Span } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { givenSize } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { Model } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, nameOf, placeOf, rewrite, say } from "../check.ts";

/** A piece with pockets should be thick enough for one and wide enough for two. */
export const pieceShouldHaveRoomForPockets: Check = {
  codes: ["pockets/too-thin", "pockets/too-narrow"],
  run: (context, model) => {
    const words = jointWords(model);
    return model.parts
      .filter((part) => part.machining.some((made) => made.kind === "pockets"))
      .flatMap((part) => [...tooThin(context, part, words.get(part.of)), ...tooNarrow(context, part)]);
  },
};

/** The word that says pocket screws, by what is joined so. */
function jointWords({ boxes, fronts, cases }: Model): ReadonlyMap<string, Span | undefined> {
  return new Map([
    ...boxes.map((box): [string, Span | undefined] => [box.of, box.whole.corners?.span]),
    ...fronts.map((front): [string, Span | undefined] => [front.of, front.whole.joint?.span]),
    ...cases.map((one): [string, Span | undefined] => [
      `case ${one.name}`,
      one.block.frame?.joint?.span ?? one.block.frame?.stock.span,
    ]),
  ]);
}

function least(context: Context, which: "thinnest" | "narrowest"): Sourced<Length> {
  return givenSize(context, context.design.shop.pockets[0]?.[which]) ?? fallback(`pockets.${which}`);
}

function tooThin(context: Context, part: Part, joint: Span | undefined): readonly Finding[] {
  const wanted = least(context, "thinnest");
  if (!less(part.thickness.value, wanted.value)) return [];
  const isBox = part.of.startsWith("box ");
  return [
    finding({
      code: "pockets/too-thin",
      severity: "error",
      span: joint ?? part.source,
      message: `the ${part.name} is ${say(context, part.thickness.value)} thick; a pocket wants ${say(context, wanted.value)}`,
      reason: "In thinner stock the pocket breaks out at the face, or the screw's point comes through.",
      remedy: "Use thicker stock, or another joint.",
      related: [{ span: part.source, message: nameOf(part) }],
      fixes:
        isBox && joint !== undefined
          ? ["dovetails", "fingers"].map((word) => rewrite(joint, word, `Join it with ${word}`))
          : [],
    }),
  ];
}

function tooNarrow(context: Context, part: Part): readonly Finding[] {
  const wanted = least(context, "narrowest");
  if (!less(part.width.value, wanted.value)) return [];
  const { origin } = part.width;
  const text = writtenText(wanted.value, context.units);
  return [
    finding({
      code: "pockets/too-narrow",
      severity: "warning",
      span: placeOf(part.width, part.source),
      message: `the ${part.name} is ${say(context, part.width.value)} wide; two pockets side by side want ${say(context, wanted.value)}`,
      reason:
        "Held by one screw the piece turns; two that are closer split it. From memory, unless the file says otherwise.",
      remedy: "Make it wider, or use another joint there.",
      related: [{ span: part.source, message: nameOf(part) }],
      fixes: origin.kind === "written" ? [rewrite(origin.span, text)] : [],
    }),
  ];
}
