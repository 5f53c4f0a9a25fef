import type { Finding } from "../../core/finding.ts";
import { less, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { FrontModel, Side } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say, textBelow } from "../check.ts";
import { overlayPlace } from "./placed.ts";

/** An overlay must not be larger than the case side or frame member that it lies on. */
export const overlayMustStayOnCase: Check = {
  codes: ["front/beyond-case"],
  run: (context, { fronts }) =>
    fronts.flatMap((front) =>
      (["left", "right", "top", "bottom"] as const).flatMap((side) => check(context, front, side)),
    ),
};

function check(context: Context, front: FrontModel, side: Side): readonly Finding[] {
  const overlay = front.overlays[side];
  const bounds = front.openings.map((opening) => opening.bounds[side]);
  const bound = bounds.find((one) => one.outer && one.member !== undefined);
  const member = bound?.member;
  if (overlay === undefined || member === undefined || !less(member.value, overlay.value)) return [];
  const place = overlayPlace(front.whole, side);
  const text = textBelow(context, subtract(member.value, fallback("front.reveal").value));
  return [
    finding({
      code: "front/beyond-case",
      severity: "error",
      span: place ?? front.block.head,
      message: `an overlay of ${say(context, overlay.value)} reaches ${say(context, subtract(overlay.value, member.value))} past the ${side} of the case, which has ${say(context, member.value)} there`,
      reason:
        "The edge of the front stands free past the case: it meets the wall, or the front of the next case in an inside corner.",
      remedy: `Make it ${say(context, member.value)} at most${place === undefined ? ": write overlay LENGTH" : ""}.`,
      related: [{ span: front.openings[0]!.name.span, message: "the opening that it covers" }],
      fixes: place === undefined || text === undefined ? [] : [rewrite(place, text)],
    }),
  ];
}
