import type { Length } from "../core/length.ts";
import { add, over, subtract, times, zero } from "../core/rational.ts";
import { type Context, givenSize } from "../derive/context.ts";
import { fallback } from "../derive/defaults.ts";
import type { BoxModel } from "../derive/model.ts";
import { extent, type Range, shared, span, spanTo } from "./box.ts";
import { fingers, interlock, mitred } from "./interlock.ts";
import { cut, type Home, lay, machined, type Pool, poolOf, present } from "./lay.ts";
import { heldBy, joined, loose, type MateDraft } from "./mate.ts";
import type { Laid } from "./shell.ts";
import type { Draft } from "./solid.ts";

/** Where an opening's left bottom corner lies, and where its face begins. */
export interface Spot {
  readonly x: Length;
  readonly y: Length;
  /** Where a box begins: the face, or behind an inset front. */
  readonly z: Length;
}

/** A box under construction: its outside and what its walls lie by. */
interface Crate {
  readonly box: BoxModel;
  readonly home: Home;
  readonly pool: Pool;
  readonly x: Range;
  readonly z: Range;
  readonly floor: Length;
  /** Where the walls begin: above a bottom that lies under them. */
  readonly walls: Length;
  readonly held: "none" | "under" | "groove" | "rabbet";
}

/** The parts of a drawer box in their places, in the middle of its opening and above the room that its slides want. */
export function placeBox(context: Context, box: BoxModel, home: Home, spot: Spot): Laid {
  if (box.parts.length === 0) return { drafts: [], mates: [] };
  const crate = crateOf(box, home, spot);
  const left = sideOf(crate, "left");
  const right = sideOf(crate, "right");
  const front = endOf(crate, "front", left);
  const back = endOf(crate, "back", left);
  corners(crate, [left, right], front, back);
  const walls = present([left, right, front, back]);
  for (const wall of walls) grooveFor(crate, wall, left, right, front);
  const bottom = bottomOf(crate, left, front);
  const dividers = dividersOf(crate, bottom, left, front);
  const mates = [
    ...[front, back].flatMap((end) => endMates(crate, end, left, right)),
    ...bottomMates(context, crate, bottom, walls),
    ...walls.slice(0, 1).map((wall) => heldBy(wall, "slide")),
  ];
  return { drafts: [...walls, ...present([bottom]), ...dividers.drafts], mates: [...mates, ...dividers.mates] };
}

function crateOf(box: BoxModel, home: Home, spot: Spot): Crate {
  const { opening } = box;
  const x = span(add(spot.x, over(subtract(opening.wide.value, box.wide.value), 2)), box.wide.value);
  const floor = add(spot.y, box.slides.below.value);
  const held = heldAs(box);
  const lift = held === "under" ? (box.bottom?.thickness.value ?? zero) : zero;
  const z = span(spot.z, box.deep.value);
  return { box, home, pool: poolOf(box.parts), x, z, floor, walls: add(floor, lift), held };
}

function heldAs(box: BoxModel): Crate["held"] {
  if (box.bottom === undefined) return "none";
  const side = box.parts.find((part) => part.name === "side");
  if (machined(side, "groove", "bottom") !== undefined) return "groove";
  return machined(side, "rabbet", "bottom") === undefined ? "under" : "rabbet";
}

function sideOf(crate: Crate, which: "left" | "right"): Draft | undefined {
  const piece = crate.pool.take({ name: "side" });
  if (piece === undefined) return undefined;
  const { part } = piece;
  const t = part.thickness.value;
  const x = which === "left" ? span(crate.x.from, t) : spanTo(crate.x.to, t);
  const { corners } = crate.box.whole;
  const frontThick = crate.box.parts.find((one) => one.name === "front")?.thickness.value ?? t;
  const lap =
    machined(
      crate.box.parts.find((one) => one.name === "front"),
      "lap",
    )?.deep?.value ?? zero;
  const from = add(crate.z.from, corners?.endsOverSides === true ? frontThick : lap);
  return lay(crate.home, piece, x, span(crate.walls, part.width.value), span(from, part.length.value));
}

