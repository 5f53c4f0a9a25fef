import type { Finding } from "../../core/finding.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel } from "../../derive/model.ts";
import { finding } from "../../fit/check.ts";
import type { Motion } from "../motion.ts";
import type { Block } from "../moving.ts";
import type { DryFitCheck } from "./check.ts";
import { about, nameOf } from "./names.ts";

/** A drawer must come out as far as its slides travel. */
export const drawerMustComeOut: DryFitCheck = {
  codes: ["motion/drawer-blocked"],
  run: (context, { motions, model }) =>
    motions.flatMap((motion) => {
      const [first] = motion.blocks;
      const box = model.boxes.find(({ of }) => of === motion.mover);
      return motion.kind !== "drawer" || first === undefined || box === undefined
        ? []
        : [blocked(context, motion, first, box)];
    }),
};

function blocked(context: Context, { mover, travel, blocks }: Motion, first: Block, box: BoxModel): Finding {
  const others = new Set(blocks.map(({ obstacle }) => nameOf(obstacle))).size - 1;
  const more = others === 0 ? "" : ` and ${others} more`;
  const what = first.openDoor ? `${nameOf(first.obstacle)}, open at a right angle,` : nameOf(first.obstacle);
  const how =
    first.at === 0 ? "cannot start to move" : `comes ${about(context, first.at)} out of ${about(context, travel)}`;
  return finding({
    code: "motion/drawer-blocked",
    severity: "error",
    span: box.block.openings.find(({ text }) => text === box.opening.name.text)?.span ?? box.block.head,
    message: `${mover} ${how}: ${nameOf(first.part)} meets ${what}${more}`,
    reason: first.openDoor
      ? "Drawn open to a right angle, a door stands its own thickness into the opening beside its hinges."
      : "Along its travel each part of the drawer, and its front, sweeps a straight path.",
    remedy: first.openDoor
      ? "Make the box narrower, pack its slides out at the hinge side, or use hinges that open further."
      : "Make what moves smaller, or take what stands in its path away.",
    related: [
      { span: box.opening.name.span, message: "its opening" },
      { span: first.obstacle.part.source, message: `${nameOf(first.obstacle)} comes from here` },
    ],
  });
}
