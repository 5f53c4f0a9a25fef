import type { Finding } from "../../core/finding.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel } from "../../derive/model.ts";
import { finding } from "../../fit/check.ts";
import type { Motion } from "../motion.ts";
import type { Block, Standing } from "../moving.ts";
import type { DryFitCheck } from "./check.ts";
import { about, atLeast, nameOf } from "./names.ts";

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
  const { standing } = first;
  const what = `${nameOf(first.obstacle)}${standing === undefined ? "" : `, ${openTo(standing)},`}`;
  const how =
    first.at === 0 ? "cannot start to move" : `comes ${about(context, first.at)} out of ${about(context, travel)}`;
  return finding({
    code: "motion/drawer-blocked",
    severity: "error",
    span: box.block.openings.find(({ text }) => text === box.opening.name.text)?.span ?? box.block.head,
    message: `${mover} ${how}: ${nameOf(first.part)} meets ${what}${more}`,
    reason:
      standing === undefined
        ? "Along its travel each part of the drawer, and its front, sweeps a straight path."
        : "An open door stands its own thickness into the opening beside its hinges at a right angle, less of it the further it opens.",
    remedy:
      standing === undefined
        ? "Make what moves smaller, or take what stands in its path away."
        : clearing(context, standing),
    related: [
      { span: box.opening.name.span, message: "its opening" },
      { span: first.obstacle.part.source, message: `${nameOf(first.obstacle)} comes from here` },
    ],
  });
}

function openTo({ at }: Standing): string {
  return Math.abs(at - 90) < 0.5 ? "open at a right angle" : `open to ${Math.floor(at)} degrees`;
}

function clearing(context: Context, { at, by, held }: Standing): string {
  const further = held
    ? "move the case away from the wall, or hinge the door on the other side"
    : "use hinges that open further, and say how far: opens 165 degrees";
  if (at < 89.5) return `${further.charAt(0).toUpperCase()}${further.slice(1)}.`;
  return `Bring the box in by ${atLeast(context, by)} at the hinge side: pack its slide out there and make the box as much narrower; or ${further}.`;
}
