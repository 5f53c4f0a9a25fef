import type { Length } from "../../core/length.ts";
import type { Part } from "../../core/part.ts";
import { add, largest, negate, over, smallest, subtract, zero } from "../../core/rational.ts";
import type { FrontModel, Opening, Rect } from "../../derive/model.ts";
import { evenly } from "./box.ts";
import type { Tables } from "./scene.ts";
import type { Axis, Place, Range, Solid } from "./solid.ts";
import { from, middled, placed, upTo } from "./solid.ts";

/** The parts of every leaf of a front, before its openings or in them. */
export function frontSolids(tables: Tables, front: FrontModel): readonly Solid[] {
  return leafRects(front).flatMap((rect) => leafSolids(tables, front, rect));
}

/** The outline of each leaf as seen from before it. */
export function leafRects(front: FrontModel): readonly Rect[] {
  const [x, y] = coverOf(front);
  const wide = front.wide.value;
  const rect = (at: Length): Rect => ({ x: at, y: y[0], wide, high: front.high.value });
  return front.leaves === 1 ? [rect(middled(...x, wide)[0])] : [rect(x[0]), rect(subtract(x[1], wide))];
}

/** What the front covers: its openings and the overlays, or the openings alone. */
function coverOf(front: FrontModel): readonly [Range, Range] {
  const rects = front.openings.map((opening): Rect => opening.rect ?? standingRect(opening));
  const [first, ...rest] = rects;
  if (first === undefined)
    return [
      [zero, zero],
      [zero, zero],
    ];
  const lap = (side: "left" | "right" | "top" | "bottom"): Length => front.overlays[side]?.value ?? zero;
  const left = smallest(first.x, ...rest.map((rect) => rect.x));
  const low = smallest(first.y, ...rest.map((rect) => rect.y));
  const right = largest(add(first.x, first.wide), ...rest.map((rect) => add(rect.x, rect.wide)));
  const high = largest(add(first.y, first.high), ...rest.map((rect) => add(rect.y, rect.high)));
  const x: Range = [subtract(left, lap("left")), add(right, lap("right"))];
  const y: Range = [subtract(low, lap("bottom")), add(high, lap("top"))];
  if (front.whole.inset === undefined) return [x, y];
  return [x, middled(...y, front.high.value)];
}

/** An opening that is out of parallel is drawn at its smallest reading; a front is made to the largest, and stands evenly over it. */
function standingRect({ wide, widest, high, highest }: Opening): Rect {
  return {
    x: over(subtract(wide.value, widest.value), 2),
    y: over(subtract(high.value, highest.value), 2),
    wide: widest.value,
    high: highest.value,
  };
}

function leafSolids({ stocks }: Tables, front: FrontModel, rect: Rect): readonly Solid[] {
  const part = (name: string): Part | undefined => front.parts.find((one) => one.name === name);
  const depth = (thick: Length): Range => (front.whole.inset === undefined ? [negate(thick), zero] : [zero, thick]);
  const make = (one: Part, x: Range, y: Range, along: Axis): Solid =>
    placed(one, "front", { x, y, z: depth(one.thickness.value) }, along, "z", stocks);
  const x = from(rect.x, rect.wide);
  const y = from(rect.y, rect.high);
  const slab = part("slab");
  if (slab !== undefined) return [{ ...make(slab, x, y, "y"), grain: slabGrain(front, slab) }];
  const stile = part("stile");
  const rails = front.parts.filter((one) => /^(top |bottom |)rail$/.test(one.name));
  const [top, bottom] = [rails[0], rails.at(-1)];
  if (stile === undefined || top === undefined || bottom === undefined) return [];
  const width = stile.width.value;
  const inner: Range = [add(x[0], width), subtract(x[1], width)];
  const clear: Range = [add(y[0], bottom.width.value), subtract(y[1], top.width.value)];
  const members = [
    make(stile, from(x[0], width), y, "y"),
    make(stile, upTo(x[1], width), y, "y"),
    make(top, inner, upTo(y[1], top.width.value), "x"),
    make(bottom, inner, from(y[0], bottom.width.value), "x"),
  ];
  const grid = gridOf(front, inner, clear);
  return [
    ...members,
    ...grid.rails.map((range) => make(part("mid rail")!, inner, range, "x")),
    ...grid.stiles.flatMap((range) => grid.rows.map((row) => make(part("mid stile")!, range, row, "y"))),
    ...panels(stocks, front, grid, members[0]!),
  ];
}

function slabGrain(front: FrontModel, slab: Part): Axis | undefined {
  if (slab.grain === "none") return undefined;
  const up = (front.whole.grain?.value ?? (front.block.kind === "door" ? "long" : "across")) !== "across";
  return up ? "y" : "x";
}

/** The clear cells of a leaf, and its members between them. */
interface Grid {
  readonly rails: readonly Range[];
  readonly stiles: readonly Range[];
  readonly columns: readonly Range[];
  readonly rows: readonly Range[];
}

function gridOf(front: FrontModel, inner: Range, clear: Range): Grid {
  const members = (name: string): { readonly thick: Length; readonly part: Part | undefined } => {
    const part = front.parts.find((one) => one.name === name);
    return { thick: part?.width.value ?? zero, part };
  };
  const [midRail, midStile] = [members("mid rail"), members("mid stile")];
  const railCount = (midRail.part?.quantity ?? 0) / front.leaves;
  const stileCount = (midStile.part?.quantity ?? 0) / front.leaves / (railCount + 1);
  const rails = evenly(clear, midRail.thick, Math.floor(railCount));
  const stiles = evenly(inner, midStile.thick, Math.floor(stileCount));
  return { rails, stiles, columns: spaces(inner, stiles), rows: spaces(clear, rails) };
}

/** What is left of a range between its members. */
function spaces([start, end]: Range, members: readonly Range[]): readonly Range[] {
  const starts = [start, ...members.map((range) => range[1])];
  const ends = [...members.map((range) => range[0]), end];
  return starts.map((at, index) => [at, ends[index]!]);
}

/** What stands in front of the groove: the panel's face lies against it. */
function grooveFrom({ part }: Solid): Length {
  const groove = part?.machining.find((one) => one.kind === "groove");
  if (part === undefined || groove?.wide === undefined) return zero;
  const thick = part.thickness.value;
  const wide = groove.wide.value;
  return groove.from === undefined ? over(subtract(thick, wide), 2) : subtract(thick, add(groove.from.value, wide));
}

/** Panels as they are seen: within their cells, in the depth where their groove puts them. */
function panels(stocks: Tables["stocks"], front: FrontModel, grid: Grid, stile: Solid): readonly Solid[] {
  const part = front.parts.find((one) => one.name === "panel");
  if (part === undefined) return [];
  const z = from(add(stile.place.z[0], grooveFrom(stile)), part.thickness.value);
  const up = (front.whole.grain?.value ?? (front.block.kind === "door" ? "long" : "across")) !== "across";
  return grid.columns.flatMap((x) =>
    grid.rows.map((y) => {
      const place: Place = { x, y, z };
      return placed(part, "front", place, up ? "y" : "x", "z", stocks);
    }),
  );
}
