import type { ShelfBlock } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import { asMade, withUnit } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import { less as isLess } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Context } from "./context.ts";
import { found, givenDistance, pieces, resolve, size } from "./context.ts";
import { fallback } from "./defaults.ts";
import { edgingOn, lessEdging } from "./edging.ts";
import type { Opening, OpeningTable, ShelfModel, Side, Stock } from "./model.ts";
import { partsFrom } from "./parts.ts";
import { betweenTwo } from "./rules/between-two.ts";
import { housedBetween } from "./rules/housed-between.ts";
import { less } from "./rules/less.ts";
import { plus } from "./rules/plus.ts";

/** The shelves of one block, in each of its openings. */
export function deriveShelves(
  context: Context,
  block: ShelfBlock,
  whole: ShelfBlock,
  stocks: ReadonlyMap<string, Stock>,
  openings: OpeningTable,
): readonly ShelfModel[] {
  const word = whole.from?.stocks[0];
  const stock = word === undefined ? undefined : resolve(context, "stock", word, stocks);
  if (word === undefined) {
    found(context, {
      code: "shelf/made-of-nothing",
      severity: "error",
      span: block.head,
      message: "what this shelf is made of has not been said",
      reason: "Its thickness and its sag hang on its stock.",
      remedy: "Write from STOCK.",
    });
  }
  const known = block.openings.flatMap((name) => resolve(context, "opening", name, openings) ?? []);
  return known.map((opening) => {
    const of = `shelf ${opening.name.text}`;
    const at = heightsOf(context, whole, opening);
    const parts = stock === undefined ? [] : shelfParts(context, { block, whole, of, opening, at }, stock, stocks);
    return { block, whole, of, opening, at, parts };
  });
}

/** The heights that are said, each within the opening; `undefined` where none is. */
function heightsOf(
  context: Context,
  { at }: ShelfBlock,
  { high, name }: Opening,
): readonly Sourced<Length>[] | undefined {
  if (at === undefined) return undefined;
  return at.values.flatMap(({ measure }): readonly Sourced<Length>[] => {
    const height = givenDistance(context, { key: at.key, measure });
    if (height === undefined || isLess(height.value, high.value)) return height === undefined ? [] : [height];
    found(context, {
      code: "shelf/above-opening",
      severity: "error",
      span: measure.span,
      message: `"${name.text}" is ${withUnit(high.value, context.units)} high; a shelf at ${withUnit(height.value, context.units)} is not in it`,
      reason: "Heights of shelves are counted from the floor of their opening to their upper face.",
      remedy: `Write less than ${withUnit(high.value, context.units)}, or name the opening above.`,
    });
    return [];
  });
}

function shelfParts(
  context: Context,
  { block, whole, of, opening, at }: Omit<ShelfModel, "parts">,
  stock: Stock,
  stocks: ReadonlyMap<string, Stock>,
): readonly Part[] {
  const room = opening.behindFrame ?? opening.deep;
  if (room === undefined) return [];
  const between = insideWidth(opening);
  const fitting = whole.from?.fittings.find((one) => one.word === "dado");
  const housed = fitting === undefined ? undefined : (size(context, fitting.depth) ?? fallback("case.dado"));
  const loose = whole.adjustable !== undefined;
  const length = loose
    ? betweenTwo(between, givenDistance(context, whole.gap) ?? fallback("shelf.endGap"))
    : housed === undefined
      ? between
      : housedBetween(between, nothing(between), housed);
  const set = loose ? (givenDistance(context, whole.set) ?? fallback("shelf.set")) : givenDistance(context, whole.set);
  // A shelf is wider than the opening of its face frame, and stands behind it.
  const deep = set === undefined ? room : less(room, set);
  const bands = edgingOn(context, whole.edging, stocks);
  const machining: readonly Machining[] = bands.map((band) => ({
    kind: "edging",
    where: "front edge",
    note: band.stock.name,
  }));
  return partsFrom(context, {
    name: "shelf",
    of,
    quantity: at?.length ?? (whole.count === undefined ? 1 : (pieces(context, whole.count.value, 60) ?? 1)),
    stock,
    length,
    width: lessEdging(deep, bands, ["front"]),
    source: whole.from?.key.span ?? block.head,
    machining,
    ...(loose
      ? { note: rowsNote(context, whole) }
      : housed === undefined
        ? {}
        : { note: dadoNote(context, housed, at) }),
    face: "top",
  });
}

/** Where the pins go: in both sides of the opening, two rows each. */
function rowsNote(context: Context, whole: ShelfBlock): string {
  const rows = givenDistance(context, whole.rows) ?? fallback("shelf.rows");
  const text = (length: Length): string => asMade(length, context.units);
  return `pins in rows of holes ${text(rows.value)} apart, front row ${text(fallback("shelf.firstRow").value)} behind the front edge of the sides`;
}

/** The dados are in parts that are made before anybody knows how high the shelf is to stand, unless it is said. */
function dadoNote(context: Context, deep: Sourced<Length>, at: ShelfModel["at"]): string {
  const text = (length: Length): string => withUnit(length, context.units);
  const ends = `its ends stand in dados ${text(deep.value)} deep`;
  if (at === undefined) return `${ends}: cut them where it is to stand`;
  return `${ends}, their upper edges ${at.map((height) => text(height.value)).join(", ")} above the floor of the opening`;
}

/** Behind a face frame the case is wider than its opening by what lies behind each edge. */
function insideWidth(opening: Opening): Sourced<Length> {
  const widened = (width: Sourced<Length>, side: Side): Sourced<Length> => {
    const beside = opening.bounds[side].beside;
    return beside === undefined || beside.value.n === 0n ? width : plus(width, beside);
  };
  return widened(widened(opening.wide, "left"), "right");
}

function nothing(like: Sourced<Length>): Sourced<Length> {
  return { value: { n: 0n, d: 1n }, origin: like.origin };
}