function endOf(crate: Crate, name: "front" | "back", side: Draft | undefined): Draft | undefined {
  const piece = crate.pool.take({ name });
  if (piece === undefined || side === undefined) return undefined;
  const { part } = piece;
  const t = part.thickness.value;
  const x = span(endFrom(crate, name, side), part.length.value);
  const top = add(crate.walls, side.part.width.value);
  const z = name === "front" ? span(crate.z.from, t) : spanTo(crate.z.to, t);
  return lay(crate.home, piece, x, spanTo(top, part.width.value), z);
}

/** Where an end begins: at the outside, behind the side, or in the side's housing. */
function endFrom(crate: Crate, name: "front" | "back", side: Draft): Length {
  const { corners } = crate.box.whole;
  if (corners?.endsOverSides === true || isWoven(crate)) return crate.x.from;
  return subtract(add(crate.x.from, side.part.thickness.value), housing(side, name)?.deep?.value ?? zero);
}

function isWoven({ box }: Crate): boolean {
  return ["dovetails", "half-blind dovetails", "fingers", "mitred"].includes(box.whole.corners?.kind ?? "");
}

/** The rabbet or dado in a side that takes an end. */
function housing(side: Draft, name: "front" | "back") {
  const { part } = side;
  return (
    machined(part, "rabbet", `${name} end`) ??
    machined(part, "rabbet", "both ends") ??
    machined(part, "dado", `${name} end`)
  );
}

/** Housings cut into the sides, woven corners shared out. */
function corners(
  crate: Crate,
  sides: readonly (Draft | undefined)[],
  front: Draft | undefined,
  back: Draft | undefined,
): void {
  for (const [index, side] of sides.entries()) {
    if (side === undefined) continue;
    for (const [name, end] of [
      ["front", front],
      ["back", back],
    ] as const) {
      if (end === undefined) continue;
      if (isWoven(crate)) {
        weave(crate, side, end);
        continue;
      }
      const { deep, wide } = housing(side, name) ?? {};
      if (deep === undefined || wide === undefined || crate.box.whole.corners?.endsOverSides === true) continue;
      const t = side.part.thickness.value;
      const x = index === 0 ? spanTo(add(crate.x.from, t), deep.value) : span(subtract(crate.x.to, t), deep.value);
      const z = name === "front" ? span(crate.z.from, wide.value) : spanTo(crate.z.to, wide.value);
      cut(side, x, side.outline.y, z);
    }
  }
}

/** Fingers and tails are shared out where the two pieces claim one corner. */
function weave(crate: Crate, side: Draft, end: Draft): void {
  const [p, q] = [side.outline, end.outline];
  const [x, y, z] = [shared(p.x, q.x), shared(p.y, q.y), shared(p.z, q.z)];
  if (x === undefined || y === undefined || z === undefined) return;
  const isMitred = crate.box.whole.corners?.kind === "mitred";
  interlock(side, end, { x, y, z }, isMitred ? mitred : fingers(extent(y), side.part.thickness.value));
}

/** The groove or rabbet for the bottom, along the whole of the piece. */
function grooveFor(
  crate: Crate,
  wall: Draft,
  left: Draft | undefined,
  right: Draft | undefined,
  front: Draft | undefined,
): void {
  const made = machined(wall.part, crate.held === "rabbet" ? "rabbet" : "groove", "bottom");
  if (made?.wide === undefined || made.deep === undefined) return;
  const y = span(add(crate.walls, made.from?.value ?? zero), made.wide.value);
  const deep = made.deep.value;
  const wide = { from: crate.x.from, to: crate.x.to };
  const t = wall.part.thickness.value;
  if (wall === left) cut(wall, spanTo(add(crate.x.from, t), deep), y, crate.z);
  else if (wall === right) cut(wall, span(subtract(crate.x.to, t), deep), y, crate.z);
  else if (wall === front) cut(wall, wide, y, spanTo(add(crate.z.from, t), deep));
  else cut(wall, wide, y, span(subtract(crate.z.to, t), deep));
}

