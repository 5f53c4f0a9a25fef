import type { Finding, Fix } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { add, compare, less, over, subtract, times } from "../../core/rational.ts";
import { behind } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import { frameGrooves } from "../../derive/groove.ts";
import type { FrontModel, Model, Stock } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say } from "../check.ts";

/** A panel in a groove in the middle of its frame should not stand out behind the frame. */
export const panelShouldStayInFrame: Check = {
  codes: ["frame/panel-proud"],
  run: (context, model) => model.fronts.flatMap((front) => check(context, model, front)),
};

/** The thickest panel that ends at the back of a frame when its edge, rabbeted on the back, fills a groove in the middle. */
export function thickestCentred(frame: Length, groove: Length): Length {
  return over(add(frame, groove), 2);
}

function check(context: Context, model: Model, { whole }: FrontModel): readonly Finding[] {
  const use = whole.panel;
  const word = use?.stocks[0];
  const [frame, panel] = [whole.frame?.stock, word].map((one) => model.stocks.get(one?.text ?? ""));
  if (use === undefined || word === undefined || frame === undefined || panel === undefined) return [];
  if (use.fittings.some((one) => one.word === "flush back")) return [];
  const { wide, rabbet } = frameGrooves(context, whole, frame, panel);
  const most = thickestCentred(frame.thickness.value, wide.value);
  const proud = subtract(panel.thickness.value, most);
  if (rabbet === undefined || !less(fallback("cut.tolerance").value, proud)) return [];
  const centred = use.fittings.find((one) => one.word === "centred");
  const last = use.fittings.at(-1)?.span ?? word.span;
  const inFront = subtract(frame.thickness.value, panel.thickness.value);
  const goesFlush = !less(inFront, fallback("panel.inFront").value);
  const flush =
    centred === undefined
      ? rewrite(behind(last), " flush back", offCentre)
      : rewrite(centred.span, "flush back", offCentre);
  const fixes: readonly Fix[] = [
    ...(goesFlush ? [flush] : []),
    ...thinner(model, panel, most).map((stock) =>
      rewrite(word.span, stock.name, `Use "${stock.name}", which is thinner`),
    ),
  ];
  const thicker = subtract(times(panel.thickness.value, 2), wide.value);
  return [
    finding({
      code: "frame/panel-proud",
      severity: "warning",
      span: word.span,
      message: `"${word.text}" in a groove in the middle stands ${say(context, proud)} out behind its frame`,
      reason:
        "Its edge is rabbeted on the back, so that its face lies at the front of the groove; what is thicker than groove and wood behind it stands out, and meets shelves and bumpers before the frame does.",
      remedy: `${goesFlush ? "Set the groove off the middle: write flush back. Or take" : "Take"} a panel of ${say(context, most)} at most, or frame stock of ${say(context, thicker)} or more.`,
      related: [
        {
          span: whole.frame!.stock.span,
          message: `the frame is ${say(context, frame.thickness.value)} thick, its groove ${say(context, wide.value)} wide`,
        },
      ],
      fixes,
    }),
  ];
}

const offCentre = "Set the groove so that the panel ends at the back: flush back";

function thinner(model: Model, panel: Stock, most: Length): readonly Stock[] {
  return [...model.stocks.values()]
    .filter((stock) => stock.kind === panel.kind && !less(most, stock.thickness.value))
    .sort((a, b) => compare(b.thickness.value, a.thickness.value))
    .slice(0, 1);
}
