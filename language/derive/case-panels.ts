import type { Length } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import { add, equal, less as isLess, ratio } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Span } from "../core/span.ts";
import type { CaseFrame } from "./case.ts";
import { insideHeight } from "./case.ts";
import type { CaseDepths } from "./case-depths.ts";
import { resolve, size } from "./context.ts";
import { fallback } from "./defaults.ts";
import { edgingOn, lessEdging } from "./edging.ts";
import { endJoint } from "./end-joint.ts";
import type { Member, Stock } from "./model.ts";
import type { PartPlan } from "./parts.ts";
import { partsFrom } from "./parts.ts";
import { backInRabbets } from "./rules/back-in-rabbets.ts";
import { betweenTwo } from "./rules/between-two.ts";
import { bottomInGrooves } from "./rules/bottom-in-grooves.ts";
import { housedBetween } from "./rules/housed-between.ts";
import { less } from "./rules/less.ts";
import { plus } from "./rules/plus.ts";

/** A third strip is wanted where a case is higher than this (AWS 2009, 4.4.18). */
const thirdNailerAbove = ratio(60);

/** Sides, bottom, top or stretchers, partitions, back, kick and nailers of a case. */
export function casePanels(frame: CaseFrame, depths: CaseDepths, members: readonly Member[]): readonly Part[] {
  const { panels } = frame;
  if (panels === undefined) return [];
  const dado =
    frame.block.joint?.kind === "dado"
      ? (size(frame.context, frame.block.joint.depth) ?? fallback("case.dado"))
      : undefined;
  const across =
    dado === undefined ? betweenTwo(frame.wide, panels.thickness) : housedBetween(frame.wide, panels.thickness, dado);
  const edging = edgingOn(frame.context, frame.block.edging, frame.stocks);
  const front = (width: Sourced<Length>): Sourced<Length> => lessEdging(width, edging, ["front"]);
  const banded = edging.map((band): Machining => ({ kind: "edging", where: "front edge", note: band.stock.name }));
  const make = (
    name: string,
    quantity: number,
    length: Sourced<Length>,
    width: Sourced<Length>,
    source: Span,
    more: Partial<PartPlan> = {},
  ): readonly Part[] =>
    partsFrom(frame.context, { name, of: frame.of, quantity, stock: panels, length, width, source, ...more });
  const source = frame.block.panels?.key.span ?? frame.block.name.span;
  const inner = front(depths.inner);
  const bored = endJoint(frame.block.joint?.kind, inner);
  const housed = partitionDados(frame, members, dado);
  return [
    ...make("side", 2, frame.high, front(depths.sides), source, {
      machining: [...sideMachining(frame, depths, dado), ...banded],
      face: "outside",
    }),
    ...make("bottom", 1, across, inner, frame.block.bottom?.key.span ?? source, {
      stock: frame.bottom ?? panels,
      machining: [...housed, ...bored, ...banded],
      face: "inside",
    }),
    ...topParts(frame, make, across, inner, [...housed, ...bored, ...banded], source),
    ...partitionParts(frame, depths, make, inner, members, [...bored, ...banded], dado),
    ...backParts(frame, depths, panels),
    ...kickParts(frame, make),
    ...nailerParts(frame, make, panels),
  ];
}

type Make = (
  name: string,
  quantity: number,
  length: Sourced<Length>,
  width: Sourced<Length>,
  source: Span,
  more?: Partial<PartPlan>,
) => readonly Part[];

function stockFor(
  frame: CaseFrame,
  word: { readonly text: string; readonly span: Span } | undefined,
): Stock | undefined {
  return word === undefined ? undefined : resolve(frame.context, "stock", word, frame.stocks);
}

function sideMachining(frame: CaseFrame, depths: CaseDepths, dado: Sourced<Length> | undefined): readonly Machining[] {
  const made: Machining[] = [];
  if (frame.kick !== undefined)
    made.push({
      kind: "notch",
      where: "front bottom corner",
      wide: frame.kick.deep,
      deep: frame.kick.high,
      note: "kick",
    });
  if (frame.back !== undefined && depths.back.depth !== undefined) {
    const wide = frame.back.thickness;
    made.push({
      kind: depths.back.kind === "rabbet" ? "rabbet" : "groove",
      where: "inside face, back edge",
      wide,
      deep: depths.back.depth,
      ...(depths.back.from === undefined ? {} : { from: depths.back.from }),
    });
  }
  if (dado !== undefined && frame.panels !== undefined) {
    made.push({
      kind: "dado",
      where: "inside face",
      wide: frame.panels.thickness,
      deep: dado,
      ...(frame.block.top?.choice === "none" ? { note: "bottom" } : { count: 2, note: "bottom and top" }),
    });
  }
  return made;
}

function topParts(
  frame: CaseFrame,
  make: Make,
  across: Sourced<Length>,
  deep: Sourced<Length>,
  machining: readonly Machining[],
  source: Span,
): readonly Part[] {
  const { top } = frame.block;
  if (top?.choice === "none") return [];
  if (top?.choice === "stretchers") {
    const wide = size(frame.context, top.wide) ?? fallback("case.stretchers");
    return make("stretcher", 2, across, wide, top.key.span, { machining: endJoint(frame.block.joint?.kind, wide) });
  }
  return make("top", 1, across, deep, top?.key.span ?? source, { machining, face: "inside", stock: frame.top });
}

