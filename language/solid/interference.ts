import { gatheredBy } from "../core/gather.ts";
import type { Length } from "../core/length.ts";
import { sum } from "../core/rational.ts";
import type { Span } from "../core/span.ts";
import { type Axis, apart, around, type Box, common, extent, volumeOf } from "./box.ts";
import type { Mate } from "./mate.ts";
import { type Solid, touch } from "./solid.ts";

/** Two solids that claim one space: what they share, and the statements that they come from. */
export interface Clash {
  readonly a: Solid;
  readonly b: Solid;
  /** Boxes that share nothing with each other, together all that both solids claim. */
  readonly overlap: readonly Box[];
  /** Cubic inches, exact. */
  readonly volume: Length;
  /** The smallest box round the overlap. */
  readonly bounds: Box;
  readonly statements: readonly Span[];
}

/** Two bounds that may meet; each pair once, in the order of their left edges. */
export function near(solids: readonly Solid[]): readonly (readonly [Solid, Solid])[] {
  const pairs: (readonly [Solid, Solid])[] = [];
  for (const group of gatheredBy(solids, ({ frame }) => frame).values()) {
    const sorted = [...group].sort((a, b) => a.bounds.rough[0] - b.bounds.rough[0]);
    let open: Solid[] = [];
    for (const solid of sorted) {
      open = open.filter((other) => solid.bounds.rough[0] <= other.bounds.rough[1] + 1e-7);
      for (const other of open) if (!apart(solid.bounds, other.bounds)) pairs.push([other, solid]);
      open.push(solid);
    }
  }
  return pairs;
}

/** Every two solids of one frame that share space. */
export function clashesAmong(solids: readonly Solid[]): readonly Clash[] {
  return near(solids).flatMap(([a, b]) => {
    const overlap = sharedBy(a.pieces, b.pieces);
    const bounds = around(overlap);
    if (bounds === undefined) return [];
    const statements = a.part.source === b.part.source ? [a.part.source] : [a.part.source, b.part.source];
    return [{ a, b, overlap, volume: sum(overlap.map(volumeOf)), bounds, statements }];
  });
}

/** All that two lists of boxes share. */
export function sharedBy(mine: readonly Box[], others: readonly Box[]): readonly Box[] {
  return mine.flatMap((box) => others.flatMap((other) => common(box, other) ?? []));
}

/** The least way to part two that overlap: the axis on which the overlap is thinnest, and how thin. */
export function thinnest(box: Box): { readonly axis: Axis; readonly by: Length } {
  const { rough } = box;
  const sizes = [
    ["x", rough[1] - rough[0]],
    ["y", rough[3] - rough[2]],
    ["z", rough[5] - rough[4]],
  ] as const;
  const [axis] = sizes.reduce((least, next) => (next[1] < least[1] ? next : least));
  return { axis, by: extent(box[axis]) };
}

/** Solids that no good meeting holds and that touch nothing in their frame. */
export function adriftAmong(solids: readonly Solid[], mates: readonly Mate[]): readonly Solid[] {
  const held = new Set(mates.filter(({ good }) => good).flatMap(({ a, b }) => (b === undefined ? [a] : [a, b])));
  const doubtful = new Set(solids.filter((solid) => !held.has(solid)));
  if (doubtful.size === 0) return [];
  for (const [a, b] of near(solids)) {
    if (!doubtful.has(a) && !doubtful.has(b)) continue;
    if (!touch(a, b)) continue;
    doubtful.delete(a);
    doubtful.delete(b);
  }
  return [...doubtful];
}
