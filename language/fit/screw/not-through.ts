import type { ScrewsBlock } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { less, subtract, toNumber } from "../../core/rational.ts";
import type { Word } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { givenSize } from "../../derive/context.ts";
import type { BoxModel } from "../../derive/model.ts";
import { pocketScrewLength } from "../../derive/screw-sizes.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say } from "../check.ts";

/** A screw must not be longer than what it goes into. */
export const screwMustNotComeThrough: Check = {
  codes: ["screw/through-the-side", "screw/through-the-joint"],
  run: (context, model) => {
    const screws = new Map(context.design.screws.map((block) => [block.name.text, block]));
    return model.boxes
      .filter((box) => 0 < box.parts.length)
      .flatMap((box) => [...slideScrews(context, box, screws), ...pocketScrews(context, box, screws)]);
  },
};

type Screws = ReadonlyMap<string, ScrewsBlock>;

function slideScrews(context: Context, box: BoxModel, screws: Screws): readonly Finding[] {
  const word = box.slides.block.screws;
  const long = word === undefined ? undefined : lengthOf(context, screws, word);
  const { thickness, name } = box.sides;
  if (word === undefined || long === undefined || !less(thickness.value, long)) return [];
  return [
    finding({
      code: "screw/through-the-side",
      severity: "error",
      span: word.span,
      message: `these screws are ${say(context, long)} long, ${say(context, subtract(long, thickness.value))} more than a side of "${name}" is thick`,
      reason: "Their points would stand inside the box, for hands and for what lies in it.",
      remedy: `Use screws of ${say(context, thickness.value)} at most.`,
      related: [{ span: box.whole.sides?.stocks[0]?.span ?? box.block.head, message: "the side that they go into" }],
      fixes: shorter(context, screws, thickness.value).map((other) =>
        rewrite(word.span, other, `Use "${other}" instead of "${word.text}"`),
      ),
    }),
  ];
}

function pocketScrews(context: Context, box: BoxModel, screws: Screws): readonly Finding[] {
  const word = context.design.shop.pockets[0]?.screws;
  const { corners } = box.whole;
  if (word === undefined || corners?.kind !== "pocket screws") return [];
  const long = lengthOf(context, screws, word);
  const thick = toNumber(box.sides.thickness.value);
  const most = pocketScrewLength(context, thick, thick);
  if (long === undefined || most === undefined || !less(most, long)) return [];
  return [
    finding({
      code: "screw/through-the-joint",
      severity: "error",
      span: word.span,
      message: `these pocket screws are ${say(context, long)} long; ${say(context, most)} is the usual length in "${box.sides.name}"`,
      reason: "A longer one comes out through the face of the side that it goes into.",
      remedy: `Use screws of ${say(context, most)}, and try one in scrap first.`,
      related: [{ span: corners.span, message: "the corners that they hold" }],
      fixes: shorter(context, screws, most).map((other) =>
        rewrite(word.span, other, `Use "${other}" instead of "${word.text}"`),
      ),
    }),
  ];
}

function lengthOf(context: Context, screws: Screws, word: Word): Length | undefined {
  return givenSize(context, screws.get(word.text)?.long)?.value;
}

/** The screws at hand that are short enough, the longest of them first. */
function shorter(context: Context, screws: Screws, most: Length): readonly string[] {
  return [...screws.values()]
    .flatMap((block) => {
      const long = givenSize(context, block.long)?.value;
      return long === undefined || less(most, long) ? [] : [{ name: block.name.text, long: toNumber(long) }];
    })
    .sort((a, b) => b.long - a.long)
    .map((one) => one.name)
    .slice(0, 2);
}
