import type { Fitting } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import { writtenText } from "../../core/length.ts";
import { add, less, over, subtract } from "../../core/rational.ts";
import { behind } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { givenSize, size } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { BoxModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say } from "../check.ts";
import { limits } from "../limits.ts";
import { isSideMounted } from "../slide/side-mounted.ts";

/** The groove of a bottom should keep clear of the corner's rabbet, of the slide's screws, and of the edge below it. */
export const bottomGrooveShouldBeClear: Check = {
  codes: ["joint/groove-meets-rabbet", "joint/groove-meets-screw", "joint/little-below-groove"],
  run: (context, { boxes }) =>
    boxes.flatMap((box) => {
      const groove = box.whole.bottom?.fittings.find((one) => one.word === "groove");
      if (groove === undefined || box.bottom === undefined || box.parts.length === 0) return [];
      return [
        ...meetsRabbet(context, box, groove),
        ...meetsScrew(context, box, groove),
        ...littleBelow(context, groove),
      ];
    }),
};

function meetsRabbet(context: Context, { whole }: BoxModel, groove: Fitting): readonly Finding[] {
  const { corners } = whole;
  if (corners?.kind !== "rabbet") return [];
  const rabbet = size(context, corners.depth) ?? fallback("corner.rabbet");
  const deep = size(context, groove.depth) ?? fallback("bottom.groove");
  if (!less(rabbet.value, deep.value)) return [];
  const text = writtenText(rabbet.value, context.units);
  return [
    finding({
      code: "joint/groove-meets-rabbet",
      severity: "warning",
      span: groove.depth?.span ?? groove.span,
      message: `the bottom's groove is ${say(context, deep.value)} deep and the corner's rabbet ${say(context, rabbet.value)}: the groove shows at the end of the side`,
      reason: "The groove runs on through what the rabbet leaves, and comes out as a notch in the corner.",
      remedy: `Make the groove ${say(context, rabbet.value)} deep at most, or stop it before the end.`,
      related: [{ span: corners.depth?.span ?? corners.span, message: "the rabbet" }],
      fixes:
        groove.depth === undefined
          ? [rewrite(behind(groove.span), ` ${text}`, `Write ${text}`)]
          : [rewrite(groove.depth.span, text)],
    }),
  ];
}

/** The screws of a slide run along its middle. */
function meetsScrew(context: Context, box: BoxModel, groove: Fitting): readonly Finding[] {
  if (!isSideMounted(box)) return [];
  const at = givenSize(context, box.whole.at);
  const screws = at === undefined ? over(box.high.value, 2) : subtract(at.value, box.slides.below.value);
  const up = (size(context, groove.up) ?? fallback("bottom.up")).value;
  const top = add(up, box.bottom!.thickness.value);
  const spare = limits.besideScrew.value;
  if (!less(subtract(up, spare), screws) || !less(screws, add(top, spare))) return [];
  const middle = over(box.high.value, 2);
  const text = writtenText(add(middle, box.slides.below.value), context.units);
  const isClear = less(add(top, spare), middle);
  return [
    finding({
      code: "joint/groove-meets-screw",
      severity: "warning",
      span: box.whole.at?.measure.span ?? groove.span,
      message: `the slide's screws run ${say(context, screws)} above the lower edge of the box, where the bottom's groove is (${say(context, up)} to ${say(context, top)})`,
      reason: "A screw there holds in the edge of the bottom, or splits the side along the groove.",
      remedy: isClear ? `Put the middle of the slide at ${text}.` : "Put the groove lower, or the slide higher.",
      related: [{ span: groove.span, message: "the groove" }],
      fixes:
        isClear && box.whole.at !== undefined
          ? [rewrite(box.whole.at.measure.span, text, `Write ${text}, the middle of the box`)]
          : [],
    }),
  ];
}

function littleBelow(context: Context, groove: Fitting): readonly Finding[] {
  const up = size(context, groove.up);
  if (up === undefined || groove.up === undefined || !less(up.value, limits.belowGroove.value)) return [];
  const text = writtenText(fallback("bottom.up").value, context.units);
  return [
    finding({
      code: "joint/little-below-groove",
      severity: "warning",
      span: groove.up.span,
      message: `${say(context, up.value)} of wood is left below the bottom's groove`,
      reason: `It carries all that lies in the box. From memory: at least ${say(context, limits.belowGroove.value)}; a carpentry text sets the groove 3/8 in up.`,
      remedy: "Set the groove higher.",
      fixes: [rewrite(groove.up.span, text)],
    }),
  ];
}
