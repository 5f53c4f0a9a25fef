import { type Layout, layOut } from "./layout.ts";
import type { Panel } from "./prepare.ts";
import { putIn } from "./recreate.ts";
import type { Blanks } from "./search.ts";

/** A first layout: the sheets opened, and the blanks for which the stock did not suffice. */
export type Built = { readonly layouts: readonly Layout[]; readonly left: readonly number[] };

/** An order in which blanks are packed: larger keys first. */
export type Key = (blanks: Blanks, item: number) => number;

/** The orders worth trying, the most promising first. */
export const KEYS: readonly Key[] = [
  ({ area }, item) => area[item]!,
  ({ w, h }, item) => Math.max(w[item]!, h[item]!),
  ({ h }, item) => h[item]!,
  ({ w }, item) => w[item]!,
  ({ w, h }, item) => w[item]! + h[item]!,
  ({ w, h }, item) => Math.min(w[item]!, h[item]!),
];

const nothing = (): boolean => false;

/**
 * Packs blanks one after another, offcuts first, and opens a new sheet when a blank goes in nowhere: the one with the
 * least cost for its area (`thrift` 0) or the least cost (`thrift` 1) of those it fits.
 */
export function construct(blanks: Blanks, panels: readonly Panel[], key: Key, thrift: 0 | 1): Built {
  const offcuts: Layout[] = [];
  panels.forEach((panel, bin) => {
    for (let count = 0; panel.offcut && count < Math.min(panel.have, blanks.count); count++) {
      offcuts.push(layOut(bin, panel.w, panel.h, undefined, 0));
    }
  });
  const layouts: Layout[] = [];
  const rest = panels.map((panel) => panel.have);
  const left: number[] = [];
  const order = Array.from({ length: blanks.count }, (_, item) => item);
  order.sort((a, b) => key(blanks, b) - key(blanks, a) || blanks.area[b]! - blanks.area[a]! || a - b);
  for (const item of order) {
    if (putIn(blanks, offcuts, item, nothing) || putIn(blanks, layouts, item, nothing)) continue;
    const bin = newSheet(blanks, panels, rest, item, thrift);
    const panel = panels[bin];
    if (panel === undefined) left.push(item);
    else {
      rest[bin]!--;
      const opened = [layOut(bin, panel.w, panel.h, undefined, 0)];
      putIn(blanks, opened, item, nothing);
      layouts.push(...opened);
    }
  }
  return { layouts: [...offcuts, ...layouts].filter((layout) => layout.root !== undefined), left };
}

function newSheet(
  blanks: Blanks,
  panels: readonly Panel[],
  rest: readonly number[],
  item: number,
  thrift: 0 | 1,
): number {
  let best = -1;
  let bestScore = Number.POSITIVE_INFINITY;
  const w = blanks.w[item]!;
  const h = blanks.h[item]!;
  panels.forEach((panel, bin) => {
    if (panel.offcut || rest[bin]! < 1) return;
    const fits = (w <= panel.w && h <= panel.h) || (blanks.turns[item] === 1 && h <= panel.w && w <= panel.h);
    const area = panel.w * panel.h;
    const score = thrift === 0 ? (panel.cost === 0 ? -area : panel.cost / area) : panel.cost;
    if (fits && score < bestScore) {
      best = bin;
      bestScore = score;
    }
  });
  return best;
}
