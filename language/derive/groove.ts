import type { FrontBlock } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Machining } from "../core/part.ts";
import { less as isLess } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Context } from "./context.ts";
import { givenSize } from "./context.ts";
import { fallback } from "./defaults.ts";
import type { Stock } from "./model.ts";
import { grooveInFront } from "./rules/groove-in-front.ts";
import { rabbetDepth } from "./rules/rabbet-depth.ts";

/** Where the groove of a frame sits, and what its panel's edge must be. */
export interface Grooves {
  readonly wide: Sourced<Length>;
  readonly deep: Sourced<Length>;
  /** From the back face of the frame to the groove; missing for a centred one. */
  readonly fromBack: Sourced<Length> | undefined;
  /** What stays in front of the groove of a panel that is flush with the back. */
  readonly inFront: Sourced<Length> | undefined;
  /** How deep the panel's edge is rabbeted; missing where the panel fills the groove as it is. */
  readonly rabbet: Sourced<Length> | undefined;
  readonly machining: readonly Machining[];
}

/** The shop's cutter pair makes the groove; a panel thinner than the cutter has a groove of its own thickness. */
export function frameGrooves(context: Context, whole: FrontBlock, frame: Stock, panel: Stock | undefined): Grooves {
  const shop = context.design.shop.grooves[0];
  const cutter = givenSize(context, shop?.wide) ?? fallback("grooves.wide");
  const deep = givenSize(context, shop?.deep) ?? fallback("grooves.deep");
  const thinner = panel !== undefined && isLess(panel.thickness.value, cutter.value);
  const wide = thinner ? panel.thickness : cutter;
  const rabbet =
    panel === undefined || !isLess(wide.value, panel.thickness.value) ? undefined : rabbetDepth(panel.thickness, wide);
  const flush = whole.panel?.fittings.some((fitting) => fitting.word === "flush back") ?? false;
  const inFront = flush && panel !== undefined ? grooveInFront(frame.thickness, panel.thickness) : undefined;
  const where = flush ? "inner edge, off centre: front face marked" : "inner edge, centred";
  const groove: Machining = {
    kind: "groove",
    where,
    wide,
    deep,
    ...(flush && rabbet !== undefined ? { from: rabbet } : {}),
    ...(flush
      ? {
          note: `${rabbet === undefined ? "open at" : "distance from"} the back face; run the front face the same way every time`,
        }
      : {}),
  };
  return { wide, deep, fromBack: flush ? rabbet : undefined, inFront, rabbet, machining: [groove] };
}

export function panelEdge(grooves: Grooves): readonly Machining[] {
  if (grooves.rabbet === undefined) return [];
  return [{ kind: "rabbet", where: "back, all edges", wide: grooves.deep, deep: grooves.rabbet }];
}
