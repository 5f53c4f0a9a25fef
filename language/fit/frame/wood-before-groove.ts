import type { FrontBlock } from "../../core/design.ts";
import type { Finding, Fix } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { compare, less, subtract } from "../../core/rational.ts";
import type { Span, Word } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { Grooves } from "../../derive/groove.ts";
import { frameGrooves } from "../../derive/groove.ts";
import type { FrontModel, Model, Stock } from "../../derive/model.ts";
import { grooveInFront } from "../../derive/rules/groove-in-front.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say } from "../check.ts";
import { thickestCentred } from "./panel-proud.ts";

/** The groove of a panel that is flush with the frame's back should leave enough wood in front of it, and some behind it. */
export const grooveShouldLeaveWood: Check = {
  codes: ["frame/thin-in-front", "frame/open-behind"],
  run: (context, model) => model.fronts.flatMap((front) => check(context, model, front)),
};

function check(context: Context, model: Model, { whole }: FrontModel): readonly Finding[] {
  const flush = whole.panel?.fittings.find((one) => one.word === "flush back");
  const word = whole.panel?.stocks[0];
  const [frame, panel] = [whole.frame?.stock, word].map((one) => model.stocks.get(one?.text ?? ""));
  if (flush === undefined || word === undefined || frame === undefined || panel === undefined) return [];
  const groove = frameGrooves(context, whole, frame, panel);
  const used: Used = { whole, flush, word, frame, panel };
  return [...thinInFront(context, model, used, groove), ...openBehind(context, model, used, groove)];
}

/** A frame, and the panel that is to end flush with its back. */
interface Used {
  readonly whole: FrontBlock;
  readonly flush: { readonly span: Span };
  readonly word: Word;
  readonly frame: Stock;
  readonly panel: Stock;
}

function thinInFront(
  context: Context,
  model: Model,
  { whole, flush, word, frame, panel }: Used,
  { wide }: Grooves,
): readonly Finding[] {
  const left = grooveInFront(frame.thickness, panel.thickness);
  const least = fallback("panel.inFront");
  if (!less(left.value, least.value)) return [];
  const thinner = [...model.stocks.values()]
    .filter((stock) => stock.kind === panel.kind && leaves(frame, stock, least.value))
    .filter((stock) => less(wide.value, stock.thickness.value))
    .sort((a, b) => compare(b.thickness.value, a.thickness.value))
    .slice(0, 2);
  const fixes: readonly Fix[] = [
    ...(less(thickestCentred(frame.thickness.value, wide.value), panel.thickness.value)
      ? []
      : [rewrite(flush.span, "centred", "Put the groove in the middle: centred")]),
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

/** With a panel no thicker than its groove the groove ends where the frame does: a rabbet, and nothing behind the panel. */
function openBehind(
  context: Context,
  model: Model,
  { whole, flush, word, frame, panel }: Used,
  { rabbet, wide }: Grooves,
): readonly Finding[] {
  if (rabbet !== undefined) return [];
  const thicker = [...model.stocks.values()]
    .filter((stock) => stock.kind === panel.kind && less(wide.value, stock.thickness.value))
    .filter((stock) => leaves(frame, stock, fallback("panel.inFront").value))
    .sort((a, b) => compare(a.thickness.value, b.thickness.value))
    .slice(0, 2);
  return [
    finding({
      code: "frame/open-behind",
      severity: "warning",
      span: word.span,
      message: `"${word.text}" is no thicker than its groove: flush at the back, the groove has no wood behind it`,
      reason: "A groove at the very back of a frame is a rabbet: nothing keeps the panel from falling out backwards.",
      remedy: `Put the groove in the middle, or use a panel thicker than ${say(context, wide.value)}, whose edge is rabbeted.`,
      related: [{ span: whole.frame!.stock.span, message: "the frame" }],
      fixes: [
        rewrite(flush.span, "centred", "Put the groove in the middle: centred"),
        ...thicker.map((stock) => rewrite(word.span, stock.name, `Use "${stock.name}", which is thicker`)),
      ],
    }),
  ];
}

function leaves(frame: Stock, panel: Stock, least: Length): boolean {
  return !less(subtract(frame.thickness.value, panel.thickness.value), least);
}
