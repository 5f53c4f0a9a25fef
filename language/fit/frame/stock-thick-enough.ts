import type { Finding } from "../../core/finding.ts";
import { less } from "../../core/rational.ts";
import type { Word } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import type { Model } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, say } from "../check.ts";
import { limits } from "../limits.ts";

/** The stiles and rails of doors and face frames should be 3/4 in thick, as published. */
export const frameStockShouldBeThickEnough: Check = {
  codes: ["frame/thin-stock"],
  run: (context, model) => {
    const doors = model.fronts.filter((front) => front.block.kind === "door").map((front) => front.whole.frame?.stock);
    const faces = model.cases.flatMap(({ block }) => [block.frame?.stock, block.rear?.frame?.stock]);
    return [...doors, ...faces].flatMap((word) => (word === undefined ? [] : check(context, model, word)));
  },
};

function check(context: Context, { stocks }: Model, word: Word): readonly Finding[] {
  const stock = stocks.get(word.text);
  if (stock === undefined || !less(stock.thickness.value, limits.doorStock.value)) return [];
  return [
    finding({
      code: "frame/thin-stock",
      severity: "warning",
      span: word.span,
      message: `"${word.text}" is ${say(context, stock.thickness.value)} thick; stiles and rails are at least 3/4 in, give or take 1/32`,
      reason: `A thin frame twists, and leaves little wood for its joints and hinges (${limits.doorStock.source}).`,
      remedy: "Use thicker stock for the frame.",
      related: [{ span: stock.block.name.span, message: "how thick it is is said here" }],
    }),
  ];
}
