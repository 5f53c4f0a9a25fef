import type { Finding } from "../../core/finding.ts";
import type { FrontModel } from "../../derive/model.ts";
import { finding } from "../../fit/check.ts";
import type { Block } from "../moving.ts";
import type { DryFitCheck } from "./check.ts";
import { nameOf } from "./names.ts";

/** A door must open to a right angle, and should open as far as it is said to. */
export const doorMustOpen: DryFitCheck = {
  codes: ["motion/door-blocked"],
  run: (_context, { motions, model }) =>
    motions.flatMap((motion) => {
      const [first] = motion.blocks;
      if (motion.kind !== "door" || first === undefined) return [];
      const front = model.fronts.find(({ of }) => of === motion.mover);
      return front === undefined ? [] : [blocked(front, first, motion.travel)];
    }),
};

function blocked(front: FrontModel, { part, obstacle, at }: Block, travel: number): Finding {
  const isEdge = at < 15;
  const isPast = 90 <= at;
  const wanted = isPast ? `opens to ${Math.floor(at)} of ${travel} degrees` : "does not open to a right angle";
  const where = isPast ? "there" : `at ${Math.max(1, Math.round(at))} degrees`;
  return finding({
    code: "motion/door-blocked",
    severity: isPast ? "warning" : "error",
    span: front.whole.hinged?.span ?? front.block.head,
    message: `${front.of} ${wanted}: ${nameOf(part)} meets ${nameOf(obstacle)} ${where}`,
    reason: isEdge
      ? "As a door starts to turn, the back of its free edge swings wider than the door itself."
      : "In plan the leaf sweeps a quarter circle about its hinges; what stands in it is hit.",
    remedy: isEdge
      ? "Leave a wider gap at the free edge, or ease its back with a few strokes of a plane."
      : "Hinge it on the other side, or take what stands in its way away.",
    related: [{ span: obstacle.part.source, message: `${nameOf(obstacle)} comes from here` }],
  });
}
