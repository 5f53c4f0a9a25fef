import type { CaseBlock, FaceFrame, LayoutItem, MemberItem, StockUse } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import { add, zero } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Word } from "../core/span.ts";
import { type CaseDepths, caseDepths } from "./case-depths.ts";
import { casePanels } from "./case-panels.ts";
import type { Context } from "./context.ts";
import { found, givenSize, resolve, size } from "./context.ts";
import { fallback } from "./defaults.ts";
import type { Face, Layout, PlacedMember, Space } from "./layout.ts";
import { layOut } from "./layout.ts";
import type { Bound, CaseModel, Member, Opening, Stock } from "./model.ts";
import { gathered, partsFrom } from "./parts.ts";
import { besideInner } from "./rules/beside-inner.ts";
import { besideOuter } from "./rules/beside-outer.ts";
import { betweenTwo } from "./rules/between-two.ts";
import { betweenUnlike } from "./rules/between-unlike.ts";
import { less } from "./rules/less.ts";
import { memberInOpening } from "./rules/member-in-opening.ts";
import { railLength } from "./rules/rail-length.ts";
import { wallsOf } from "./walls.ts";

/** A case and the parts that it is made of: frame members first, then panels. */
export interface DerivedCase {
  readonly model: CaseModel;
  readonly parts: readonly Part[];
}

/** What a case's rules all need. */
export interface CaseFrame {
  readonly context: Context;
  readonly block: CaseBlock;
  readonly of: string;
  readonly wide: Sourced<Length>;
  readonly high: Sourced<Length>;
  readonly deep: Sourced<Length>;
  readonly kick: { readonly high: Sourced<Length>; readonly deep: Sourced<Length> } | undefined;
  readonly panels: Stock | undefined;
  /** As the other panels unless it is said otherwise; so is the top. */
  readonly bottom: Stock | undefined;
  readonly top: Stock | undefined;
  readonly back: Stock | undefined;
  readonly partitions: Stock | undefined;
  readonly frame: Stock | undefined;
  readonly rearFrame: Stock | undefined;
  readonly stocks: ReadonlyMap<string, Stock>;
}

export function deriveCase(
  context: Context,
  block: CaseBlock,
  stocks: ReadonlyMap<string, Stock>,
): DerivedCase | undefined {
  const frame = caseFrame(context, block, stocks);
  if (frame === undefined) return undefined;
  const depths = caseDepths(frame);
  const front = faceOf(frame, depths, "front", block.frame, block.layout);
  const rear =
    block.rear === undefined ? undefined : faceOf(frame, depths, "rear", block.rear.frame, block.rear.layout);
  const members = [...front.members, ...(rear?.members ?? [])];
  const model: CaseModel = {
    block,
    name: block.name.text,
    wide: frame.wide,
    high: frame.high,
    deep: frame.deep,
    openings: [...front.openings, ...(rear?.openings ?? [])],
    members,
    panels: frame.panels,
    frame: frame.frame,
    kick: frame.kick?.high,
    walls: wallsOf(frame.context, block),
  };
  return { model, parts: gathered([...front.parts, ...(rear?.parts ?? []), ...casePanels(frame, depths, members)]) };
}

function caseFrame(context: Context, block: CaseBlock, stocks: ReadonlyMap<string, Stock>): CaseFrame | undefined {
  const wide = size(context, block.wide?.values[0]?.measure);
  const high = size(context, block.high?.values[0]?.measure);
  const deep = size(context, block.deep?.values[0]?.measure);
  if (wide === undefined || high === undefined || deep === undefined) {
    const lacking = [
      block.wide === undefined ? "wide" : "",
      block.high === undefined ? "high" : "",
      block.deep === undefined ? "deep" : "",
    ].filter((word) => word !== "");
    if (0 < lacking.length) sizesLacking(context, block, lacking);
    return undefined;
  }
  const stockOf = (word: Word | undefined): Stock | undefined =>
    word === undefined ? undefined : resolve(context, "stock", word, stocks);
  const first = (use: StockUse | undefined): Stock | undefined => stockOf(use?.stocks[0]);
  const kickHigh = size(context, block.kick?.high);
  const kickDeep = size(context, block.kick?.deep);
  for (const corner of block.meets) resolve(context, "case", corner.with, context.names.of.case);
  const panels = first(block.panels);
  return {
    context,
    block,
    of: `case ${block.name.text}`,
    wide,
    high,
    deep,
    kick: kickHigh === undefined || kickDeep === undefined ? undefined : { high: kickHigh, deep: kickDeep },
    panels,
    bottom: first(block.bottom) ?? panels,
    top: stockOf(block.top?.stock) ?? panels,
    back: first(block.back),
    partitions: first(block.partitions),
    frame: stockOf(block.frame?.stock),
    rearFrame: stockOf(block.rear?.frame?.stock),
    stocks,
  };
}

