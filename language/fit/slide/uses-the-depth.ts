import type { Finding } from "../../core/finding.ts";
import { writtenText } from "../../core/length.ts";
import { largest, less, subtract, toNumber } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel } from "../../derive/model.ts";
import { longestThatFits } from "../../derive/slides.ts";
import type { Check } from "../check.ts";
import { finding, number, rewrite, say } from "../check.ts";
import { limits, shares } from "../limits.ts";

/** A slide should use the depth that there is, and bring most of the box out of the case. */
export const slideShouldUseTheDepth: Check = {
  codes: ["slide/shallow", "slide/little-comes-clear"],
  run: (context, { boxes }) => boxes.flatMap((box) => [...shallow(context, box), ...hidden(box)]),
};

function shallow(context: Context, box: BoxModel): readonly Finding[] {
  const { slides, whole } = box;
  const named = whole.slides?.length;
  const best = longestThatFits(slides);
  if (named === undefined || slides.length === undefined || slides.room === undefined || best === undefined) return [];
  const used = largest(slides.length.value, box.deep.value);
  const left = subtract(slides.room.value, used);
  if (!less(limits.depthUnused.value, left) || !less(used, best.value)) return [];
  const text = writtenText(best.value, context.units);
  return [
    finding({
      code: "slide/shallow",
      severity: "hint",
      span: named.span,
      message: `this slide leaves ${say(context, left)} of the depth unused; a ${text} slide fits`,
      reason: "The same front and the same work would give a deeper drawer.",
      remedy: `Write ${text}, or leave the length out and the longest that fits is taken.`,
      related: [{ span: box.opening.name.span, message: `room for ${say(context, slides.room.value)}` }],
      fixes: [rewrite(named.span, text, `Write ${text}, the longest that fits`)],
    }),
  ];
}

/** How far a standard extension comes out is read from the published description of it. */
function hidden(box: BoxModel): readonly Finding[] {
  const { slides, inside, whole } = box;
  if (inside === undefined || slides.travel === undefined || whole.slides === undefined) return [];
  const { extension } = slides.block;
  const share = toNumber(slides.travel.value) / toNumber(inside.deep.value);
  if (shares.comesClear.value <= share) return [];
  return [
    finding({
      code: "slide/little-comes-clear",
      severity: "hint",
      span: whole.slides.name.span,
      message: `only ${number(100 * Math.max(0, share), 0)} % of the depth of this box comes out of the case`,
      reason: "What lies behind can be seen only on one's knees, and taken out only by feel.",
      remedy: "Use slides of full extension, or a shorter box.",
      related: extension === undefined ? [] : [{ span: extension.span, message: "how far its slides pull out" }],
    }),
  ];
}
