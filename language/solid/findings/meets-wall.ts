import type { Finding } from "../../core/finding.ts";
import type { Context } from "../../derive/context.ts";
import type { FrontModel } from "../../derive/model.ts";
import { finding } from "../../fit/check.ts";
import type { WallStop } from "../wall-stop.ts";
import type { DryFitCheck } from "./check.ts";
import { atLeast } from "./names.ts";

/** A door should open as far as its hinges go before it meets a wall beside its case, and to a right angle at least. */
export const doorShouldClearWall: DryFitCheck = {
  codes: ["motion/door-meets-wall"],
  run: (context, { motions, model }) =>
    motions.flatMap(({ mover, wall, travel }) => {
      const front = wall === undefined ? undefined : model.fronts.find(({ of }) => of === mover);
      return wall === undefined || front === undefined ? [] : [met(context, front, wall, travel)];
    }),
};

function met(context: Context, front: FrontModel, { wall, at, pull, lacks }: WallStop, travel: number): Finding {
  const isShort = at < 90 && 0 < lacks;
  const what = `the ${wall.trimmed ? "trim on the wall" : "wall"} at the ${wall.side}`;
  const stop = Math.floor(at);
  return finding({
    code: "motion/door-meets-wall",
    severity: isShort ? "warning" : "hint",
    span: front.whole.hinged?.span ?? front.block.head,
    message: `${pull ? `the pull of ${front.of}` : front.of} meets ${what} at ${stop} degrees${isShort ? ", before the door stands at a right angle" : ` of ${travel}`}`,
    reason: isShort
      ? "Turned to a right angle, the face of a door stands at its hinge edge, and its pull stands out towards the wall from there."
      : "Past a right angle the free edge of a door swings out beside its hinges, and strikes the wall or pulls at its screws.",
    remedy: isShort
      ? `Put a filler of ${atLeast(context, lacks)} more between case and wall, hinge it on the other side, or use a flatter pull.`
      : `Put a stop on its hinges and write opens ${Math.min(stop, travel)} degrees, or hinge it on the other side.`,
    related: [{ span: wall.span, message: "the wall" }],
  });
}
