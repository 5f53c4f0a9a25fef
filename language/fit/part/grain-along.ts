import type { Choice } from "../../core/design.ts";
import type { Finding } from "../../core/finding.ts";
import type { Part } from "../../core/part.ts";
import { toNumber } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { Model } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, nameOf, number, rewrite } from "../check.ts";
import { shares } from "../limits.ts";

/** Grain should run along a long part, not across it. */
export const grainShouldRunAlong: Check = {
  codes: ["part/grain-across"],
  run: (context, model) => [
    ...model.fronts.flatMap((front) =>
      front.parts
        .filter((part) => part.name === "slab" || part.name === "panel")
        .flatMap((part) => check(part, front.whole.grain)),
    ),
    ...byHand(context, model),
  ],
};

function byHand({ design }: Context, model: Model): readonly Finding[] {
  const blocks = new Map(design.parts.map((block) => [`part ${block.name.text}`, block]));
  return model.parts.flatMap((part) => check(part, blocks.get(part.of)?.grain));
}

function check(part: Part, grain: Choice<"long" | "across" | "none"> | undefined): readonly Finding[] {
  if (grain === undefined || !isCutAcross(part)) return [];
  const { along, across } = runs(part);
  const other = grain.value === "across" ? "long" : "across";
  return [
    finding({
      code: "part/grain-across",
      severity: "warning",
      span: grain.span,
      message: `the grain of ${nameOf(part)} runs across it: the piece is ${number(across / along)} times as long the other way`,
      reason: "Wood is weak across its grain: a long piece cut so bends, and breaks at a knock.",
      remedy: `Write grain ${other}, or make the piece of plywood and mean it.`,
      fixes: [rewrite(grain.span, other, `Write grain ${other}`)],
    }),
  ];
}

/** Whether a part is so much longer across its grain than along it that it snaps in the hand. */
export function isCutAcross(part: Part): boolean {
  const { along, across } = runs(part);
  return part.grain !== "none" && shares.grainAcross.value * along < across;
}

function runs({ length, width, grain }: Part): { readonly along: number; readonly across: number } {
  const [one, other] = [toNumber(length.value), toNumber(width.value)];
  return grain === "long" ? { along: one, across: other } : { along: other, across: one };
}