function sizesLacking(context: Context, block: CaseBlock, lacking: readonly string[]): void {
  found(context, {
    code: "case/no-size",
    severity: "error",
    span: block.name.span,
    message: `"${block.name.text}" lacks its size: ${lacking.join(", ")}`,
    reason: "Its panels, frame and openings all follow from its outside size.",
    remedy: `Write ${lacking.map((word) => `${word} LENGTH`).join("  ")}, or describe its openings on their own if it stands already.`,
  });
}

interface DerivedFace {
  readonly openings: readonly Opening[];
  readonly members: readonly Member[];
  readonly parts: readonly Part[];
}

const noFace: DerivedFace = { openings: [], members: [], parts: [] };

function faceOf(
  frame: CaseFrame,
  depths: CaseDepths,
  face: "front" | "rear",
  faceFrame: FaceFrame | undefined,
  layout: readonly LayoutItem[],
): DerivedFace {
  if (faceFrame !== undefined) {
    // What is laid out beside the frame stands in it.
    const all = [...faceFrame.layout, ...layout];
    return framedFace(frame, depths, face, layout.length === 0 ? faceFrame : { ...faceFrame, layout: all });
  }
  if (layout.length === 0) return noFace;
  return framelessFace(frame, depths, face, layout);
}

function faceHeight(frame: CaseFrame): Sourced<Length> {
  return frame.kick === undefined ? frame.high : less(frame.high, frame.kick.high);
}

function framedFace(frame: CaseFrame, depths: CaseDepths, face: "front" | "rear", faceFrame: FaceFrame): DerivedFace {
  const { context } = frame;
  const stock = face === "front" ? frame.frame : frame.rearFrame;
  const stile = givenSize(context, faceFrame.stiles) ?? fallback("faceFrame.stiles");
  const rail = givenSize(context, faceFrame.rails) ?? fallback("faceFrame.rails");
  const tenon = tenonOf(context, faceFrame);
  const high = faceHeight(frame);
  const behindOuter = frame.panels === undefined ? undefined : besideOuter(stile, frame.panels.thickness);
  const outer = (member: Sourced<Length>, beside: Sourced<Length> | undefined): Bound => ({
    member,
    outer: true,
    beside,
    shared: false,
  });
  const space: Space = {
    wide: betweenTwo(frame.wide, stile),
    high: betweenTwo(high, rail),
    at: { x: stile.value, y: add(frame.kick?.high.value ?? zero, rail.value) },
    bounds: {
      left: outer(stile, behindOuter),
      right: outer(stile, behindOuter),
      top: outer(rail, undefined),
      bottom: outer(rail, undefined),
    },
  };
  const layout = layOut(context, framedRules(frame, stile, rail), space, faceFrame.layout);
  const make = (
    name: string,
    quantity: number,
    length: Sourced<Length>,
    width: Sourced<Length>,
    source = faceFrame.span,
  ) =>
    partsFrom(context, {
      name,
      of: frame.of,
      quantity,
      stock,
      length,
      width,
      machining: frameMachining(faceFrame, name, tenon),
      source,
      face: "front",
    });
  const railLong = tenon === undefined ? betweenTwo(frame.wide, stile) : railLength(frame.wide, stile, tenon);
  return {
    openings: openingsOf(frame, depths, face, layout, true),
    members: [
      ...outerMembers(frame, face, stile, rail, high, faceFrame),
      ...layout.members.map((placed) => memberOf(placed, face)),
    ],
    parts: [
      ...make("stile", 2, high, stile, faceFrame.stiles?.key.span ?? faceFrame.stock.span),
      ...make("rail", 2, railLong, rail, faceFrame.rails?.key.span ?? faceFrame.stock.span),
      ...layout.members.flatMap((placed) => {
        if (placed.item.kind === "partition") return [];
        const length = tenon === undefined ? placed.span : memberInOpening(placed.span, tenon);
        return make(`mid ${placed.item.kind}`, 1, length, placed.width, placed.item.word.span);
      }),
    ],
  };
}

function tenonOf(context: Context, faceFrame: FaceFrame): Sourced<Length> | undefined {
  if (faceFrame.joint?.kind !== "tenon") return undefined;
  return size(context, faceFrame.joint.depth) ?? fallback("joint.tenon");
}

function frameMachining(faceFrame: FaceFrame, name: string, tenon: Sourced<Length> | undefined): readonly Machining[] {
  if (name === "stile") return [];
  if (tenon !== undefined) return [{ kind: "tenon", where: "both ends", deep: tenon, count: 2 }];
  if (faceFrame.joint?.kind === "dowels") return [{ kind: "holes", where: "both ends", count: 4, note: "dowels" }];
  return [{ kind: "pockets", where: "back, both ends", count: 4 }];
}

