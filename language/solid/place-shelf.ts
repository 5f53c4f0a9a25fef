import type { Length } from "../core/length.ts";
import { add, over, subtract, zero } from "../core/rational.ts";
import { type Context, givenDistance, size } from "../derive/context.ts";
import { fallback } from "../derive/defaults.ts";
import type { Model, ShelfModel } from "../derive/model.ts";
import { boxOf, extent, type Range, span, spanTo } from "./box.ts";
import { grow, type Home, lay, poolOf } from "./lay.ts";
import { heldBy, joined, loose, type MateDraft } from "./mate.ts";
import { evenly, type Spot } from "./place-box.ts";
import { bandOf } from "./place-case.ts";
import type { WallOf } from "./place-mounts.ts";
import type { Laid } from "./shell.ts";
import type { Draft } from "./solid.ts";

/** The shelves of an opening, where they are said to be or spread evenly over its height, their backs at the back of the opening. */
export function placeShelves(
  context: Context,
  model: Model,
  shelf: ShelfModel,
  home: Home,
  spot: Spot,
  wallOf: WallOf,
): Laid {
  const { opening } = shelf;
  const deep = opening.deep?.value;
  if (deep === undefined) return { drafts: [], mates: [] };
  const pool = poolOf(shelf.parts);
  const count = sumOf(shelf.parts.map((part) => part.quantity));
  const beside = [opening.bounds.left.beside?.value ?? zero, opening.bounds.right.beside?.value ?? zero] as const;
  const room: Range = {
    from: subtract(spot.x, beside[0]),
    to: add(add(spot.x, opening.wide.value), beside[1]),
  };
  const walls = [wallOf(opening, "left"), wallOf(opening, "right")] as const;
  const drafts: Draft[] = [];
  const mates: MateDraft[] = [];
  for (let index = 0; index < count; index++) {
    const piece = pool.take({ name: "shelf" });
    if (piece === undefined) break;
    const { part } = piece;
    const x = span(add(room.from, over(subtract(extent(room), part.length.value), 2)), part.length.value);
    const top = shelf.at?.[index];
    const thick = part.thickness.value;
    const y =
      top === undefined
        ? evenly(span(spot.y, opening.high.value), thick, count, index)
        : spanTo(add(spot.y, top.value), thick);
    const z = spanTo(deep, part.width.value);
    const draft = lay(home, piece, x, y, z);
    if (draft === undefined) continue;
    grow(draft, x, y, spanTo(z.from, bandOf(part, model.stocks)));
    drafts.push(draft);
    mates.push(...(isLoose(shelf) ? onPins(context, shelf, draft, walls) : housed(context, shelf, draft, walls)));
  }
  return { drafts, mates };
}

function isLoose({ whole: block }: ShelfModel): boolean {
  return block.adjustable !== undefined;
}

function onPins(
  context: Context,
  { whole: block }: ShelfModel,
  draft: Draft,
  walls: readonly (Draft | undefined)[],
): readonly MateDraft[] {
  const gap = (givenDistance(context, block.gap) ?? fallback("shelf.endGap")).value;
  const room = { least: gap, most: gap, how: "pins" as const };
  return [
    ...loose(draft, walls[0], "x", -1, room),
    ...loose(draft, walls[1], "x", 1, room),
    ...(draft.frame.startsWith("opening ") ? [heldBy(draft, "existing work")] : []),
  ];
}

/** A fixed shelf butts, or its ends are housed in the walls, which are dadoed for it where it stands. */
function housed(
  context: Context,
  { whole: block }: ShelfModel,
  draft: Draft,
  walls: readonly (Draft | undefined)[],
): readonly MateDraft[] {
  const fitting = block.from?.fittings.find((one) => one.word === "dado");
  const depth: Length = fitting === undefined ? zero : (size(context, fitting.depth) ?? fallback("case.dado")).value;
  const { x, y, z } = draft.outline;
  const ends = [span(x.from, depth), spanTo(x.to, depth)];
  for (const [index, wall] of walls.entries()) {
    const end = boxOf(ends[index]!, y, { from: zero, to: z.to });
    if (wall !== undefined && end !== undefined) wall.cuts.push(end);
  }
  return [
    ...joined(draft, walls[0], "x", -1),
    ...joined(draft, walls[1], "x", 1),
    ...(draft.frame.startsWith("opening ") ? [heldBy(draft, "existing work")] : []),
  ];
}

function sumOf(counts: readonly number[]): number {
  return counts.reduce((total, count) => total + count, 0);
}
