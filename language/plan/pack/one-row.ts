import type { BarPlan } from "./bar-problem.ts";
import { type Layout, layOut } from "./layout.ts";
import { searchBars } from "./pack-bars.ts";
import type { Panel, Prepared } from "./prepare.ts";
import type { Blanks } from "./search.ts";
import type { SheetBounds } from "./sheet-bounds.ts";
import { ALONG_X, ALONG_Y, leaf, split } from "./tree.ts";

/** What is found where blanks lie in one row: all of them in place, and bounds that hold for any way to cut. */
export type RowPlan = { readonly layouts: readonly Layout[] | undefined; readonly bounds: SheetBounds };

/** The side along which blanks lie one behind the other, and how long each of them and each panel is along it. */
type Row = {
  readonly along: typeof ALONG_X | typeof ALONG_Y;
  readonly lengths: Float64Array;
  readonly room: readonly number[];
};

/**
 * Where no two blanks can lie side by side, as rails on boards of their own width, they are lengths of bars: that is
 * solved by the patterns of one dimension, which come much further than those of two. Nothing where two can.
 */
export function oneRow({ blanks, panels }: Prepared): Generator<undefined, RowPlan> | undefined {
  const there = panels.filter((panel) => 0 < panel.have);
  if (blanks.count === 0 || there.length === 0) return undefined;
  const [wide, high] = [there.map(({ w }) => w), there.map(({ h }) => h)];
  if (isRow(blanks.w, blanks.h, blanks.turns, wide)) {
    return searched({ along: ALONG_Y, lengths: blanks.h, room: panels.map(({ h }) => h) }, blanks, panels);
  }
  if (isRow(blanks.h, blanks.w, blanks.turns, high)) {
    return searched({ along: ALONG_X, lengths: blanks.w, room: panels.map(({ w }) => w) }, blanks, panels);
  }
  return undefined;
}

/** Whether each goes across every panel, none can be turned, and not even the two smallest lie side by side. */
function isRow(across: Float64Array, along: Float64Array, turns: Uint8Array, room: readonly number[]): boolean {
  const [least, most] = [Math.min(...room), Math.max(...room)];
  let [first, second] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let item = 0; item < across.length; item++) {
    const one = across[item]!;
    if (least < one || (turns[item] === 1 && along[item]! <= most)) return false;
    if (one < first) [first, second] = [one, first];
    else second = Math.min(second, one);
  }
  return most < first + second;
}

function* searched(row: Row, blanks: Blanks, panels: readonly Panel[]): Generator<undefined, RowPlan> {
  // By the cheapest, so that equal prices are ones: the fewest bars are found by whole numbers.
  const cheapest = Math.min(...panels.flatMap(({ cost }) => (0 < cost ? [cost] : [])));
  const unit = Number.isFinite(cheapest) ? cheapest : 1;
  const plan = yield* searchBars({
    stock: panels.map(({ cost, have }, at) => ({ id: String(at), length: row.room[at]!, cost: cost / unit, have })),
    // Blanks and panels are grown by the kerf already, and trimmed.
    kerf: 0,
    trim: 0,
    parts: Array.from(row.lengths, (length, item) => ({ id: String(item), length, quantity: 1 })),
  });
  return {
    layouts: plan.unplaced.length === 0 ? layoutsOf(plan, row, blanks, panels) : undefined,
    bounds: boundsOf(plan, panels, unit),
  };
}

function layoutsOf({ bars }: BarPlan, { along }: Row, { w, h, area }: Blanks, panels: readonly Panel[]): Layout[] {
  return bars.map(({ stock, pieces }) => {
    const bin = Number(stock);
    const items = pieces.map(({ part }) => Number(part));
    const leaves = items.map((item) => leaf(item, w[item]!, h[item]!));
    const root = leaves.length === 1 ? leaves[0]! : split(along, leaves);
    const used = items.reduce((sum, item) => sum + area[item]!, 0);
    return layOut(bin, panels[bin]!.w, panels[bin]!.h, root, used);
  });
}

/** Bars are counted with offcuts, sheets without: where there are any, what must be paid for says how many are new. */
function boundsOf({ lowerBound, costBound }: BarPlan, panels: readonly Panel[], unit: number): SheetBounds {
  const cost = costBound * unit;
  const there = panels.filter((panel) => 0 < panel.have);
  const dearest = Math.max(...there.map(({ cost }) => cost));
  const paid = 0 < dearest ? Math.ceil(cost / dearest - 1e-9) : 0;
  const sheets = there.some(({ offcut }) => offcut) ? paid : Math.max(lowerBound, paid);
  return { sheets, cost, reasons: [{ sheets, cost, because: "lengths one behind the other" }] };
}
