import type { HingesBlock } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { writtenText } from "../../core/length.ts";
import { absolute, less, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { givenDistance } from "../../derive/context.ts";
import type { FrontModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say } from "../check.ts";
import { overlayPlace } from "../front/placed.ts";
import { limits } from "../limits.ts";

/** A hinge must be made for the door that it carries: inset or overlay, and the overlay that the door has. */
export const hingeMustSuitDoor: Check = {
  codes: ["door/hinge-kind", "door/hinge-overlay"],
  run: (context, { fronts }) => {
    const hinges = new Map(context.design.hinges.map((block) => [block.name.text, block]));
    return fronts.flatMap((front) => {
      const use = front.whole.hinges;
      const block = use === undefined ? undefined : hinges.get(use.name.text);
      return use === undefined || block === undefined ? [] : check(context, front, block, [...hinges.values()]);
    });
  },
};

function check(
  context: Context,
  front: FrontModel,
  block: HingesBlock,
  all: readonly HingesBlock[],
): readonly Finding[] {
  const isInset = front.whole.inset !== undefined;
  const forInset = block.inset !== undefined;
  if (isInset !== forInset && (forInset || block.overlay !== undefined)) return [wrongKind(front, block, all)];
  return isInset ? [] : wrongOverlay(context, front, block, all);
}

function wrongKind({ whole }: FrontModel, block: HingesBlock, all: readonly HingesBlock[]): Finding {
  const { name } = whole.hinges!;
  const isInset = whole.inset !== undefined;
  const others = all.filter((one) => (one.inset !== undefined) === isInset);
  return finding({
    code: "door/hinge-kind",
    severity: "error",
    span: name.span,
    message: `"${name.text}" is made for ${isInset ? "overlay" : "inset"} doors, and this door is ${isInset ? "inset" : "an overlay door"}`,
    reason: "The arm of the hinge is bent for the one or the other: the door would stand in the wrong plane.",
    remedy: `Use a hinge for ${isInset ? "inset" : "overlay"} doors.`,
    related: [{ span: (block.inset ?? block.overlay?.key ?? block.name).span, message: "what it is made for" }],
    fixes: others.map((one) => rewrite(name.span, one.name.text, `Use "${one.name.text}"`)),
  });
}

function wrongOverlay(
  context: Context,
  front: FrontModel,
  block: HingesBlock,
  all: readonly HingesBlock[],
): readonly Finding[] {
  const { hinged, hinges, pair } = front.whole;
  const made = givenDistance(context, block.overlay);
  if (made === undefined || hinged === undefined || hinges === undefined || block.overlay === undefined) return [];
  const sides = pair === undefined ? [hinged.value] : (["left", "right"] as const);
  const off = sides.flatMap((side) => {
    const overlay = front.overlays[side];
    return overlay === undefined || suits(made.value, overlay.value) ? [] : [{ side, overlay: overlay.value }];
  })[0];
  if (off === undefined) return [];
  const others = all.filter((one) => {
    const overlay = givenDistance(context, one.overlay);
    return overlay !== undefined && one.inset === undefined && suits(overlay.value, off.overlay);
  });
  const place = overlayPlace(front.whole, off.side);
  const text = writtenText(made.value, context.units);
  return [
    finding({
      code: "door/hinge-overlay",
      severity: "warning",
      span: hinges.name.span,
      message: `"${hinges.name.text}" is made for an overlay of ${say(context, made.value)}; this door has ${say(context, off.overlay)} at its ${off.side}`,
      reason:
        "A cup hinge is set by its overlay: with another the door stands off its edge or meets what is beside it.",
      remedy: `Use a hinge or plate for ${say(context, off.overlay)}, or give the door the hinge's overlay.`,
      related: [{ span: block.overlay.measure.span, message: "the overlay of the hinge" }],
      fixes: [
        ...others.map((one) => rewrite(hinges.name.span, one.name.text, `Use "${one.name.text}"`)),
        ...(place === undefined ? [] : [rewrite(place, text, `Write ${text} for the overlay`)]),
      ],
    }),
  ];
}

function suits(made: Length, overlay: Length): boolean {
  return !less(limits.hingeAdjusts.value, absolute(subtract(made, overlay)));
}
