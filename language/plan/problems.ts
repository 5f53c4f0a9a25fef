import type { Price } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import { toMillimetres } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { add, isPositive, less, multiply, over, ratio, subtract, toNumber } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import { amount, givenDistance, givenSize, pieces, size } from "../derive/context.ts";
import { fallback } from "../derive/defaults.ts";
import type { BoardStock, Model, SheetStock as Sheet, Stock } from "../derive/model.ts";
import { MOST_IN_RACK } from "../derive/read-figures.ts";
import { boardFeet } from "../published/board-feet.ts";
import type { MatchedRow, SheetPart, SheetProblem, SheetStock } from "./pack/problem.ts";
import { type Scale, scaleFor } from "./scale.ts";

/** What is cut from one stock, as a packing is asked for it, and how its answer reads back. */
export interface StockProblem {
  readonly stock: Stock;
  readonly problem: SheetProblem;
  readonly scale: Scale;
  /** Parts by the id that the packing knows them by. */
  readonly parts: ReadonlyMap<string, { readonly part: Part; readonly mark: string; readonly staves: number }>;
  /** Sizes by the id of each piece that can be bought or lies in the rack. */
  readonly sources: ReadonlyMap<string, Source>;
}

export interface Source {
  readonly width: Length;
  readonly height: Length;
  readonly offcut: boolean;
  /** Price of one piece; missing where none is written. */
  readonly price: number | undefined;
}

export interface MarkedPart {
  readonly mark: string;
  readonly part: Part;
  readonly quantity: number;
}

/** One problem for each sheet and board stock that parts are cut from. Stocks whose size is not known are left out. */
export function stockProblems(context: Context, model: Model, rows: readonly MarkedPart[]): readonly StockProblem[] {
  const stocks = [...new Set(rows.map((row) => row.part.stock))].flatMap((name) => model.stocks.get(name) ?? []);
  return stocks.flatMap((stock) => {
    const sources =
      stock.kind === "sheet"
        ? sheetSources(context, stock)
        : stock.kind === "board"
          ? boardSources(context, stock)
          : [];
    if (sources.length === 0) return [];
    return [
      problemFor(
        context,
        stock,
        sources,
        rows.filter((row) => row.part.stock === stock.name),
      ),
    ];
  });
}

type NamedSource = Source & { readonly id: string; readonly have: number | undefined };

function problemFor(
  context: Context,
  stock: Stock,
  sources: readonly NamedSource[],
  rows: readonly MarkedPart[],
): StockProblem {
  const kerf = kerfOf(context);
  const trim = trimOf(context, stock);
  const made = rows.map((row) => ({ row, staves: stavesOf(stock, row, sources) }));
  const lengths = [
    kerf,
    trim,
    ...sources.flatMap((one) => [one.width, one.height]),
    ...made.flatMap(({ row, staves }) => [row.part.length.value, row.part.width.value, staves.width]),
  ];
  const scale = scaleFor(lengths);
  const parts = new Map<string, { part: Part; mark: string; staves: number }>();
  const asked = made.map(({ row, staves }) => {
    const id = row.part.matched === undefined ? row.mark : `${row.mark} ${row.part.id}`;
    parts.set(id, { part: row.part, mark: row.mark, staves: staves.count });
    return askedPart(stock, row, id, scale, staves);
  });
  return {
    stock,
    scale,
    parts,
    sources: new Map(sources.map((one) => [one.id, one])),
    problem: {
      sheets: sources.map(
        (one): SheetStock => ({
          id: one.id,
          width: scale.units(one.width),
          height: scale.units(one.height),
          cost: one.price ?? areaOf(one),
          have: one.have,
          offcut: one.offcut,
        }),
      ),
      kerf: scale.units(kerf),
      trim: scale.units(trim),
      parts: asked,
      rows: matchedRows(stock, rows),
    },
  };
}

/** What the blade takes. */
export function kerfOf(context: Context): Length {
  return (givenDistance(context, context.design.shop.saw[0]?.kerf) ?? fallback("saw.kerf")).value;
}

/** What is cut off each edge of a new sheet before it is cut up; boards and offcuts are cut as they are. */
export function trimOf(context: Context, stock: Stock): Length {
  if (stock.kind !== "sheet") return ratio(0);
  return (givenDistance(context, context.design.shop.saw[0]?.trim) ?? fallback("saw.trim")).value;
}

/** Without prices the least area is the cheapest. */
function areaOf(source: Source): number {
  return (toNumber(source.width) * toNumber(source.height)) / 144;
}

/** A sheet's face grain runs along its second figure, its height here, unless it is said to run across; a board's along its length. */
function askedPart(stock: Stock, row: MarkedPart, id: string, scale: Scale, staves: Staves): SheetPart {
  const { part } = row;
  const plain = part.grain === "none" || (stock.kind === "sheet" && stock.block.grain?.value === "none");
  const { along } = liesIn(stock, part);
  const [width, height] = grainLies(stock) ? [along, staves.width] : [staves.width, along];
  return {
    id,
    width: scale.units(width),
    height: scale.units(height),
    quantity: row.quantity * staves.count,
    turn: plain && staves.count === 1 ? "free" : "fixed",
    ...(part.matched === undefined ? {} : { group: part.matched.group }),
  };
}

