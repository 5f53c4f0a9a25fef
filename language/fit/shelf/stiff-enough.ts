import type { Finding } from "../../core/finding.ts";
import { toNumber } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { size } from "../../derive/context.ts";
import type { BoardStock, Model, ShelfModel, Stock } from "../../derive/model.ts";
import type { Shelf } from "../../published/shelves.ts";
import {
  allowedSag,
  longestSpan,
  sagLimits,
  shelfDesignLoad,
  shelfLoadCap,
  shelfLoads,
  shelfSag,
} from "../../published/shelves.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say, sayApart, sayLoad, sayRoughly, sayWeight } from "../check.ts";
import { densityOf, modulusOf, pounds } from "../weight.ts";

/** A shelf should not sag past the published limit under what it holds, and should hold no more than one shelf may. */
export const shelfShouldNotSag: Check = {
  codes: ["shelf/sags", "shelf/over-design-load"],
  run: (context, model) =>
    model.shelves.flatMap((shelf) => [...sags(context, model, shelf), ...overloaded(context, shelf)]),
};

function sags(context: Context, model: Model, shelf: ShelfModel): readonly Finding[] {
  const part = shelf.parts[0];
  const stock = part === undefined ? undefined : model.stocks.get(part.stock);
  const word = shelf.whole.from?.stocks[0];
  if (part === undefined || stock === undefined || word === undefined) return [];
  const [span, depth] = [toNumber(part.length.value), toNumber(part.width.value)];
  const holds = pounds(context, shelf.whole.holds);
  const load = holds ?? shelfDesignLoad(span, depth, shelfLoads.general.value);
  const loaded = load === undefined ? undefined : shelfOf(context, stock, depth, load);
  const sag = loaded === undefined ? undefined : shelfSag({ ...loaded, span })?.total;
  const limit = allowedSag(span, "L/144");
  if (load === undefined || loaded === undefined || sag === undefined || limit === undefined || sag <= limit) return [];
  const most = longestSpan(loaded, "L/144");
  const [sags, allowed] = sayApart(context, sag, limit);
  return [
    finding({
      code: "shelf/sags",
      severity: "warning",
      span: word.span,
      message: `under ${sayWeight(context, load)} this shelf sags ${sags} over ${say(context, part.length.value)}; ${allowed} is the limit`,
      reason: `A shelf may sag by a 144th of its span (${sagLimits["L/144"].source})${holds === undefined ? `; ${sayLoad(context, 40)} is taken, since nothing says what it holds (${shelfLoads.general.source})` : ""}.`,
      remedy: `The longest span for this load is ${most === undefined ? "not known" : sayRoughly(context, Math.floor(most * 8) / 8)}: use thicker or stiffer stock, a rib under its front edge, or a partition.`,
      related: [
        { span: shelf.whole.holds?.amount.span ?? shelf.opening.name.span, message: "its load, or its opening" },
      ],
      fixes: stiffer(context, model, { stock, depth, load, span, limit }).map(({ name, isGlued }) =>
        rewrite(word.span, name, `Make it of "${name}"${isGlued ? ", glued up" : ""}`),
      ),
    }),
  ];
}

/** A shelf of this stock, all but its span; `undefined` for a wood that is not known. */
export function shelfOf(
  context: Context,
  stock: Stock,
  depth: number,
  pounds: number,
): Omit<Shelf, "span"> | undefined {
  const modulus = modulusOf(stock);
  if (modulus === undefined) return undefined;
  return {
    depth,
    thickness: toNumber(stock.thickness.value),
    modulus,
    density: densityOf(context, stock),
    load: { pounds },
  };
}

interface Asked {
  readonly stock: Stock;
  readonly depth: number;
  readonly load: number;
  readonly span: number;
  readonly limit: number;
}

/** Stocks of the file that would hold, the thinnest of them first. */
function stiffer(context: Context, { stocks }: Model, asked: Asked): readonly Stiffer[] {
  return [...stocks.values()]
    .filter((stock) => {
      const shelf = stock === asked.stock ? undefined : shelfOf(context, stock, asked.depth, asked.load);
      const sag = shelf === undefined ? undefined : shelfSag({ ...shelf, span: asked.span })?.total;
      return sag !== undefined && sag <= asked.limit;
    })
    .sort((a, b) => toNumber(a.thickness.value) - toNumber(b.thickness.value))
    .slice(0, 2)
    .map((stock) => ({ name: stock.name, isGlued: stock.kind === "board" && widest(context, stock) < asked.depth }));
}

interface Stiffer {
  readonly name: string;
  /** Whether it takes several boards side by side. */
  readonly isGlued: boolean;
}

/** The widest board that can be bought, in inches; endless where the file does not say. */
function widest(context: Context, { block }: BoardStock): number {
  const widths = (block.wide?.values ?? []).flatMap((one) => size(context, one.measure)?.value ?? []);
  return widths.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...widths.map(toNumber));
}

function overloaded(context: Context, { whole }: ShelfModel): readonly Finding[] {
  const holds = pounds(context, whole.holds);
  if (holds === undefined || whole.holds === undefined || holds <= shelfLoadCap.value) return [];
  return [
    finding({
      code: "shelf/over-design-load",
      severity: "warning",
      span: whole.holds.amount.span,
      message: `${sayWeight(context, holds)} is more than the ${sayWeight(context, shelfLoadCap.value)} that any one shelf is designed for`,
      reason: `Its pins, and the wall or the case behind it, carry it too (${shelfLoadCap.source}).`,
      remedy: "Spread it over several shelves, or have what carries it worked out by somebody licensed to.",
    }),
  ];
}
