import { bestGap, insertAt, type Place, squeezeIn } from "./insert.ts";
import type { Layout } from "./layout.ts";
import type { Blanks } from "./search.ts";

/** Says for a layout whether it is to be looked at this time. */
export type Skip = (at: number) => boolean;

const place: Place = { at: 0, node: undefined, along: 0, w: 0, h: 0, gain: 0 };

/** Puts a blank in the gap that suits it best, else squeezes it in; changes one entry of `layouts`, or answers false. */
export function putIn(blanks: Blanks, layouts: Layout[], item: number, skip: Skip): boolean {
  const area = blanks.area[item]!;
  const w = blanks.w[item]!;
  const h = blanks.h[item]!;
  const turns = blanks.turns[item] === 1 && w !== h;
  place.gain = Number.NEGATIVE_INFINITY;
  for (let at = 0; at < layouts.length; at++) {
    const layout = layouts[at]!;
    if (layout.free < area || skip(at)) continue;
    bestGap(layout, at, w, h, place);
    if (turns) bestGap(layout, at, h, w, place);
  }
  if (place.gain === Number.NEGATIVE_INFINITY) return squeeze(blanks, layouts, item);
  layouts[place.at] = insertAt(layouts[place.at]!, place, item);
  return true;
}

function squeeze(blanks: Blanks, layouts: Layout[], item: number): boolean {
  const area = blanks.area[item]!;
  const w = blanks.w[item]!;
  const h = blanks.h[item]!;
  const ways = blanks.turns[item] === 1 && w !== h ? 2 : 1;
  let gain = Number.NEGATIVE_INFINITY;
  const kind = blanks.kind[item]!;
  let best: Layout | undefined;
  let bestAt = -1;
  let bestWay = 0;
  for (let at = 0; at < layouts.length; at++) {
    const layout = layouts[at]!;
    if (layout.free < area) continue;
    for (let way = 0; way < ways; way++) {
      const known = layout.squeezed.get(2 * kind + way);
      if (known !== undefined && known <= gain) continue;
      const candidate = known === undefined ? squeezeIn(layout, item, lying(w, h, way), lying(h, w, way)) : undefined;
      const gained = known ?? (candidate === undefined ? Number.NEGATIVE_INFINITY : candidate.worth - layout.worth);
      if (known === undefined) layout.squeezed.set(2 * kind + way, gained);
      if (gained <= gain) continue;
      gain = gained;
      best = candidate;
      bestAt = at;
      bestWay = way;
    }
  }
  if (bestAt < 0) return false;
  best ??= squeezeIn(layouts[bestAt]!, item, lying(w, h, bestWay), lying(h, w, bestWay));
  if (best === undefined) return false;
  layouts[bestAt] = best;
  return true;
}

/** The first of two sizes as a blank lies, the other where it is turned. */
function lying(size: number, turned: number, way: number): number {
  return way === 0 ? size : turned;
}
