import type { Demand } from "./demands.ts";
import type { Fleet } from "./fleets.ts";
import type { Panel } from "./prepare.ts";

/** States that are looked at before the search is cut short. */
const MOST_STATES = 3000;
/** Guards sums of doubles: the least must never come out too high by rounding. */
const SLACK = 1e-9;

/** So many of each kind before `from` have been chosen, and the last of `counts` of that; `left` is what they do not carry yet. */
type State = {
  readonly from: number;
  readonly counts: readonly number[];
  readonly left: readonly number[];
  readonly spent: number;
  readonly bound: number;
};

/** A set of new sheets that carries all demands, or how far the search for one came: no other one costs less than `cost`. */
type Step = { readonly cost: number; readonly fleet: Fleet | undefined };

/**
 * The least that new sheets cost, `costOf` each, which carry all demands together; offcuts are all there and cost nothing.
 * Exact by best-first search, or still a lower bound where that is cut short; 0 where no number of sheets will do.
 */
export function leastToMeet(
  demands: readonly Demand[],
  panels: readonly Panel[],
  costOf: (panel: Panel) => number,
): number {
  for (const { cost, fleet } of inOrderOfCost(demands, panels, costOf)) {
    return fleet === undefined ? cost * (1 - SLACK) : cost;
  }
  return 0;
}

/** The cheapest fleets that carry all demands, so many at most, and none dearer than `dearest`; with all offcuts. */
export function cheapestToMeet(
  demands: readonly Demand[],
  panels: readonly Panel[],
  dearest: number,
  most: number,
): readonly Fleet[] {
  const fleets: Fleet[] = [];
  for (const { cost, fleet } of inOrderOfCost(demands, panels, (panel) => panel.cost)) {
    if (fleet === undefined || dearest < cost || most <= fleets.length) break;
    fleets.push(fleet);
  }
  return fleets;
}

/** Fleets that carry all demands, the cheapest first, by best-first search; the last has none where that is cut short. */
function* inOrderOfCost(
  demands: readonly Demand[],
  panels: readonly Panel[],
  costOf: (panel: Panel) => number,
): Generator<Step, void> {
  const fresh = panels.flatMap((panel, at) => (panel.offcut || panel.have === 0 ? [] : [at]));
  const kinds = fresh.map((at) => {
    const panel = panels[at]!;
    return { have: panel.have, cost: costOf(panel), carries: demands.map(({ carries }) => carries[at]!) };
  });
  const rests = withoutOffcuts(demands, panels);
  if (!rests.every((rest, at) => rest <= mostOf(kinds, at))) return;
  // What a unit of each demand costs at least when only the kinds from one on are left to choose from.
  const cheapest = Array.from({ length: kinds.length + 1 }, (_, from) =>
    demands.map((_demand, at) =>
      Math.min(...kinds.slice(from).map(({ cost, carries }) => unitCost(cost, carries[at]!))),
    ),
  );
  const ahead = (from: number, left: readonly number[]): number =>
    left.reduce((most, rest, at) => (rest <= 0 ? most : Math.max(most, rest * cheapest[from]![at]!)), 0);
  const reached = (from: number, counts: readonly number[], left: readonly number[], spent: number): State => {
    return { from, counts, left, spent, bound: spent + ahead(from, left) };
  };
  const open = [reached(0, [0], rests, 0)];
  let least = 0;
  for (let looked = 0; looked < MOST_STATES; looked++) {
    const state = open.pop();
    // Sums may come out a hair apart from what was checked above: better no bound than one too high.
    if (state === undefined || state.bound === Number.POSITIVE_INFINITY) return;
    least = state.bound;
    const { from, counts, left, spent } = state;
    const kind = kinds[from];
    if (kind === undefined || left.every((rest) => rest <= 0)) {
      yield { cost: least, fleet: fleetFrom(counts, fresh, panels) };
      continue;
    }
    putInOrder(open, reached(from + 1, [...counts, 0], left, spent));
    const taken = counts[from]!;
    if (taken < kind.have) {
      const less = left.map((rest, at) => rest - kind.carries[at]!);
      putInOrder(open, reached(from, [...counts.slice(0, from), taken + 1], less, spent + kind.cost));
    }
  }
  yield { cost: least, fleet: undefined };
}

function fleetFrom(counts: readonly number[], fresh: readonly number[], panels: readonly Panel[]): Fleet {
  const fleet = panels.map((panel) => (panel.offcut ? panel.have : 0));
  fresh.forEach((at, kind) => {
    fleet[at] = counts[kind] ?? 0;
  });
  return fleet;
}

/** The most that all sheets there are carry of one demand. */
function mostOf(
  kinds: readonly { readonly have: number; readonly carries: readonly number[] }[],
  demand: number,
): number {
  return kinds.reduce((sum, { have, carries }) => (carries[demand] === 0 ? sum : sum + have * carries[demand]!), 0);
}

function unitCost(cost: number, carries: number): number {
  return carries === 0 ? Number.POSITIVE_INFINITY : cost / carries;
}

function withoutOffcuts(demands: readonly Demand[], panels: readonly Panel[]): readonly number[] {
  return demands.map(({ need, carries }) =>
    panels.reduce((rest, panel, at) => (panel.offcut ? rest - panel.have * carries[at]! : rest), need * (1 - SLACK)),
  );
}

/** The cheapest at the end, of equal ones the one that has come farthest. */
function putInOrder(open: State[], state: State): void {
  let [low, high] = [0, open.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    const other = open[middle]!;
    if (state.bound < other.bound || (state.bound === other.bound && other.from <= state.from)) low = middle + 1;
    else high = middle;
  }
  open.splice(low, 0, state);
}
