import { type Layout, layOut } from "./layout.ts";
import type { Prepared } from "./prepare.ts";
import type { Random } from "./random.ts";
import { searchOn } from "./search.ts";

const ROUNDS = 150;
const HALVINGS = 7;

/**
 * Packs the emptiest new sheet into as short a piece of it as a short search finds, with the other sheets taking what
 * they can, so that one large offcut remains; answers the layouts as they were when nothing larger comes of it.
 */
export function tidyLast(layouts: readonly Layout[], prepared: Prepared, random: Random): readonly Layout[] {
  const fresh = layouts.filter((layout) => prepared.panels[layout.bin]!.offcut === false);
  const last = fresh.reduce<Layout | undefined>(
    (most, one) => (most === undefined || most.free < one.free ? one : most),
    undefined,
  );
  if (last?.root === undefined) return layouts;
  const others = layouts.filter((layout) => layout !== last);
  let best: readonly Layout[] = layouts;
  let offcut = Math.max((last.w - last.root.w) * last.h, last.w * (last.h - last.root.h));
  for (const upright of [true, false]) {
    let low = 0;
    let high = upright ? last.root.h : last.root.w;
    for (let halving = 0; halving < HALVINGS && low + 1 < high; halving++) {
      const middle = Math.floor((low + high) / 2);
      const w = upright ? last.w : middle;
      const h = upright ? middle : last.h;
      const shrunk = packInto([...others, layOut(last.bin, w, h, undefined, 0)], prepared, random);
      if (shrunk === undefined) {
        low = middle;
        continue;
      }
      high = middle;
      if (last.w * last.h - w * h <= offcut) continue;
      offcut = last.w * last.h - w * h;
      best = shrunk.map((one, at) =>
        at < others.length ? one : layOut(one.bin, last.w, last.h, one.root, w * h - one.free),
      );
    }
  }
  return best.filter((layout) => layout.root !== undefined);
}

function packInto(start: readonly Layout[], prepared: Prepared, random: Random): readonly Layout[] | undefined {
  const search = searchOn(prepared.blanks, start, random, {
    memory: 30,
    removed: 6,
    power: 1.5,
    blink: 0.02,
    whole: 0,
  });
  for (let round = 0; round < ROUNDS; round++) if (search.round()) return search.layouts();
  return undefined;
}
