import type { Finding } from "../../core/finding.ts";
import { less, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { FrontModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, placeOf, say } from "../check.ts";
import { limits } from "../limits.ts";

/** A member of a door's frame should keep enough wood beside its groove. */
export const memberShouldBeWiderThanGroove: Check = {
  codes: ["frame/narrow-member"],
  run: (context, { fronts }) => fronts.flatMap((front) => check(context, front)),
};

function check(context: Context, { parts }: FrontModel): readonly Finding[] {
  return parts.flatMap((part) => {
    const groove = part.machining.find((made) => made.kind === "groove");
    if (groove?.deep === undefined || part.stockKind === "sheet") return [];
    const left = subtract(part.width.value, groove.deep.value);
    if (!less(left, limits.besideGroove.value)) return [];
    return [
      finding({
        code: "frame/narrow-member",
        severity: "warning",
        span: placeOf(part.width, part.source),
        message: `a ${part.name} of ${say(context, part.width.value)} keeps ${say(context, left)} beside its groove`,
        reason: "What is left bends when the frame is clamped and gives no room for a hinge or a screw.",
        remedy: `Make it ${say(context, limits.besideGroove.value)} wider than its groove is deep at the least.`,
        related: [{ span: placeOf(groove.deep, part.source), message: "the depth of the groove" }],
      }),
    ];
  });
}