function outerMembers(
  frame: CaseFrame,
  face: "front" | "rear",
  stile: Sourced<Length>,
  rail: Sourced<Length>,
  high: Sourced<Length>,
  faceFrame: FaceFrame,
): readonly Member[] {
  const floor = frame.kick?.high.value ?? zero;
  const clear = betweenTwo(frame.wide, stile);
  const upper = betweenUnlike(frame.high, rail, { value: zero, origin: rail.origin }).value;
  const right = less(frame.wide, stile).value;
  const span = faceFrame.span;
  const upright = (x: Length): Member => ({
    kind: "stile",
    length: high,
    width: stile,
    rect: { x, y: floor, wide: stile.value, high: high.value },
    face,
    span,
  });
  const lying = (y: Length): Member => ({
    kind: "rail",
    length: clear,
    width: rail,
    rect: { x: stile.value, y, wide: clear.value, high: rail.value },
    face,
    span,
  });
  return [upright(zero), upright(right), lying(floor), lying(upper)];
}

function memberOf(placed: PlacedMember, face: "front" | "rear"): Member {
  return {
    kind: placed.item.kind,
    length: placed.span,
    width: placed.width,
    rect: placed.rect,
    face,
    span: placed.item.word.span,
  };
}

function framedRules(frame: CaseFrame, stile: Sourced<Length>, rail: Sourced<Length>): Face {
  return {
    upright: "stile",
    widthOf: (item) => (item.kind === "rail" ? rail : stile),
    boundOf: (item, width) => ({
      member: width,
      outer: false,
      beside: frame.partitions === undefined ? undefined : besideInner(width, frame.partitions.thickness),
      shared: item.kind !== "rail" && frame.partitions === undefined,
      at: item.word.span,
    }),
  };
}

function framelessFace(
  frame: CaseFrame,
  depths: CaseDepths,
  face: "front" | "rear",
  layout: readonly LayoutItem[],
): DerivedFace {
  const { context, panels } = frame;
  if (panels === undefined) {
    if (frame.block.panels === undefined) panelsLacking(context, frame.block);
    return noFace;
  }
  const t = panels.thickness;
  const [bottom, top] = [frame.bottom?.thickness ?? t, frame.top?.thickness ?? t];
  const open = frame.block.top?.choice === "none";
  const high = faceHeight(frame);
  const none: Sourced<Length> = {
    value: zero,
    origin: {
      kind: "derived",
      rule: { gives: "frameless", formula: "no frame stands before the panel", tag: "geometry" },
      inputs: {},
      apply: () => zero,
    },
  };
  const outer = (member: Sourced<Length>): Bound => ({ member, outer: true, beside: none, shared: false });
  const space: Space = {
    wide: betweenTwo(frame.wide, t),
    high: open ? less(high, bottom) : insideHeight(high, bottom, top),
    at: { x: t.value, y: add(frame.kick?.high.value ?? zero, bottom.value) },
    bounds: { left: outer(t), right: outer(t), top: outer(top), bottom: outer(bottom) },
  };
  const between = (item: MemberItem): Sourced<Length> =>
    item.kind === "rail" ? t : (frame.partitions ?? panels).thickness;
  const rules: Face = {
    upright: "partition",
    widthOf: between,
    boundOf: (_item, width) => ({ member: width, outer: false, beside: none, shared: false }),
  };
  const placed = layOut(context, rules, space, layout);
  return {
    openings: openingsOf(frame, depths, face, placed, false),
    members: placed.members.map((member) => memberOf(member, face)),
    parts: placed.members.flatMap((member) =>
      member.item.kind !== "rail"
        ? []
        : partsFrom(context, {
            name: "stretcher",
            of: frame.of,
            quantity: 1,
            stock: panels,
            length: member.span,
            width: fallback("case.stretchers"),
            source: member.item.word.span,
          }),
    ),
  };
}

/** Between bottom and top, said the short way where they are of one thickness. */
export function insideHeight(high: Sourced<Length>, bottom: Sourced<Length>, top: Sourced<Length>): Sourced<Length> {
  return bottom === top ? betweenTwo(high, bottom) : betweenUnlike(high, bottom, top);
}

function panelsLacking(context: Context, block: CaseBlock): void {
  found(context, {
    code: "case/no-panels",
    severity: "error",
    span: block.name.span,
    message: `what the panels of "${block.name.text}" are made of has not been said`,
    reason: "Without a face frame the panels' thickness bounds its openings.",
    remedy: "Write panels STOCK, or give it a frame.",
  });
}

function openingsOf(
  frame: CaseFrame,
  depths: CaseDepths,
  face: "front" | "rear",
  layout: Layout,
  framed: boolean,
): readonly Opening[] {
  return layout.openings.map(({ item, wide, high, at, bounds }) => ({
    name: item.name,
    wide,
    high,
    widest: wide,
    highest: high,
    deep: size(frame.context, item.deep?.values[0]?.measure) ?? depths.clear,
    behindFrame: behindFrame(frame, depths, face),
    bounds,
    framed,
    case: frame.block.name.text,
    face,
    rect: { ...at, wide: wide.value, high: high.value },
    span: item.span,
  }));
}

function behindFrame(frame: CaseFrame, depths: CaseDepths, face: "front" | "rear"): Sourced<Length> | undefined {
  const stock = face === "front" ? frame.frame : frame.rearFrame;
  return stock === undefined ? undefined : less(depths.clear, stock.thickness);
}
