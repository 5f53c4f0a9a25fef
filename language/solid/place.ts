import type { Length } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { add, largest, less, smallest, subtract, zero } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import type { CaseModel, FrontModel, Model, Opening } from "../derive/model.ts";
import { mirrored, type Range, shared, span } from "./box.ts";
import { groupedBy } from "./grouped.ts";
import { type Home, type Pool, poolOf } from "./lay.ts";
import { type Mate, type MateDraft, measured } from "./mate.ts";
import { placeBox, type Spot } from "./place-box.ts";
import { placeCase } from "./place-case.ts";
import { placeFaceFrames } from "./place-face-frame.ts";
import { type Area, placeFront } from "./place-front.ts";
import { placeMount, type WallOf } from "./place-mounts.ts";
import { placeShelves } from "./place-shelf.ts";
import { type Draft, type Solid, solidOf, type Turn } from "./solid.ts";

/** Every part in its place, the faces that are meant to meet with their gaps, and the parts that have no place of their own. */
export interface Placement {
  readonly solids: readonly Solid[];
  readonly mates: readonly Mate[];
  /** Stated by hand, or of a case whose sides are missing: they are weighed, but not placed. */
  readonly unplaced: readonly Part[];
}

/** Puts the piece together: cases with their face frames, then what goes into and over their openings. */
export function place(context: Context, model: Model): Placement {
  const pools = new Map(model.cases.map((one) => [one.name, poolOf(partsOf(model.parts, `case ${one.name}`))]));
  const drafts: Draft[] = [];
  const mates: MateDraft[] = [];
  const put = (laid: { readonly drafts: readonly Draft[]; readonly mates: readonly MateDraft[] }): void => {
    drafts.push(...laid.drafts);
    mates.push(...laid.mates);
  };
  for (const one of model.cases) {
    const pool = pools.get(one.name)!;
    const shell = placeCase(one, model, pool);
    put(shell);
    put(placeFaceFrames(one, model, pool, shell.drafts));
  }
  const wallOf = wallsAmong(drafts, model);
  const insets = insetFronts(model.fronts);
  const spotOf = (opening: Opening): Spot => ({
    x: opening.rect?.x ?? zero,
    y: opening.rect?.y ?? zero,
    z: insets.get(opening.name.text) ?? zero,
  });
  for (const shelf of model.shelves) {
    const { opening } = shelf;
    put(placeShelves(context, model, shelf, homeOf(model, opening, shelf.of), spotOf(opening), wallOf));
  }
  for (const box of model.boxes) put(placeBox(context, box, homeOf(model, box.opening, box.of), spotOf(box.opening)));
  for (const mount of model.mounts) {
    const opening = mount.openings[0]!;
    // A mount is fixed to its case, and stays where it is when its box comes out.
    const home = homeOf(model, opening, frameOf(opening));
    put(placeMount(mount, home, spotOf(opening), frameThickness(model, opening), wallOf));
  }
  for (const front of model.fronts) {
    const first = front.openings[0];
    if (first !== undefined) put(placeFront(context, model, front, homeOf(model, first, front.of), areaOf(front)));
  }
  const solids = new Map(drafts.map((draft) => [draft, solidOf(draft)]));
  return {
    solids: [...solids.values()],
    mates: mates.flatMap((mate) => measured(mate, solids)),
    unplaced: [...model.parts.filter((part) => part.of.startsWith("part ")), ...leftOver(pools)],
  };
}

const partsOf = groupedBy(({ of }: Part) => [of]);

function leftOver(pools: ReadonlyMap<string, Pool>): readonly Part[] {
  return [...pools.values()].flatMap((pool) => pool.rest().map((part) => ({ ...part, quantity: 1 })));
}

/** The frame of axes that an opening lies in: that of its case, or its own. */
export function frameOf(opening: Opening): string {
  return opening.case === undefined ? `opening ${opening.name.text}` : `case ${opening.case}`;
}

function caseOf(model: Model, opening: Opening): CaseModel | undefined {
  return model.cases.find((one) => one.name === opening.case);
}

function homeOf(model: Model, opening: Opening, assembly: string): Home {
  return { frame: frameOf(opening), assembly, turn: turnOf(model, opening) };
}

export function turnOf(model: Model, opening: Opening): Turn | undefined {
  const home = opening.face === "rear" ? caseOf(model, opening) : undefined;
  return home === undefined ? undefined : { wide: home.wide.value, deep: home.deep.value };
}

function frameThickness(model: Model, opening: Opening): Length {
  const block = caseOf(model, opening)?.block;
  const frame = opening.face === "front" ? block?.frame : block?.rear?.frame;
  return (frame === undefined ? undefined : model.stocks.get(frame.stock.text))?.thickness.value ?? zero;
}

function insetFronts(fronts: readonly FrontModel[]): ReadonlyMap<string, Length> {
  return new Map(
    fronts.flatMap(({ whole, openings, thickness }) =>
      whole.inset === undefined || thickness === undefined
        ? []
        : openings.map((opening) => [opening.name.text, thickness.value] as const),
    ),
  );
}

/** From the first edge of the openings that a front covers to the last. */
function areaOf(front: FrontModel): Area {
  const rects = front.openings.map(({ rect, wide, high }) => ({
    x: span(rect?.x ?? zero, wide.value),
    y: span(rect?.y ?? zero, high.value),
  }));
  const over = (axis: "x" | "y"): Range => {
    const [first, ...rest] = rects.map((rect) => rect[axis]);
    return {
      from: smallest(first!.from, ...rest.map(({ from }) => from)),
      to: largest(first!.to, ...rest.map(({ to }) => to)),
    };
  };
  return { x: over("x"), y: over("y") };
}

const draftsIn = groupedBy(({ frame }: Draft) => [frame]);

/** Finds the side or partition that stands nearest beside an opening, at its height. */
function wallsAmong(drafts: readonly Draft[], model: Model): WallOf {
  const uprights = drafts.filter(({ part }) => part.name === "side" || part.name === "partition");
  return (opening, side) => {
    const { rect } = opening;
    if (rect === undefined) return undefined;
    const turn = turnOf(model, opening);
    const x = turn === undefined ? span(rect.x, rect.wide) : mirrored(span(rect.x, rect.wide), turn.wide);
    const lower = (side === "left") === (turn === undefined);
    const beside = draftsIn(uprights, frameOf(opening)).filter(
      ({ outline }) =>
        shared(outline.y, span(rect.y, rect.high)) !== undefined &&
        !(lower ? less(add(x.from, slip), outline.x.to) : less(outline.x.from, subtract(x.to, slip))),
    );
    const nearer = (a: Draft, b: Draft): Draft =>
      (lower ? less(a.outline.x.to, b.outline.x.to) : less(b.outline.x.from, a.outline.x.from)) ? b : a;
    return beside.length === 0 ? undefined : beside.reduce(nearer);
  };
}

/** A wall that stands this much within its opening is still the wall beside it: what it takes is a clash, not another wall. */
const slip: Length = { n: 1n, d: 2n };
