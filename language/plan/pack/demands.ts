import type { Fleet } from "./fleets.ts";
import type { Panel } from "./prepare.ts";
import type { Blanks } from "./search.ts";
import { areaWeighing, pairWeighings, piecesThatCannotShare, type Weighing } from "./weighings.ts";

/**
 * What any set of sheets for some blanks must carry: `carries` is the most that one sheet of each panel carries, by the
 * number of the panel, and together they must come to `need`. In areas, counts, or values of dual feasible functions.
 */
export type Demand = { readonly need: number; readonly carries: readonly number[] };

/** Guards comparisons of sums of doubles: a demand must never be too high by rounding. */
const SLACK = 1e-9;
/** Sets of panels that are looked at, those with most to carry first: a rack of many offcuts makes many. */
const MOST_SETS = 12;
/** Lengths of pieces that make functions, for each set of panels. */
const MOST_LENGTHS = 6;

/**
 * The demands of blanks by the panels that they fit: for each such set of panels, what goes on none but these, by area, by
 * pieces that cannot share a sheet, and by the functions that ask most of each panel. None where all panels are alike.
 */
export function demandsOf(blanks: Blanks, panels: readonly Panel[]): readonly Demand[] {
  if (panels.length < 2 || blanks.count === 0) return [];
  const homes = homesOf(blanks, panels);
  const everywhere = panels.map((panel) => 0 < panel.have);
  type Home = { readonly home: readonly boolean[]; area: number };
  const sets = new Map<string, Home>([[everywhere.join(), { home: everywhere, area: Number.POSITIVE_INFINITY }]]);
  homes.forEach((home, item) => {
    const known = sets.get(home.join());
    if (known === undefined) sets.set(home.join(), { home, area: blanks.area[item]! });
    else known.area += blanks.area[item]!;
  });
  const most = [...sets.values()].sort((a, b) => b.area - a.area).slice(0, MOST_SETS);
  return most.flatMap(({ home }) => {
    const confined = homes.flatMap((other, item) => (other.every((fits, at) => !fits || home[at]!) ? [item] : []));
    return demandsOn(home, only(blanks, confined), panels);
  });
}

/** Whether a fleet can hold all blanks, as far as the demands tell. */
export function suffices(fleet: Fleet, demands: readonly Demand[]): boolean {
  return demands.every(({ need, carries }) => {
    const carried = fleet.reduce((sum, count, at) => sum + (count === 0 ? 0 : count * carries[at]!), 0);
    return need <= carried * (1 + SLACK);
  });
}

/** For each blank, which of the panels it fits. Blanks of one kind have the same list. */
function homesOf(blanks: Blanks, panels: readonly Panel[]): readonly (readonly boolean[])[] {
  const known = new Map<number, readonly boolean[]>();
  return Array.from({ length: blanks.count }, (_, item) => {
    const [w, h] = [blanks.w[item]!, blanks.h[item]!];
    const fits = (panel: Panel): boolean =>
      0 < panel.have && ((w <= panel.w && h <= panel.h) || (blanks.turns[item] === 1 && h <= panel.w && w <= panel.h));
    const home = known.get(blanks.kind[item]!) ?? panels.map(fits);
    known.set(blanks.kind[item]!, home);
    return home;
  });
}

function only(blanks: Blanks, items: readonly number[]): Blanks {
  const { w, h, area, turns, kind } = blanks;
  const floats = (of: Float64Array): Float64Array => Float64Array.from(items, (item) => of[item]!);
  return {
    count: items.length,
    w: floats(w),
    h: floats(h),
    area: floats(area),
    turns: Uint8Array.from(items, (item) => turns[item]!),
    kind: Int32Array.from(items, (item) => kind[item]!),
  };
}

function demandsOn(home: readonly boolean[], blanks: Blanks, panels: readonly Panel[]): readonly Demand[] {
  const there = panels.filter((_, at) => home[at]!);
  if (blanks.count === 0 || there.length === 0) return [];
  const demand = (need: number, carries: (panel: Panel) => number): Demand => ({
    need,
    carries: panels.map((panel, at) => (home[at]! ? carries(panel) : 0)),
  });
  const weighings = mostAsking(blanks, there);
  return [
    demand(piecesThatCannotShare(blanks, there), () => 1),
    ...weighings.map(({ total, carries }) => demand(total, carries)),
  ];
}

/** For each panel the weighing by which most such panels would be needed, and the one by area. */
function mostAsking(blanks: Blanks, panels: readonly Panel[]): readonly Weighing[] {
  const area = areaWeighing(blanks);
  const best = panels.map((panel) => ({ weighing: area, share: area.total / area.carries(panel) }));
  for (const weighing of pairWeighings(blanks, panels, MOST_LENGTHS)) {
    panels.forEach((panel, at) => {
      const carries = weighing.carries(panel);
      const share = weighing.total / carries;
      if (0 < carries && best[at]!.share < share) best[at] = { weighing, share };
    });
  }
  return [...new Set([area, ...best.map(({ weighing }) => weighing)])];
}