function bottomOf(crate: Crate, side: Draft | undefined, front: Draft | undefined): Draft | undefined {
  const piece = crate.pool.take({ name: "bottom" });
  if (piece === undefined) return undefined;
  const { part } = piece;
  const groove = machined(side?.part, "groove", "bottom");
  const up = groove?.from?.value ?? zero;
  const y = span(crate.held === "groove" ? add(crate.walls, up) : crate.floor, part.thickness.value);
  const x = centred(crate.x, part.width.value);
  // A bottom that slides in from behind ends flush with the back; its play is in the groove of the front.
  const z = slidesIn(crate) ? spanTo(crate.z.to, part.length.value) : centred(inside(crate, front), part.length.value);
  return lay(crate.home, piece, x, y, z);
}

/** From the front's inside to the back's, which need not be of one thickness. */
function inside(crate: Crate, front: Draft | undefined): Range {
  if (crate.held === "under") return crate.z;
  const back = crate.box.parts.find((part) => part.name === "back")?.thickness.value ?? zero;
  return { from: add(crate.z.from, front?.part.thickness.value ?? zero), to: subtract(crate.z.to, back) };
}

function slidesIn({ box }: Crate): boolean {
  const { bottom } = box.whole;
  return bottom?.fittings.some((one) => one.word === "from behind") === true && heldAs(box) === "groove";
}

function centred(range: Range, long: Length): Range {
  return span(add(range.from, over(subtract(extent(range), long), 2)), long);
}

function dividersOf(crate: Crate, bottom: Draft | undefined, side: Draft | undefined, front: Draft | undefined): Laid {
  const { dividers } = crate.box.whole;
  const count = crate.box.parts.find((part) => part.name === "divider")?.quantity ?? 0;
  const t = side?.part.thickness.value ?? zero;
  const x: Range = { from: add(crate.x.from, t), to: subtract(crate.x.to, t) };
  const z = inside({ ...crate, held: "groove" }, front);
  const floor = bottom?.outline.y.to ?? crate.walls;
  const along = dividers?.direction === "along";
  const drafts = Array.from({ length: count }, (_, index) => {
    const piece = crate.pool.take({ name: "divider" });
    if (piece === undefined) return undefined;
    const { part } = piece;
    const across = evenly(along ? x : z, part.thickness.value, count, index);
    const run = span((along ? z : x).from, part.length.value);
    return lay(crate.home, piece, along ? across : run, span(floor, part.width.value), along ? run : across);
  });
  return { drafts: present(drafts), mates: present(drafts).flatMap((one) => joined(one, bottom, "y", -1)) };
}

/** One of several pieces that divide a stretch evenly. */
export function evenly(range: Range, thick: Length, count: number, index: number): Range {
  const clear = over(subtract(extent(range), times(thick, count)), count + 1);
  return span(add(range.from, add(times(clear, index + 1), times(thick, index))), thick);
}

function endMates(
  crate: Crate,
  end: Draft | undefined,
  left: Draft | undefined,
  right: Draft | undefined,
): readonly MateDraft[] {
  if (end === undefined) return [];
  // Ends over the sides meet them from before and behind, all others from within.
  if (crate.box.whole.corners?.endsOverSides === true || isWoven(crate)) {
    const toward = end.part.name === "front" ? 1 : -1;
    return [...joined(end, left, "z", toward), ...joined(end, right, "z", toward)];
  }
  return [...joined(end, left, "x", -1), ...joined(end, right, "x", 1)];
}

function bottomMates(
  context: Context,
  crate: Crate,
  bottom: Draft | undefined,
  walls: readonly Draft[],
): readonly MateDraft[] {
  if (bottom === undefined) return [];
  if (crate.held === "under") return walls.flatMap((wall) => joined(bottom, wall, "y", 1));
  const [left, right, front, back] = walls;
  if (crate.held === "rabbet") return [...joined(bottom, left, "x", -1), ...joined(bottom, right, "x", 1)];
  const play = (givenSize(context, crate.box.whole.play) ?? fallback("bottom.play")).value;
  const room = { least: zero, most: play, how: "play" as const };
  return [
    ...loose(bottom, left, "x", -1, room),
    ...loose(bottom, right, "x", 1, room),
    ...loose(bottom, front, "z", -1, room),
    ...(slidesIn(crate) ? [] : loose(bottom, back, "z", 1, room)),
  ];
}
