import type { FrontBlock } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import { over, subtract, times } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { derived } from "../core/sourced.ts";
import type { Word } from "../core/span.ts";
import type { Context } from "./context.ts";
import { found, givenDistance, givenSize, pieces, resolve, size } from "./context.ts";
import { fallback } from "./defaults.ts";
import { type Band, edgingOn, lessEdging } from "./edging.ts";
import { panelFloat } from "./float.ts";
import { frameGrooves, type Grooves, panelEdge } from "./groove.ts";
import { hingeMachining } from "./hinging.ts";
import type { Stock } from "./model.ts";
import { type PartPlan, partsFrom } from "./parts.ts";
import { betweenTwo } from "./rules/between-two.ts";
import { betweenUnlike } from "./rules/between-unlike.ts";
import { memberInOpening } from "./rules/member-in-opening.ts";
import { panelSize } from "./rules/panel-size.ts";
import { railLength } from "./rules/rail-length.ts";

export interface FrontInput {
  readonly block: FrontBlock;
  readonly whole: FrontBlock;
  readonly of: string;
  readonly wide: Sourced<Length>;
  readonly high: Sourced<Length>;
  readonly leaves: number;
  readonly stocks: ReadonlyMap<string, Stock>;
  /** Whether the openings of its block stand one above the other. */
  readonly stacked: boolean;
  /** Why its outside is planed to its opening and not to the list. */
  readonly cutToFit: string | undefined;
}

interface Made {
  readonly parts: readonly Part[];
  readonly thickness: Sourced<Length> | undefined;
}

type Make = (plan: Omit<PartPlan, "of">) => readonly Part[];

export function frontParts(context: Context, front: FrontInput): Made {
  const stockOf = (word: Word | undefined) =>
    word === undefined ? undefined : resolve(context, "stock", word, front.stocks);
  const make: Make = (plan) => partsFrom(context, { ...plan, of: front.of, quantity: plan.quantity * front.leaves });
  const bands = edgingOn(context, front.whole.edging, front.stocks);
  const { slab, frame } = front.whole;
  if (frame !== undefined) {
    const stock = stockOf(frame.stock);
    if (stock === undefined) return { parts: [], thickness: undefined };
    return {
      parts: framedParts(context, front, make, stock, stockOf(front.whole.panel?.stocks[0])),
      thickness: stock.thickness,
    };
  }
  const stock = stockOf(slab?.stocks[0]);
  if (slab === undefined) madeOfNothing(context, front);
  if (slab === undefined || stock === undefined) return { parts: [], thickness: undefined };
  return { parts: slabParts(context, front, make, stock, bands), thickness: stock.thickness };
}

function madeOfNothing(context: Context, front: FrontInput): void {
  found(context, {
    code: "front/made-of-nothing",
    severity: "error",
    span: front.block.head,
    message: `what this ${front.block.kind} is made of has not been said`,
    reason: "Its size is known, its parts are not.",
    remedy: "Write slab STOCK, or frame BOARD LENGTH wide with panel STOCK.",
  });
}

/** Grain runs up a door and along a drawer front, unless said otherwise. */
function slabParts(
  context: Context,
  front: FrontInput,
  make: Make,
  stock: Stock,
  bands: readonly Band[],
): readonly Part[] {
  const { whole } = front;
  const wide = lessEdging(front.wide, bands, ["left", "right"]);
  const high = lessEdging(front.high, bands, ["top", "bottom"]);
  const upright = runsUp(front);
  const edged: readonly Machining[] = bands.map((band) => ({
    kind: "edging",
    where: band.edges.length === 0 ? "all edges" : `${band.edges.join(", ")} edge`,
    note: band.stock.name,
  }));
  const matched =
    whole.matched === undefined
      ? {}
      : {
          matched: {
            group: front.block.openings.map(({ text }) => text).join(" "),
            place: placeOf(front),
            along: front.stacked === upright ? ("grain" as const) : ("across" as const),
          },
        };
  return make({
    name: "slab",
    quantity: 1,
    stock,
    length: upright ? high : wide,
    width: upright ? wide : high,
    ...(whole.grain?.value === "none" ? { grain: "none" as const } : {}),
    machining: [...edged, ...hingeMachining(context, front)],
    source: whole.slab?.key.span ?? front.block.head,
    face: "outside",
    ...matched,
    ...(front.cutToFit === undefined ? {} : { cutToFit: front.cutToFit }),
  });
}

