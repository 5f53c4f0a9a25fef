import type { Length } from "../core/length.ts";
import { toNumber } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import { distance } from "../derive/context.ts";
import type { Stock } from "../derive/model.ts";
import { densityOf, pounds } from "../fit/weight.ts";
import { loadConstant } from "../published/lifting.ts";
import { pieceWeight } from "../published/panel-stock.ts";

export type Tool = "track saw on the floor" | "table saw" | "mitre saw";

/** What the shop's saw reaches and what its maker lifts. */
export interface Shop {
  /** Table from the blade: inches. */
  readonly left: number;
  readonly right: number;
  readonly outfeed: number;
  readonly lift: number;
  /** Whether the lift was stated, or is the published load constant. */
  readonly liftStated: boolean;
  /** Pounds per cubic foot, the same as in every finding. */
  readonly densityOf: (stock: Stock) => number;
}

/** A small cabinet saw's table, where none is described (common practice, no source). */
const usual = { left: 12, right: 30, outfeed: 24 };

/** The widest piece that a mitre saw takes in one pass (common practice, no source). */
const mitreWidth = 12;

/** A piece shorter than this along the fence is held in a sled or clamped, not by hand (common practice, no source). */
const shortest = 12;

export function shopOf(context: Context): Shop {
  const table = context.design.shop.saw[0]?.table ?? [];
  const reach = (side: string): number | undefined => {
    const found = table.find((one) => one.side === side);
    const value = distance(context, found?.reach);
    return value === undefined ? undefined : toNumber(value.value);
  };
  const stated = pounds(context, context.design.shop.lifts[0]?.amount);
  return {
    left: reach("left") ?? usual.left,
    right: reach("right") ?? usual.right,
    outfeed: reach("outfeed") ?? usual.outfeed,
    lift: stated ?? loadConstant.in.value,
    liftStated: stated !== undefined,
    densityOf: (stock) => densityOf(context, stock),
  };
}

/** Pounds of a piece of a stock. */
export function weightOf(shop: Shop, stock: Stock, width: Length, height: Length): number {
  const [wide, high, thick] = [width, height, stock.thickness.value].map(toNumber);
  return pieceWeight(wide!, high!, thick!, shop.densityOf(stock)) ?? 0;
}

export interface CutShape {
  /** The piece in hand. */
  readonly width: Length;
  readonly height: Length;
  /** Across x (a cut that runs up the piece) or across y. */
  readonly along: "x" | "y";
  /** From the fence, stop or edge to the blade. */
  readonly setting: Length;
}

/**
 * The tool for a cut: a piece too heavy to lift, or too far out of the table's reach to be guided, is broken down on the floor;
 * narrow strips and boards are cut across themselves at the mitre saw; everything else goes to the table saw.
 */
export function toolFor(shop: Shop, stock: Stock, cut: CutShape): Tool {
  if (shop.lift < weightOf(shop, stock, cut.width, cut.height)) return "track saw on the floor";
  const { through, away } = measuresOf(cut);
  // A board is ripped along its grain and cut across it; of sheet goods a strip is cut across itself, whichever way that is.
  const across = stock.kind === "board" ? cut.along === "y" : through <= away;
  if (across && through <= mitreWidth) return "mitre saw";
  // At the table saw the fence must reach, and a piece much longer than its edge on the fence would turn there.
  const reaches = toNumber(cut.setting) <= shop.right;
  return reaches && away <= 2 * through ? "table saw" : "track saw on the floor";
}

/** Whether a piece is so short along the fence that no hand belongs on it, at the table saw or at the mitre saw. */
export function isShort(tool: Tool, cut: CutShape): boolean {
  const { through, away } = measuresOf(cut);
  return (tool === "table saw" && through < shortest) || (tool === "mitre saw" && away < shortest);
}

/** How far a cut runs through the piece, and how long the piece is the other way. */
function measuresOf({ width, height, along }: CutShape): { readonly through: number; readonly away: number } {
  const [wide, high] = [toNumber(width), toNumber(height)];
  return along === "x" ? { through: high, away: wide } : { through: wide, away: high };
}

/** Where a stand must be before a cut at the table saw begins: where a piece's centre of gravity would lie beyond the table. */
export function standsFor(shop: Shop, cut: CutShape): readonly string[] {
  const { through, away } = measuresOf(cut);
  const setting = toNumber(cut.setting);
  const offcut = Math.max(0, away - setting);
  const stands: string[] = [];
  if (shop.left < offcut / 2)
    stands.push("to the left of the blade: the piece that falls off is heavier beyond the table than on it");
  if (shop.right < setting / 2) stands.push("to the right of the fence");
  if (shop.outfeed < through / 2) stands.push("behind the saw: the piece would tip off the outfeed as the cut ends");
  return stands;
}
