import type { BoxBlock, CornerKind } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Span, Word } from "../core/span.ts";
import type { Context } from "./context.ts";
import { givenSize, pieces, resolve, size } from "./context.ts";
import { fallback } from "./defaults.ts";
import type { Opening, SlideModel, Stock } from "./model.ts";
import type { PartPlan } from "./parts.ts";
import { partsFrom } from "./parts.ts";
import { betweenTwo } from "./rules/between-two.ts";
import { betweenUnlike } from "./rules/between-unlike.ts";
import { bottomFromBehind } from "./rules/bottom-from-behind.ts";
import { bottomInGrooves } from "./rules/bottom-in-grooves.ts";
import { bottomInRabbets } from "./rules/bottom-in-rabbets.ts";
import { housedBetween } from "./rules/housed-between.ts";
import { less } from "./rules/less.ts";
import { sideHeight } from "./rules/side-height.ts";

interface BoxInput {
  readonly block: BoxBlock;
  readonly whole: BoxBlock;
  readonly of: string;
  readonly opening: Opening;
  readonly slides: SlideModel;
  readonly wide: Sourced<Length>;
  readonly high: Sourced<Length>;
  readonly deep: Sourced<Length>;
  readonly sides: Stock;
  readonly bottom: Stock | undefined;
  readonly stocks: ReadonlyMap<string, Stock>;
}

/** How a box is put together: its stocks, its joints, and the sizes inside. */
export interface BoxShape extends BoxInput {
  readonly front: Stock;
  readonly back: Stock;
  readonly corner: CornerKind;
  readonly depth: Sourced<Length> | undefined;
  readonly endsOverSides: boolean;
  readonly held: HeldBottom;
  readonly wall: Sourced<Length>;
  readonly inside: { readonly wide: Sourced<Length>; readonly deep: Sourced<Length>; readonly high: Sourced<Length> };
}

type HeldBottom =
  | { readonly kind: "none" }
  | { readonly kind: "under" }
  | {
      readonly kind: "groove";
      readonly depth: Sourced<Length>;
      readonly up: Sourced<Length>;
      readonly play: Sourced<Length>;
      readonly fromBehind: boolean;
    }
  | { readonly kind: "rabbet"; readonly depth: Sourced<Length> };

export function boxShape(context: Context, box: BoxInput): BoxShape {
  const stock = (word: Word | undefined): Stock =>
    (word === undefined ? undefined : resolve(context, "stock", word, box.stocks)) ?? box.sides;
  const front = stock(box.whole.front?.stocks[0]);
  const back = stock(box.whole.back?.stocks[0]);
  const corner = box.whole.corners?.kind ?? "screws";
  const held = heldBottom(context, box);
  const wall =
    held.kind === "under" && box.bottom !== undefined ? sideHeight(box.high, box.bottom.thickness) : box.high;
  const endsOverSides = box.whole.corners?.endsOverSides ?? false;
  return {
    ...box,
    front,
    back,
    corner,
    depth: cornerDepth(context, box, corner),
    endsOverSides,
    held,
    wall,
    inside: {
      wide: betweenTwo(box.wide, box.sides.thickness),
      deep: betweenUnlike(box.deep, front.thickness, back.thickness),
      high: insideHeight(box, held, wall),
    },
  };
}

function heldBottom(context: Context, box: BoxInput): HeldBottom {
  if (box.bottom === undefined) return { kind: "none" };
  const fitting = box.whole.bottom?.fittings.find(
    (one) => one.word === "under" || one.word === "groove" || one.word === "rabbet",
  );
  if (fitting?.word === "groove") {
    return {
      kind: "groove",
      depth: size(context, fitting.depth) ?? fallback("bottom.groove"),
      up: size(context, fitting.up) ?? fallback("bottom.up"),
      play: givenSize(context, box.whole.play) ?? fallback("bottom.play"),
      fromBehind: box.whole.bottom?.fittings.some((one) => one.word === "from behind") ?? false,
    };
  }
  if (fitting?.word === "rabbet")
    return { kind: "rabbet", depth: size(context, fitting.depth) ?? fallback("bottom.rabbet") };
  return { kind: "under" };
}

function insideHeight(box: BoxInput, held: HeldBottom, wall: Sourced<Length>): Sourced<Length> {
  if (box.bottom === undefined || held.kind === "none" || held.kind === "under") return wall;
  const above = less(wall, box.bottom.thickness);
  return held.kind === "groove" ? less(above, held.up) : above;
}

function cornerDepth(context: Context, box: BoxInput, corner: CornerKind): Sourced<Length> | undefined {
  const written = size(context, box.whole.corners?.depth);
  switch (corner) {
    case "rabbet":
      return written ?? fallback("corner.rabbet");
    case "dado":
      return written ?? fallback("corner.dado");
    case "half-blind dovetails":
      return givenSize(context, box.whole.lap) ?? written ?? fallback("corner.lap");
    default:
      return written;
  }
}

export function boxParts(context: Context, box: BoxShape): readonly Part[] {
  const make = (plan: Omit<PartPlan, "of">): readonly Part[] => partsFrom(context, { of: box.of, ...plan });
  const source = box.whole.sides?.key.span ?? box.block.head;
  const ends = endLengths(box);
  return [
    ...make({
      name: "side",
      quantity: 2,
      stock: box.sides,
      length: sideLength(box),
      width: box.wall,
      source,
      face: "outside",
      machining: sideMachining(box),
    }),
    ...make({
      name: "front",
      quantity: 1,
      stock: box.front,
      length: ends.front,
      width: box.wall,
      source: box.whole.front?.key.span ?? source,
      face: "outside",
      machining: endMachining(box, "front"),
    }),
    ...make({
      name: "back",
      quantity: 1,
      stock: box.back,
      length: ends.back,
      width: backWidth(box),
      source: box.whole.back?.key.span ?? source,
      face: "outside",
      machining: endMachining(box, "back"),
    }),
    ...bottomParts(box, make),
    ...dividerParts(context, box, make),
  ];
}

