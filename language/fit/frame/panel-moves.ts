import type { Finding } from "../../core/finding.ts";
import type { Part } from "../../core/part.ts";
import { ratio, toNumber } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { amount, givenDistance } from "../../derive/context.ts";
import { fallback } from "../../derive/defaults.ts";
import type { BoardStock, FrontModel, Model } from "../../derive/model.ts";
import type { FloatResult } from "../../published/float.ts";
import { panelFloat } from "../../published/float.ts";
import { findPlace } from "../../published/moisture.ts";
import { findSpecies } from "../../published/species.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, sayRoughly, textAbove } from "../check.ts";

/** A solid panel should neither burst its frame in the damp season nor slip out of its groove in the dry one. */
export const solidPanelShouldMoveInFrame: Check = {
  codes: ["frame/panel-bursts", "frame/panel-slips-out"],
  run: (context, model) => model.fronts.flatMap((front) => check(context, model, front)),
};

function check(context: Context, model: Model, front: FrontModel): readonly Finding[] {
  const panel = front.parts.find((part) => part.name === "panel");
  const stock = panel === undefined ? undefined : model.stocks.get(panel.stock);
  const groove = front.parts.flatMap((part) => part.machining).find((made) => made.kind === "groove")?.deep;
  if (panel === undefined || stock?.kind !== "board" || groove === undefined) return [];
  const float = givenDistance(context, front.whole.float);
  const result = moved(context, stock, panel, toNumber(groove.value), floatOf(panel, float));
  if (result === undefined) return [];
  if (result.spareFloat < 0) return float === undefined ? [] : [bursts(context, front, panel, result)];
  return result.heldPushed < 0 ? [slipsOut(context, front, panel, result)] : [];
}

/** The room at each edge across the grain: as written, or as the part was derived. */
function floatOf(panel: Part, written: Part["width"] | undefined): number {
  const derived = panel.width.origin.kind === "derived" ? panel.width.origin.inputs["float"] : undefined;
  return toNumber((written ?? (derived as Part["width"] | undefined) ?? fallback("panel.solid")).value);
}

function moved(
  context: Context,
  stock: BoardStock,
  panel: Part,
  grooveDepth: number,
  float: number,
): FloatResult | undefined {
  const species = stock.block.species === undefined ? undefined : findSpecies(stock.block.species.text);
  if (species === undefined) return undefined;
  const place = context.design.shop.places[0];
  const usual = findPlace("most of the United States");
  const percent = (
    stated: { readonly amount: Parameters<typeof amount>[1] } | undefined,
    otherwise: number,
  ): number => {
    const value = stated === undefined ? undefined : amount(context, stated.amount);
    return value === undefined ? otherwise : toNumber(value);
  };
  const sawn = stock.block.sawn?.value;
  return panelFloat({
    size: toNumber(panel.width.value),
    species,
    direction: sawn === "quarter" ? "radial" : sawn === "flat" ? "tangential" : "unknown",
    madeAt: percent(stock.block.moisture ?? place?.shop, 8),
    driest: percent(place?.driest, usual?.driest.value ?? 6),
    wettest: percent(place?.dampest, usual?.wettest.value ?? 11),
    grooveDepth,
    float,
  });
}

function inchesUp(context: Context, inches: number): string {
  return textAbove(context, ratio(Math.ceil(inches * 64), 64));
}

function bursts(context: Context, { whole }: FrontModel, panel: Part, result: FloatResult): Finding {
  const { measure } = whole.float!;
  const needed = inchesUp(context, result.floatNeeded);
  return finding({
    code: "frame/panel-bursts",
    severity: "warning",
    span: measure.span,
    message: `this ${panel.stock} panel swells by ${sayRoughly(context, result.growth)} in the damp season, and has ${sayRoughly(context, 2 * (result.floatNeeded + result.spareFloat))} of room`,
    reason: "Swelling wood breaks a joint rather than stop (Wood Handbook, Eq. 13-2 and Table 13-5).",
    remedy: `Give it ${needed} at each edge, or leave the float out and it is derived.`,
    related: [{ span: whole.panel!.key.span, message: "the panel" }],
    fixes: [rewrite(measure.span, needed)],
  });
}

function slipsOut(context: Context, { whole }: FrontModel, panel: Part, result: FloatResult): Finding {
  return finding({
    code: "frame/panel-slips-out",
    severity: "hint",
    span: whole.panel!.stocks[0]!.span,
    message: `when it is driest this ${panel.stock} panel, pushed to one side, comes ${sayRoughly(context, -result.heldPushed)} out of its groove`,
    reason: `It shrinks by ${sayRoughly(context, result.shrinkage)} from the size that it is made to (Wood Handbook, Eq. 13-2 and Table 13-5).`,
    remedy: "Fix it in the middle of the top and bottom rail with a pin or a drop of glue, or cut the grooves deeper.",
  });
}
