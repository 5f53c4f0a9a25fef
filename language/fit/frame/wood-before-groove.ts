import type { Finding, Fix } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { compare, less, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { FrontModel, Model, Stock } from "../../derive/model.ts";
import { grooveInFront } from "../../derive/rules/groove-in-front.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say } from "../check.ts";

/** The groove of a panel that is flush with the frame's back should leave enough wood in front of it. */
export const grooveShouldLeaveWoodInFront: Check = {
  codes: ["frame/thin-in-front"],
  run: (context, model) => model.fronts.flatMap((front) => check(context, model, front)),
};

function check(context: Context, model: Model, { whole }: FrontModel): readonly Finding[] {
  const flush = whole.panel?.fittings.find((one) => one.word === "flush back");
  const word = whole.panel?.stocks[0];
  const [frame, panel] = [whole.frame?.stock, word].map((one) => model.stocks.get(one?.text ?? ""));
  if (flush === undefined || word === undefined || frame === undefined || panel === undefined) return [];
  const left = grooveInFront(frame.thickness, panel.thickness);
  const least = fallback("panel.inFront");
  if (!less(left.value, least.value)) return [];
  const thinner = [...model.stocks.values()]
    .filter((stock) => stock.kind === panel.kind && leaves(frame, stock, least.value))
    .sort((a, b) => compare(b.thickness.value, a.thickness.value))
    .slice(0, 2);
  const fixes: readonly Fix[] = [
    rewrite(flush.span, "centred", "Put the groove in the middle: centred"),
    ...thinner.map((stock) => rewrite(word.span, stock.name, `Use "${stock.name}", which is thinner`)),
  ];
  return [
    finding({
      code: "frame/thin-in-front",
      severity: "warning",
      span: word.span,
      message: `with "${word.text}" flush at the back, ${say(context, left.value)} of the frame stays in front of the groove`,
      reason: `Wood that thin breaks out when the groove is run or the panel is pressed. From memory: at least ${say(context, least.value)}.`,
      remedy: "Use a thinner panel or thicker frame stock, or put the groove in the middle.",
      related: [
        { span: whole.frame!.stock.span, message: `the frame is ${say(context, frame.thickness.value)} thick` },
      ],
      fixes,
    }),
  ];
}

function leaves(frame: Stock, panel: Stock, least: Length): boolean {
  return !less(subtract(frame.thickness.value, panel.thickness.value), least);
}