type Make = (plan: Omit<PartPlan, "of">) => readonly Part[];

function sideLength(box: BoxShape): Sourced<Length> {
  if (box.endsOverSides) return box.inside.deep;
  if (box.corner === "half-blind dovetails" && box.depth !== undefined) return less(box.deep, box.depth);
  return box.deep;
}

/** Full width where the ends run over the sides or are dovetailed to them; between the sides, and into them, otherwise. */
function endLengths(box: BoxShape): { readonly front: Sourced<Length>; readonly back: Sourced<Length> } {
  const t = box.sides.thickness;
  if (box.endsOverSides) return { front: box.wide, back: box.wide };
  switch (box.corner) {
    case "dovetails":
    case "half-blind dovetails":
    case "fingers":
    case "mitred":
      return { front: box.wide, back: box.wide };
    case "rabbet": {
      const housed = housedBetween(box.wide, t, box.depth ?? fallback("corner.rabbet"));
      return { front: housed, back: housed };
    }
    case "dado":
      return { front: betweenTwo(box.wide, t), back: housedBetween(box.wide, t, box.depth ?? fallback("corner.dado")) };
    default:
      return { front: betweenTwo(box.wide, t), back: betweenTwo(box.wide, t) };
  }
}

/** A bottom that slides in from behind passes under the back. */
function backWidth(box: BoxShape): Sourced<Length> {
  if (box.held.kind !== "groove" || !box.held.fromBehind || box.bottom === undefined) return box.wall;
  return less(less(box.wall, box.held.up), box.bottom.thickness);
}

function grooveFor(box: BoxShape): readonly Machining[] {
  if (box.bottom === undefined) return [];
  if (box.held.kind === "groove") {
    return [
      {
        kind: "groove",
        where: "inside face, bottom edge",
        wide: box.bottom.thickness,
        deep: box.held.depth,
        from: box.held.up,
        note: "bottom",
      },
    ];
  }
  if (box.held.kind === "rabbet") {
    return [
      {
        kind: "rabbet",
        where: "inside face, bottom edge",
        wide: box.bottom.thickness,
        deep: box.held.depth,
        note: "bottom",
      },
    ];
  }
  return [];
}

function sideMachining(box: BoxShape): readonly Machining[] {
  const made = [...grooveFor(box)];
  const deep = box.depth;
  if (box.corner === "rabbet" && deep !== undefined)
    made.push({ kind: "rabbet", where: "inside face, both ends", wide: box.front.thickness, deep, count: 2 });
  if (box.corner === "dado" && deep !== undefined)
    made.push({ kind: "dado", where: "inside face, back end", wide: box.back.thickness, deep });
  if (box.corner === "dovetails" || box.corner === "half-blind dovetails")
    made.push({ kind: "tails", where: "both ends" });
  if (box.corner === "fingers") made.push({ kind: "fingers", where: "both ends" });
  if (box.corner === "mitred") made.push({ kind: "mitre", where: "both ends" });
  return made;
}

function endMachining(box: BoxShape, which: "front" | "back"): readonly Machining[] {
  const hasGroove = which === "front" || box.held.kind !== "groove" || !box.held.fromBehind;
  const made = hasGroove ? [...grooveFor(box)] : [];
  if (box.corner === "pocket screws") made.push({ kind: "pockets", where: "outside face, both ends", count: 4 });
  if (box.corner === "dovetails" || box.corner === "half-blind dovetails")
    made.push({ kind: "tails", where: "both ends", note: "pins" });
  if (box.corner === "fingers") made.push({ kind: "fingers", where: "both ends" });
  if (box.corner === "mitred") made.push({ kind: "mitre", where: "both ends" });
  if (box.corner === "half-blind dovetails" && which === "front" && box.depth !== undefined)
    made.push({ kind: "lap", where: "front", deep: box.depth });
  return made;
}

function bottomParts(box: BoxShape, make: Make): readonly Part[] {
  if (box.bottom === undefined) return [];
  const sizes = bottomSize(box);
  const source: Span = box.whole.bottom?.key.span ?? box.block.head;
  const base = { name: "bottom", quantity: 1, stock: box.bottom, source, face: "inside" } as const;
  return make({ ...base, length: sizes.deep, width: sizes.wide, grain: box.bottom.kind === "board" ? "long" : "none" });
}

function bottomSize(box: BoxShape): { readonly wide: Sourced<Length>; readonly deep: Sourced<Length> } {
  const { held, inside } = box;
  if (held.kind === "groove") {
    const wide = bottomInGrooves(inside.wide, held.depth, held.play);
    const deep = held.fromBehind
      ? bottomFromBehind(inside.deep, held.depth, box.back.thickness, held.play)
      : bottomInGrooves(inside.deep, held.depth, held.play);
    return { wide, deep };
  }
  if (held.kind === "rabbet")
    return { wide: bottomInRabbets(inside.wide, held.depth), deep: bottomInRabbets(inside.deep, held.depth) };
  return { wide: box.wide, deep: box.deep };
}

function dividerParts(context: Context, box: BoxShape, make: Make): readonly Part[] {
  const { dividers } = box.whole;
  if (dividers === undefined) return [];
  const count = pieces(context, dividers.count, 40) ?? 0;
  const stock = dividers.from === undefined ? box.sides : resolve(context, "stock", dividers.from, box.stocks);
  const length = dividers.direction === "along" ? box.inside.deep : box.inside.wide;
  return make({ name: "divider", quantity: count, stock, length, width: box.inside.high, source: dividers.key.span });
}
