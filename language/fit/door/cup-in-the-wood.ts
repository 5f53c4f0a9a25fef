import type { HingesBlock } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import { add, less, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { givenSize } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { FrontModel } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, placeOf, rewrite, say } from "../check.ts";
import { limits } from "../limits.ts";

/** A hinge's cup must lie in solid wood: not through the door, not into the groove, not at the edge. */
export const cupMustLieInWood: Check = {
  codes: ["door/cup-through", "door/cup-meets-groove", "door/cup-from-edge"],
  run: (context, { fronts }) => {
    const hinges = new Map(context.design.hinges.map((block) => [block.name.text, block]));
    return [
      ...context.design.hinges.flatMap((block) => fromEdge(context, block)),
      ...fronts.flatMap((front) => {
        const block = hinges.get(front.whole.hinges?.name.text ?? "");
        const bored = front.parts.some((part) => part.machining.some((made) => made.kind === "cup"));
        return block?.cup === undefined || !bored
          ? []
          : [...through(context, front, block), ...intoGroove(context, front, block)];
      }),
    ];
  },
};

function through(context: Context, { whole, thickness }: FrontModel, block: HingesBlock): readonly Finding[] {
  const deep = givenSize(context, block.deep)?.value ?? limits.cupDeep.value;
  if (thickness === undefined || less(deep, thickness.value)) return [];
  return [
    finding({
      code: "door/cup-through",
      severity: "error",
      span: whole.hinges!.name.span,
      message: `its cup is bored ${say(context, deep)} deep, and the door is ${say(context, thickness.value)} thick`,
      reason: "The cup comes through the face of the door.",
      remedy: "Use a hinge with a shallower cup, or thicker stock.",
      related: [
        { span: block.deep?.measure.span ?? block.name.span, message: "the hinge" },
        { span: placeOf(thickness, whole.hinges!.name.span), message: "how thick the door is" },
      ],
    }),
  ];
}

function intoGroove(context: Context, { whole, parts }: FrontModel, block: HingesBlock): readonly Finding[] {
  const member = parts.find((part) => part.name === (isUpright(whole) ? "stile" : "rail"));
  const groove = member?.machining.find((made) => made.kind === "groove")?.deep;
  const cup = givenSize(context, block.cup);
  if (member === undefined || groove === undefined || cup === undefined) return [];
  const bore = givenSize(context, block.bore) ?? fallback("hinge.bore");
  const reach = add(bore.value, cup.value);
  const wood = subtract(member.width.value, groove.value);
  if (!less(wood, reach)) return [];
  return [
    finding({
      code: "door/cup-meets-groove",
      severity: "warning",
      span: whole.hinges!.name.span,
      message: `the cup reaches ${say(context, reach)} from the edge; the ${member.name} has ${say(context, wood)} of wood before its groove`,
      reason: "Cup and groove break into each other, and the hinge's screws hold in the edge of the panel.",
      remedy: "Make that member wider, or bore the cup nearer to the edge if the hinge allows it.",
      related: [{ span: placeOf(member.width, member.source), message: `the width of the ${member.name}` }],
    }),
  ];
}

function isUpright({ hinged }: FrontModel["whole"]): boolean {
  return hinged?.value !== "top" && hinged?.value !== "bottom";
}

function fromEdge(context: Context, block: HingesBlock): readonly Finding[] {
  const bore = givenSize(context, block.bore);
  if (bore === undefined || block.bore === undefined || block.cup === undefined) return [];
  const isNear = less(bore.value, limits.leastBore.value);
  if (!isNear && !less(limits.mostBore.value, bore.value)) return [];
  return [
    finding({
      code: "door/cup-from-edge",
      severity: "warning",
      span: block.bore.measure.span,
      message: `a cup bored ${say(context, bore.value)} from the edge is ${isNear ? "nearer to it" : "farther from it"} than is usual`,
      reason:
        "Cups are bored 3 to 8 mm from the edge (common practice, no source): nearer the wood breaks, farther the arm does not reach.",
      remedy: "Check the hinge's own sheet of sizes.",
      fixes: [rewrite(block.bore.measure.span, "5mm", "Write 5mm, the middle of the usual")],
    }),
  ];
}