/** Whether the grain runs up: on a door, unless it is said otherwise. */
export function runsUp({ whole, block }: Pick<FrontInput, "whole" | "block">): boolean {
  return (whole.grain?.value ?? (block.kind === "door" ? "long" : "across")) !== "across";
}

function placeOf(front: FrontInput): number {
  return front.block.openings.findIndex((opening) => front.of.endsWith(` ${opening.text}`));
}

function framedParts(
  context: Context,
  front: FrontInput,
  make: Make,
  stock: Stock,
  panel: Stock | undefined,
): readonly Part[] {
  const { whole } = front;
  const frameWidth = size(context, whole.frame?.width) ?? fallback("front.frame");
  const stile = givenSize(context, whole.stiles) ?? frameWidth;
  const rails = (whole.rails?.values ?? []).flatMap((value) => size(context, value.measure) ?? []);
  const top = rails[0] ?? frameWidth;
  const bottom = rails[1] ?? top;
  const grooves = frameGrooves(context, whole, stock, panel);
  const mitred = whole.mitred !== undefined || whole.joint?.kind === "mitred";
  const tongue = tongueOf(context, whole, grooves);
  const between = betweenTwo(front.wide, stile);
  const railLong = mitred ? front.wide : tongue === undefined ? between : railLength(front.wide, stile, tongue);
  const source = whole.frame?.key.span ?? front.block.head;
  const ends: readonly Machining[] = mitred ? [{ kind: "mitre", where: "both ends" }] : endsOf(whole, tongue);
  const cups = hingeMachining(context, front);
  const grid = gridOf(context, front, { stile, top, bottom, between });
  return [
    ...make({
      name: "stile",
      quantity: 2,
      stock,
      length: front.high,
      width: stile,
      source,
      face: "outside",
      machining: [...grooves.machining, ...(mitred ? ends : []), ...cups],
      ...(front.cutToFit === undefined ? {} : { cutToFit: front.cutToFit }),
    }),
    ...(grid.sameRails
      ? make({
          name: "rail",
          quantity: 2,
          stock,
          length: railLong,
          width: top,
          source,
          face: "outside",
          machining: [...grooves.machining, ...ends],
        })
      : [
          ...make({
            name: "top rail",
            quantity: 1,
            stock,
            length: railLong,
            width: top,
            source,
            face: "outside",
            machining: [...grooves.machining, ...ends],
          }),
          ...make({
            name: "bottom rail",
            quantity: 1,
            stock,
            length: railLong,
            width: bottom,
            source,
            face: "outside",
            machining: [...grooves.machining, ...ends],
          }),
        ]),
    ...make({
      name: "mid rail",
      quantity: grid.midRails,
      stock,
      length: tongue === undefined ? between : railLength(front.wide, stile, tongue),
      width: frameWidth,
      source: grid.railSource ?? source,
      face: "outside",
      machining: [...twice(grooves.machining), ...endsOf(whole, tongue)],
    }),
    ...make({
      name: "mid stile",
      quantity: grid.midStiles * (grid.midRails + 1),
      stock,
      length: tongue === undefined ? grid.cellHigh : memberInOpening(grid.cellHigh, tongue),
      width: frameWidth,
      source: grid.stileSource ?? source,
      face: "outside",
      machining: [...twice(grooves.machining), ...endsOf(whole, tongue)],
    }),
    ...panelParts(context, front, make, panel, grooves, grid),
  ];
}

