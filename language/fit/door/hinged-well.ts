import type { Finding } from "../../core/finding.ts";
import { less, toNumber } from "../../core/rational.ts";
import { behind } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { hingesCut } from "../../derive/hinging.ts";
import type { FrontModel, Model } from "../../derive/model.ts";
import { hingeChartSource, hingeCount } from "../../published/hinges.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say, sayWeight } from "../check.ts";
import { limits } from "../limits.ts";
import { weightOfAll } from "../weight.ts";

/** A door should say how it turns, have hinges enough for its height and weight, and a rail in the middle when it is tall. */
export const doorShouldBeHungWell: Check = {
  codes: ["door/too-few-hinges", "door/unhinged", "door/tall-without-mid-rail"],
  run: (context, model) => [
    ...unhinged(model),
    ...model.fronts.flatMap((front) => [...tooFew(context, model, front), ...tall(context, front)]),
  ],
};

function unhinged({ fronts }: Model): readonly Finding[] {
  const doors = fronts.filter(({ block, whole }) => block.kind === "door" && whole.hinged === undefined);
  return doors.map(({ block, whole }) =>
    finding({
      code: "door/unhinged",
      severity: "hint",
      span: block.head,
      message: "which edge this door turns on has not been said",
      reason: "Its hinges cannot be counted or bored, nor its swing be checked.",
      remedy: "Write hinged left or hinged right, and which hinges.",
      fixes: (["left", "right"] as const).map((side) =>
        rewrite(block.open, ` hinged ${side} `, `Hinge it on the ${side}`),
      ),
      related: whole.hinges === undefined ? [] : [{ span: whole.hinges.name.span, message: "its hinges" }],
    }),
  );
}

function tooFew(context: Context, model: Model, front: FrontModel): readonly Finding[] {
  const use = front.whole.hinges;
  const bored = hingesCut(front.parts);
  if (use === undefined || bored === undefined) return [];
  const weight = weightOfAll(context, model, front.parts) / front.leaves;
  const high = toNumber(front.high.value);
  const wanted = hingeCount(high, weight)?.value;
  if (wanted === undefined || wanted <= bored) return [];
  const text = String(wanted);
  return [
    finding({
      code: "door/too-few-hinges",
      severity: "warning",
      span: use.count?.span ?? use.name.span,
      message: `${bored} hinges carry this door of ${say(context, front.high.value)} and ${sayWeight(context, weight)}; ${wanted} are usual`,
      reason: `Too few hinges pull out of the wood in time (${hingeChartSource.source}).`,
      remedy: `Write ${text} hinges.`,
      related: [{ span: front.block.head, message: "the door" }],
      fixes: [
        use.count === undefined
          ? rewrite(behind(use.name.span), ` ${text}`, `Write ${text} hinges`)
          : rewrite(use.count.span, text),
      ],
    }),
  ];
}

function tall(context: Context, { whole, block, high }: FrontModel): readonly Finding[] {
  if (block.kind !== "door" || whole.frame === undefined || whole.mid.some((mid) => mid.which === "rails")) return [];
  if (!less(limits.midRailOver.value, high.value)) return [];
  return [
    finding({
      code: "door/tall-without-mid-rail",
      severity: "warning",
      span: whole.frame.key.span,
      message: `this door is ${say(context, high.value)} high and has no rail in the middle`,
      reason: `A frame over ${say(context, limits.midRailOver.value)} bows and its panel rattles (${limits.midRailOver.source}).`,
      remedy: "Write mid rails 1.",
      related: [{ span: block.head, message: "the door" }],
      fixes: [rewrite(behind(whole.frame.span), " mid rails 1", "Give it one mid rail")],
    }),
  ];
}
