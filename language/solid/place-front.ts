import type { Length } from "../core/length.ts";
import { add, over, subtract, sum, times, zero } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import { fallback } from "../derive/defaults.ts";
import { gapBetween } from "../derive/front-gap.ts";
import { runsUp } from "../derive/front-parts.ts";
import type { FrontModel, Model } from "../derive/model.ts";
import { extent, type Range, span, spanTo } from "./box.ts";
import { grow, type Home, lay, type Pool, poolOf } from "./lay.ts";
import { heldBy } from "./mate.ts";
import { placeLeaf } from "./place-leaf.ts";
import type { Laid } from "./shell.ts";

/** One leaf of a front: where it lies, and what it is laid with. */
export interface Leaf {
  readonly front: FrontModel;
  readonly home: Home;
  readonly pool: Pool;
  readonly x: Range;
  readonly y: Range;
  /** Its front face. */
  readonly z: Length;
}

/** The area that a front covers or stands in, from the openings' outer edges. */
export interface Area {
  readonly x: Range;
  readonly y: Range;
}

/** The leaves of a front or door: over its openings by the overlays, or in the middle of the opening when inset. */
export function placeFront(context: Context, model: Model, front: FrontModel, home: Home, area: Area): Laid {
  const pool = poolOf(front.parts);
  const laid = leavesOf(context, front, home, pool, area).map((leaf) =>
    front.whole.frame === undefined ? slab(model, leaf) : placeLeaf(leaf),
  );
  const drafts = laid.flatMap((one) => one.drafts);
  const first = laid.flatMap((one) => one.drafts.slice(0, 1));
  const held = first.map((draft) => heldBy(draft, front.block.kind === "front" ? "joined" : "hinges"));
  return { drafts, mates: [...laid.flatMap((one) => one.mates), ...held] };
}

function leavesOf(context: Context, front: FrontModel, home: Home, pool: Pool, area: Area): readonly Leaf[] {
  const gap = (gapBetween(context, front.whole) ?? fallback("front.pair")).value;
  const between = front.leaves === 1 ? zero : gap;
  const wide = add(times(front.wide.value, front.leaves), between);
  const x = covering(area.x, front.overlays.left?.value, front.overlays.right?.value, wide);
  const y = covering(area.y, front.overlays.bottom?.value, front.overlays.top?.value, front.high.value);
  const z = front.whole.inset === undefined ? subtract(zero, front.thickness?.value ?? zero) : zero;
  const leaf = (across: Range): Leaf => ({ front, home, pool, x: across, y, z });
  if (front.leaves === 1) return [leaf(x)];
  return [leaf(span(x.from, front.wide.value)), leaf(spanTo(x.to, front.wide.value))];
}

/** A front that is not as large as its overlays say stands in the middle of what they say. */
function covering(opening: Range, before: Length | undefined, behind: Length | undefined, long: Length): Range {
  const covered = add(extent(opening), add(before ?? zero, behind ?? zero));
  return span(add(subtract(opening.from, before ?? zero), over(subtract(covered, long), 2)), long);
}

/** A slab lies in the middle of its bands. */
function slab(model: Model, leaf: Leaf): Laid {
  const piece = leaf.pool.take({ name: "slab" });
  if (piece === undefined) return { drafts: [], mates: [] };
  const { part } = piece;
  const [wide, high] = runsUp(leaf.front)
    ? [part.width.value, part.length.value]
    : [part.length.value, part.width.value];
  const band = (edge: string): Length =>
    sum(
      part.machining
        .filter((made) => made.kind === "edging" && (made.where === "all edges" || made.where.includes(edge)))
        .map((made) => model.stocks.get(made.note ?? "")?.thickness.value ?? zero),
    );
  const x = span(add(leaf.x.from, band("left")), wide);
  const y = span(add(leaf.y.from, band("bottom")), high);
  const z = span(leaf.z, part.thickness.value);
  const draft = lay(leaf.home, piece, x, y, z);
  if (draft === undefined) return { drafts: [], mates: [] };
  const upright = { from: subtract(y.from, band("bottom")), to: add(y.to, band("top")) };
  grow(draft, x, spanTo(y.from, band("bottom")), z);
  grow(draft, x, span(y.to, band("top")), z);
  grow(draft, spanTo(x.from, band("left")), upright, z);
  grow(draft, span(x.to, band("right")), upright, z);
  return { drafts: [draft], mates: [] };
}