/** What of a part runs along the grain of its stock, and what across it; where that does not matter, the longer side along a board. */
function liesIn(stock: Stock, { grain, length, width }: Part): { readonly along: Length; readonly across: Length } {
  const [long, wide] = [length.value, width.value];
  const crosswise = grain === "across" || (grain === "none" && stock.kind === "board" && less(long, wide));
  return crosswise ? { along: wide, across: long } : { along: long, across: wide };
}

/** Whether the grain of a sheet runs along its first figure, its width here. */
export function grainLies(stock: Stock): boolean {
  return stock.kind === "sheet" && stock.block.grain?.value === "across";
}

/** How many boards side by side a part is glued up from, and how wide each is cut. */
export interface Staves {
  readonly count: number;
  readonly width: Length;
}

/** A part wider across its grain than any board sold is glued up from equal staves, each with what jointing takes. */
export function stavesOf(stock: Stock, { part }: MarkedPart, sources: readonly Source[]): Staves {
  const { across } = liesIn(stock, part);
  const whole = { count: 1, width: across };
  if (stock.kind !== "board") return whole;
  const widest = sources
    .filter((one) => !one.offcut)
    .reduce((most, one) => (less(most, one.width) ? one.width : most), ratio(0));
  if (!less(widest, across)) return whole;
  const usable = subtract(widest, fallback("stave.joint").value);
  const count = isPositive(usable) ? Math.ceil(toNumber(across) / toNumber(usable)) : 1;
  return { count, width: add(over(across, count), fallback("stave.joint").value) };
}

function matchedRows(stock: Stock, rows: readonly MarkedPart[]): readonly MatchedRow[] {
  const groups = new Map<string, MatchedRow>();
  const [grain, across] = grainLies(stock) ? (["x", "y"] as const) : (["y", "x"] as const);
  for (const { part } of rows) {
    if (part.matched !== undefined)
      groups.set(part.matched.group, {
        id: part.matched.group,
        along: part.matched.along === "grain" ? grain : across,
      });
  }
  return [...groups.values()];
}

function sheetSources(context: Context, stock: Sheet): readonly NamedSource[] {
  const { block } = stock;
  const offcuts = offcutSources(context, stock);
  const width = size(context, block.size?.first);
  const height = size(context, block.size?.second);
  if (width === undefined || height === undefined) return offcuts;
  const price = block.costs === undefined ? undefined : amount(context, block.costs.amount);
  return [
    ...offcuts,
    {
      id: stock.name,
      width: width.value,
      height: height.value,
      offcut: false,
      price: price === undefined ? undefined : toNumber(price),
      have: undefined,
    },
  ];
}

/** Whole sheets in the rack are used before any is bought, but nothing limits how many can be bought. */
export function sheetsInRack(context: Context, stock: Stock): number {
  if (stock.kind === "edging" || stock.block.have === undefined) return 0;
  return pieces(context, stock.block.have.value, MOST_IN_RACK) ?? 0;
}

function boardSources(context: Context, stock: BoardStock): readonly NamedSource[] {
  const { block } = stock;
  const widths = (block.wide?.values ?? []).flatMap((value) => size(context, value.measure) ?? []);
  const lengths = (block.long?.values ?? []).flatMap((value) => size(context, value.measure) ?? []);
  const nominal = givenSize(context, block.called)?.value ?? stock.thickness.value;
  return [
    ...offcutSources(context, stock),
    ...widths.flatMap((width) =>
      lengths.map(
        (length): NamedSource => ({
          id: `${stock.name} ${width.value.n}/${width.value.d} x ${length.value.n}/${length.value.d}`,
          width: width.value,
          height: length.value,
          offcut: false,
          price: boardPrice(context, block.costs, nominal, width.value, length.value),
          have: undefined,
        }),
      ),
    ),
  ];
}

function boardPrice(
  context: Context,
  price: Price | undefined,
  thick: Length,
  width: Length,
  length: Length,
): number | undefined {
  const value = price === undefined ? undefined : amount(context, price.amount);
  if (price === undefined || value === undefined) return undefined;
  const each = toNumber(value);
  switch (price.per) {
    case "piece":
      return each;
    case "foot":
      return (each * toNumber(length)) / 12;
    case "metre":
      return (each * toNumber(toMillimetres(length))) / 1000;
    default:
      return (
        each *
        (boardFeet(toNumber(thick), toNumber(width), toNumber(length)) ?? toNumber(multiply(width, length)) / 144)
      );
  }
}

function offcutSources(context: Context, stock: Stock): readonly NamedSource[] {
  return context.design.offcuts.flatMap((statement, index): readonly NamedSource[] => {
    if (statement.stock.text !== stock.name) return [];
    const width = size(context, statement.first);
    const height = size(context, statement.second);
    if (width === undefined || height === undefined) return [];
    return [
      {
        id: `${stock.name} offcut ${index + 1}`,
        width: width.value,
        height: height.value,
        offcut: true,
        price: undefined,
        have: 1,
      },
    ];
  });
}
