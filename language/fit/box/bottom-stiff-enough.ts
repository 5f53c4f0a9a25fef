import type { Finding } from "../../core/finding.ts";
import { toNumber } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel, Model, Stock } from "../../derive/model.ts";
import { testLoad } from "../../published/loads.ts";
import { allowedSag, sagLimits, shelfSag } from "../../published/shelves.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, sayApart, sayLoad, sayWeight } from "../check.ts";
import { densityOf, modulusOf, pounds } from "../weight.ts";

/**
 * The bottom of a box should not sag past the published limit. It is held at four edges: the load is shared between a
 * strip along the box and one across it so that both sag alike where they cross (common practice; a plate sags a little less).
 */
export const bottomShouldNotSag: Check = {
  codes: ["box/bottom-sags"],
  run: (context, model) => model.boxes.flatMap((box) => check(context, model, box)),
};

function check(context: Context, model: Model, box: BoxModel): readonly Finding[] {
  const word = box.whole.bottom?.stocks[0];
  const { inside, bottom } = box;
  if (inside === undefined || bottom === undefined || word === undefined) return [];
  const [wide, deep] = [toNumber(inside.wide.value), toNumber(inside.deep.value)];
  const holds = pounds(context, box.whole.holds);
  const load = holds ?? testLoad(wide, deep);
  const limit = allowedSag(Math.min(wide, deep), "1/16 in per foot");
  const sag = load === undefined ? undefined : sagOf(context, bottom, { wide, deep, load });
  if (load === undefined || limit === undefined || sag === undefined || sag <= limit) return [];
  const thicker = [...model.stocks.values()]
    .filter((stock) => stock.kind === bottom.kind)
    .filter((stock) => (sagOf(context, stock, { wide, deep, load }) ?? limit + 1) <= limit)
    .sort((a, b) => toNumber(a.thickness.value) - toNumber(b.thickness.value))
    .slice(0, 2);
  const [sags, allowed] = sayApart(context, sag, limit);
  return [
    finding({
      code: "box/bottom-sags",
      severity: "warning",
      span: word.span,
      message: `under ${sayWeight(context, load)} this bottom sags ${sags}; ${allowed} is the limit`,
      reason: `A bottom that sags rubs on what is below and pulls out of its groove (${sagLimits["1/16 in per foot"].source})${holds === undefined ? `; the test load of ${sayLoad(context, 15)} is taken, since nothing says what it holds` : ""}.`,
      remedy: "Use a thicker bottom, a rib under it, or divide the box.",
      related: [{ span: box.whole.holds?.amount.span ?? box.opening.name.span, message: "its load, or its opening" }],
      fixes: thicker.map((stock) => rewrite(word.span, stock.name, `Make it of "${stock.name}"`)),
    }),
  ];
}

/** A bottom inside its box, in inches, and what lies on it in pounds. */
export interface Plate {
  readonly wide: number;
  readonly deep: number;
  readonly load: number;
}

/** How far a bottom of this stock sags, in inches; `undefined` for a wood that is not known. */
export function sagOf(context: Context, stock: Stock, { wide, deep, load }: Plate): number | undefined {
  const modulus = modulusOf(stock);
  if (modulus === undefined) return undefined;
  const span = Math.min(wide, deep);
  const other = Math.max(wide, deep);
  // Solid wood is stiff one way only, and carries as a strip.
  const share = stock.kind === "board" ? 1 : other ** 4 / (span ** 4 + other ** 4);
  const thickness = toNumber(stock.thickness.value);
  const own = (densityOf(context, stock) * span * other * thickness) / 1728;
  return shelfSag({ span, depth: other, thickness, modulus, load: { pounds: (load + own) * share } })?.total;
}
