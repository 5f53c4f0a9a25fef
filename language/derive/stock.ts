import type { BoardBlock, EdgingBlock, GivenList, SheetBlock } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import { inUnit } from "../core/length.ts";
import type { Rational } from "../core/rational.ts";
import { add, largest, over, ratio, smallest } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { derived } from "../core/sourced.ts";
import type { Fraction, ShopLength } from "../published/lengths.ts";
import { hardwoodSource, hardwoodThickness, softwoodSource, softwoodThickness } from "../published/lumber.ts";
import { labelRange, type PanelKind } from "../published/panels.ts";
import type { Context } from "./context.ts";
import { found, givenSize, size } from "./context.ts";
import { fallback } from "./defaults.ts";
import type { Stock } from "./model.ts";
import { readFigures } from "./read-figures.ts";

/** Every stock that has a thickness, by name. A stock without one is a finding at its name. */
export function stocksOf(context: Context): ReadonlyMap<string, Stock> {
  const { sheets, boards, edgings } = context.design;
  readFigures(context);
  const stocks = [
    ...sheets.map((block) => sheetStock(context, block)),
    ...boards.map((block) => boardStock(context, block)),
    ...edgings.map((block) => edgingStock(context, block)),
  ];
  const table = new Map<string, Stock>();
  for (const stock of stocks) if (stock !== undefined && !table.has(stock.name)) table.set(stock.name, stock);
  return table;
}

function sheetStock(context: Context, block: SheetBlock): Stock | undefined {
  const name = block.name.text;
  const measured = readings(context, block.measures);
  if (measured !== undefined) return { kind: "sheet", name, block, thickness: measured, measured: true };
  const label = givenSize(context, block.called);
  if (label === undefined) return noThickness(context, block, "measures");
  return { kind: "sheet", name, block, thickness: promised(label, block), measured: false };
}

/** What a label promises: the label, somewhere in the range that its standard allows. */
function promised(label: Sourced<Length>, block: SheetBlock): Sourced<Length> {
  const range = labelRange(fractionOf(label.value), kindOf(block));
  if (range === undefined) return label;
  const thickness = derived(
    { gives: "thickness as labelled", formula: "{label}, not measured", tag: "as transcribed", source: range.source },
    { label },
    (of) => of.label,
  );
  return { ...thickness, low: exact(range.least), high: exact(range.most) };
}

function kindOf(block: SheetBlock): PanelKind {
  switch (block.core?.text) {
    case "mdf":
      return "MDF";
    case "particle":
      return "particleboard";
    default:
      return "plywood";
  }
}

function boardStock(context: Context, block: BoardBlock): Stock | undefined {
  const name = block.name.text;
  const thick = readings(context, block.thick);
  if (thick !== undefined) return { kind: "board", name, block, thickness: thick };
  const nominal = givenSize(context, block.called);
  const dressed = nominal === undefined ? undefined : dressedFrom(nominal, block);
  if (dressed === undefined) return noThickness(context, block, "thick");
  return { kind: "board", name, block, thickness: dressed };
}

/** The dressed thickness of a nominal one: hardwood in quarters when bought rough, softwood boards otherwise. */
function dressedFrom(nominal: Sourced<Length>, block: BoardBlock): Sourced<Length> {
  const fraction = fractionOf(nominal.value);
  const hardwood = hardwoodThickness(fraction);
  const rough = block.rough === undefined || hardwood === undefined ? undefined : (hardwood.twoSides ?? hardwood.only);
  const dressed = rough ?? softwoodThickness(fraction)?.dry;
  const source = rough === undefined ? softwoodSource.source : hardwoodSource.source;
  if (dressed === undefined) return nominal;
  return derived(
    { gives: "dressed thickness", formula: "{nominal thickness}, dressed", tag: "as transcribed", source },
    { "nominal thickness": nominal },
    () => exact(dressed),
  );
}

function edgingStock(context: Context, block: EdgingBlock): Stock {
  const thickness = givenSize(context, block.thick) ?? fallback("edging.thick");
  return { kind: "edging", name: block.name.text, block, thickness };
}

/** One size from several readings: their middle, which keeps the smallest and largest as its ends. */
export function readings(context: Context, list: GivenList | undefined): Sourced<Length> | undefined {
  const sizes = (list?.values ?? []).flatMap((value) => size(context, value.measure) ?? []);
  const [first, ...rest] = sizes;
  if (first === undefined || rest.length === 0) return first;
  const lows = sizes.map((value) => value.low ?? value.value);
  const highs = sizes.map((value) => value.high ?? value.value);
  const inputs = Object.fromEntries(sizes.map((value, index) => [`reading ${index + 1}`, value]));
  const middle = derived(
    {
      gives: "middle of the readings",
      formula: sizes.map((_, index) => `{reading ${index + 1}}`).join(", "),
      tag: "geometry",
    },
    inputs,
    (of) => middleOf(Object.values(of)),
  );
  return { ...middle, low: smallest(lows[0]!, ...lows.slice(1)), high: largest(highs[0]!, ...highs.slice(1)) };
}

function middleOf(values: readonly Length[]): Length {
  const [first, ...rest] = values;
  return first === undefined ? ratio(0) : over(add(smallest(first, ...rest), largest(first, ...rest)), 2);
}

function noThickness(context: Context, block: SheetBlock | BoardBlock, wanted: "measures" | "thick"): undefined {
  found(context, {
    code: "stock/no-thickness",
    severity: "error",
    span: block.name.span,
    message: `how thick "${block.name.text}" is has not been said`,
    reason: "Every part made of it, and all that meets such a part, hangs on its thickness.",
    remedy: `Measure it and write: ${wanted} 23/32.`,
  });
  return undefined;
}

/** A published length as an exact one in inches. */
export function exact(length: ShopLength): Length {
  const value: Rational = ratio(length.exact[0], length.exact[1]);
  return length.unit === "mm" ? inUnit(value, "mm") : value;
}

/** An exact length as a pair of plain numbers, for the published tables; sizes that need larger ones are in no table. */
export function fractionOf(length: Length): Fraction {
  return [Number(length.n), Number(length.d)];
}