function partitionParts(
  frame: CaseFrame,
  depths: CaseDepths,
  make: Make,
  deep: Sourced<Length>,
  members: readonly Member[],
  machining: readonly Machining[],
  dado: Sourced<Length> | undefined,
): readonly Part[] {
  const { panels, partitions } = frame;
  if (panels === undefined) return [];
  const full = partitionHeight(frame, panels, dado);
  const notches = nailerNotches(frame, depths, panels);
  return uprightsOf(frame, members).flatMap((member) => {
    const whole = runsWhole(frame, members, member);
    return make("partition", 1, whole ? full : member.length, deep, member.span, {
      stock: partitions ?? panels,
      machining: [...(whole ? notches : []), ...machining],
      ...(whole ? {} : { cutToFit: "it stands between other members; take its height from the case" }),
    });
  });
}

/** From bottom to top, or to the top of the case where it is open, and into both where the case is dadoed. */
function partitionHeight(frame: CaseFrame, panels: Stock, dado: Sourced<Length> | undefined): Sourced<Length> {
  const above = frame.kick === undefined ? frame.high : less(frame.high, frame.kick.high);
  const bottom = (frame.bottom ?? panels).thickness;
  const top = (frame.top ?? panels).thickness;
  if (frame.block.top?.choice === "none") {
    const clear = less(above, bottom);
    return dado === undefined ? clear : plus(clear, dado);
  }
  const clear = insideHeight(above, bottom, frame.block.top?.choice === "stretchers" ? panels.thickness : top);
  if (dado === undefined) return clear;
  const housed = plus(clear, dado);
  return frame.block.top?.choice === "stretchers" ? housed : plus(housed, dado);
}

/** The uprights of the front face that have a partition behind them. */
function uprightsOf(frame: CaseFrame, members: readonly Member[]): readonly Member[] {
  return members.filter(
    (member) =>
      member.face === "front" &&
      isInner(member, frame) &&
      (member.kind === "partition" || frame.partitions !== undefined),
  );
}

/** Whether an upright runs the whole height of its face, so that its partition can run from bottom to top. */
function runsWhole(frame: CaseFrame, members: readonly Member[], upright: Member): boolean {
  return members.every(
    (member) =>
      member === upright ||
      member.kind !== "rail" ||
      member.face !== "front" ||
      isOuter(member, frame) ||
      !meets(upright, member),
  );
}

function isOuter(member: Member, frame: CaseFrame): boolean {
  return member.span === frame.block.frame?.span;
}

/** Whether an upright ends at a rail. */
function meets({ rect }: Member, rail: Member): boolean {
  const beside = isLess(rect.x, add(rail.rect.x, rail.rect.wide)) && isLess(rail.rect.x, add(rect.x, rect.wide));
  return beside && (equal(add(rect.y, rect.high), rail.rect.y) || equal(rect.y, add(rail.rect.y, rail.rect.high)));
}

function partitionDados(
  frame: CaseFrame,
  members: readonly Member[],
  dado: Sourced<Length> | undefined,
): readonly Machining[] {
  const whole = uprightsOf(frame, members).filter((member) => runsWhole(frame, members, member));
  const stock = frame.partitions ?? frame.panels;
  if (dado === undefined || stock === undefined || whole.length === 0) return [];
  const count = whole.length;
  return [{ kind: "dado", where: "inside face", wide: stock.thickness, deep: dado, count, note: "partitions" }];
}

/** Nailers before the back run past the partitions, which are notched for them. */
function nailerNotches(frame: CaseFrame, depths: CaseDepths, panels: Stock): readonly Machining[] {
  const { nailers } = frame.block;
  const wide = size(frame.context, nailers?.wide);
  if (nailers === undefined || wide === undefined || depths.back.kind === "groove") return [];
  const deep = (stockFor(frame, nailers.from) ?? panels).thickness;
  return [{ kind: "notch", where: "back edge", wide, deep, count: nailerCount(frame), note: "nailers" }];
}

/** Outer stiles have sides behind them already. */
function isInner(member: Member, frame: CaseFrame): boolean {
  return member.kind !== "rail" && !isOuter(member, frame);
}

function backParts(frame: CaseFrame, depths: CaseDepths, panels: Stock): readonly Part[] {
  const { back } = frame;
  if (back === undefined) return [];
  const { kind, depth } = depths.back;
  const above = frame.kick === undefined ? frame.high : less(frame.high, frame.kick.high);
  const width =
    depth === undefined
      ? frame.wide
      : kind === "rabbet"
        ? backInRabbets(frame.wide, panels.thickness, depth)
        : bottomInGrooves(betweenTwo(frame.wide, panels.thickness), depth, fallback("case.grooveTrim"));
  return partsFrom(frame.context, {
    name: "back",
    of: frame.of,
    quantity: 1,
    stock: back,
    length: kind === "groove" ? above : frame.high,
    width,
    source: frame.block.back?.key.span ?? frame.block.name.span,
    face: "inside",
  });
}

function kickParts(frame: CaseFrame, make: Make): readonly Part[] {
  if (frame.kick === undefined || frame.block.kick === undefined) return [];
  return make("kick", 1, frame.wide, frame.kick.high, frame.block.kick.key.span, { face: "front" });
}

function nailerParts(frame: CaseFrame, make: Make, panels: Stock): readonly Part[] {
  const { nailers } = frame.block;
  const wide = size(frame.context, nailers?.wide);
  if (nailers === undefined || wide === undefined) return [];
  const stock = stockFor(frame, nailers.from) ?? panels;
  return make("nailer", nailerCount(frame), betweenTwo(frame.wide, panels.thickness), wide, nailers.key.span, {
    stock,
  });
}

function nailerCount(frame: CaseFrame): number {
  return isLess(thirdNailerAbove, frame.high.value) ? 3 : 2;
}
