import type { Length } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import { less as isLess, ratio } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Span } from "../core/span.ts";
import type { CaseFrame } from "./case.ts";
import { runsFull } from "./case.ts";
import type { CaseDepths } from "./case-depths.ts";
import { resolve, size } from "./context.ts";
import { fallback } from "./defaults.ts";
import { edgingOn, lessEdging } from "./edging.ts";
import type { Member, Stock } from "./model.ts";
import type { PartPlan } from "./parts.ts";
import { partsFrom } from "./parts.ts";
import { backInRabbets } from "./rules/back-in-rabbets.ts";
import { betweenTwo } from "./rules/between-two.ts";
import { bottomInGrooves } from "./rules/bottom-in-grooves.ts";
import { housedBetween } from "./rules/housed-between.ts";
import { less } from "./rules/less.ts";

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
  const banded: readonly Machining[] =
    edging.length === 0 ? [] : edging.map((band) => ({ kind: "edging", where: "front edge", note: band.stock.name }));
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
  const bottomStock = stockFor(frame, frame.block.bottom?.stocks[0]) ?? panels;
  return [
    ...make("side", 2, frame.high, front(depths.sides), source, {
      machining: [...sideMachining(frame, depths, dado), ...banded],
      face: "outside",
    }),
    ...make("bottom", 1, across, front(depths.inner), frame.block.bottom?.key.span ?? source, {
      stock: bottomStock,
      machining: banded,
      face: "inside",
    }),
    ...topParts(frame, make, across, front(depths.inner), banded, source),
    ...partitionParts(frame, make, front(depths.inner), members, banded, dado),
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
  banded: readonly Machining[],
  source: Span,
): readonly Part[] {
  const { top } = frame.block;
  if (top?.choice === "none") return [];
  if (top?.choice === "stretchers") {
    return make("stretcher", 2, across, size(frame.context, top.wide) ?? fallback("case.stretchers"), top.key.span);
  }
  const stock = stockFor(frame, top?.stock);
  return make("top", 1, across, deep, top?.key.span ?? source, {
    machining: banded,
    face: "inside",
    ...(stock === undefined ? {} : { stock }),
  });
}

function partitionParts(
  frame: CaseFrame,
  make: Make,
  deep: Sourced<Length>,
  members: readonly Member[],
  banded: readonly Machining[],
  dado: Sourced<Length> | undefined,
): readonly Part[] {
  const { panels, partitions } = frame;
  if (panels === undefined) return [];
  const above = frame.kick === undefined ? frame.high : less(frame.high, frame.kick.high);
  const open = frame.block.top?.choice === "none";
  const full = open
    ? less(above, panels.thickness)
    : dado === undefined
      ? betweenTwo(above, panels.thickness)
      : housedBetween(above, panels.thickness, dado);
  const uprights = members.filter((member) => member.face === "front" && isInner(member, frame));
  const longest = uprights.reduce(
    (most, member) => (isLess(most, member.length.value) ? member.length.value : most),
    ratio(0),
  );
  return uprights.flatMap((member) => {
    if (member.kind === "stile" && partitions === undefined) return [];
    const whole = runsFull(member, longest);
    return make("partition", 1, whole ? full : member.length, deep, member.span, {
      stock: partitions ?? panels,
      machining: banded,
      ...(whole ? {} : { cutToFit: "it stands between other members; take its height from the case" }),
    });
  });
}

/** Outer stiles have sides behind them already. */
function isInner(member: Member, frame: CaseFrame): boolean {
  if (member.kind === "rail") return false;
  return member.kind === "partition" || member.span !== frame.block.frame?.span;
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
  const count = isLess(thirdNailerAbove, frame.high.value) ? 3 : 2;
  return make("nailer", count, betweenTwo(frame.wide, panels.thickness), wide, nailers.key.span, { stock });
}