/** A member between two panels is grooved on both edges. */
function twice(grooves: readonly Machining[]): readonly Machining[] {
  return grooves.map((groove) => ({ ...groove, where: groove.where.replace("inner edge", "both edges"), count: 2 }));
}

/** How far a rail goes into its stile; nothing for dowels and screws. */
function tongueOf(context: Context, whole: FrontBlock, grooves: Grooves): Sourced<Length> | undefined {
  switch (whole.joint?.kind) {
    case "tenon":
      return size(context, whole.joint.depth) ?? fallback("joint.tenon");
    case "dowels":
    case "pocket screws":
    case "glue":
    case "screws":
      return undefined;
    default:
      return grooves.deep;
  }
}

function endsOf(whole: FrontBlock, tongue: Sourced<Length> | undefined): readonly Machining[] {
  if (tongue !== undefined)
    return [{ kind: whole.joint?.kind === "tenon" ? "tenon" : "tongue", where: "both ends", deep: tongue, count: 2 }];
  if (whole.joint?.kind === "dowels") return [{ kind: "holes", where: "both ends", count: 4, note: "dowels" }];
  return whole.joint?.kind === "pocket screws" ? [{ kind: "pockets", where: "back, both ends", count: 4 }] : [];
}

/** The clear cells between the members of a door. */
interface Grid {
  readonly midRails: number;
  readonly midStiles: number;
  readonly cellWide: Sourced<Length>;
  readonly cellHigh: Sourced<Length>;
  readonly sameRails: boolean;
  readonly railSource: Word["span"] | undefined;
  readonly stileSource: Word["span"] | undefined;
}

interface Outline {
  readonly stile: Sourced<Length>;
  readonly top: Sourced<Length>;
  readonly bottom: Sourced<Length>;
  readonly between: Sourced<Length>;
}

function gridOf(context: Context, front: FrontInput, outline: Outline): Grid {
  const member = size(context, front.whole.frame?.width) ?? fallback("front.frame");
  const mid = (which: "rails" | "stiles") => front.whole.mid.find((one) => one.which === which);
  const count = (which: "rails" | "stiles"): number => {
    const found = mid(which);
    return found === undefined ? 0 : (pieces(context, found.count, 40) ?? 0);
  };
  const midRails = count("rails");
  const midStiles = count("stiles");
  const high = betweenUnlike(front.high, outline.top, outline.bottom);
  return {
    midRails,
    midStiles,
    cellWide: cells(outline.between, member, midStiles),
    cellHigh: cells(high, member, midRails),
    sameRails: outline.top === outline.bottom,
    railSource: mid("rails")?.key.span,
    stileSource: mid("stiles")?.key.span,
  };
}

/** Clear size of one cell when `members` of one width divide a clear size evenly. */
function cells(clear: Sourced<Length>, member: Sourced<Length>, members: number): Sourced<Length> {
  if (members === 0) return clear;
  return derived(
    {
      gives: "clear between members",
      formula: `({clear size} − ${members} × {member width}) ÷ ${members + 1}`,
      tag: "geometry",
    },
    { "clear size": clear, "member width": member },
    (of) => over(subtract(of["clear size"], times(of["member width"], members)), members + 1),
  );
}

function panelParts(
  context: Context,
  front: FrontInput,
  make: Make,
  panel: Stock | undefined,
  grooves: Grooves,
  grid: Grid,
): readonly Part[] {
  const use = front.whole.panel;
  if (panel === undefined || use === undefined) return [];
  const written = givenDistance(context, front.whole.float);
  const [along, across] = runsUp(front) ? [grid.cellHigh, grid.cellWide] : [grid.cellWide, grid.cellHigh];
  const float = written === undefined ? panelFloat(context, panel, across) : { across: written, along: written };
  return make({
    name: "panel",
    quantity: (grid.midRails + 1) * (grid.midStiles + 1),
    stock: panel,
    length: panelSize(along, grooves.deep, float.along),
    width: panelSize(across, grooves.deep, float.across),
    source: use.key.span,
    face: "outside",
    machining: panelEdge(grooves),
  });
}
