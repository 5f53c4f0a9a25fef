import type { Combiner } from "./combiner.ts";
import { type Demand, suffices } from "./demands.ts";
import { areaOf, type Fleet, fleetOf, fleetPrice } from "./fleets.ts";
import { type Layout, layOut } from "./layout.ts";
import type { Panel } from "./prepare.ts";
import type { Random } from "./random.ts";
import type { Loose } from "./ruin.ts";
import { type Blanks, type Manner, type Search, searchOn } from "./search.ts";

/** A search towards one fleet: all rounds spent on it, and those of the search itself. */
export type Attempt = {
  readonly fleet: Fleet;
  readonly combiner: Combiner | undefined;
  search: Search;
  spent: number;
  rounds: number;
  restarts: number;
};

const MANNERS: readonly Manner[] = [
  { memory: 50, removed: 12, power: 1.3, blink: 0.02, whole: 0.5 },
  { memory: 200, removed: 10, power: 2, blink: 0.02, whole: 0.2 },
  { memory: 50, removed: 12, power: 1.2, blink: 0.05, whole: 0.5 },
  { memory: 400, removed: 6, power: 1.5, blink: 0.01, whole: 0 },
];
const FIRST_STRETCH = 30_000;

/** Begins on sheets of the fleet. */
export function attemptOn(
  fleet: Fleet,
  start: readonly Layout[],
  blanks: Blanks,
  combiner: Combiner | undefined,
  random: Random,
): Attempt {
  const search = searchOn(blanks, start, random, MANNERS[0]!, combiner?.memory.keep);
  return { fleet, combiner, search, spent: 0, rounds: 0, restarts: 0 };
}

/** Goes about it in another manner once it has come to nothing for long. */
export function changeManner(attempt: Attempt, blanks: Blanks, random: Random): void {
  if (attempt.rounds < FIRST_STRETCH * 2 ** attempt.restarts) return;
  attempt.restarts++;
  const manner = MANNERS[attempt.restarts % MANNERS.length]!;
  attempt.search = searchOn(blanks, attempt.search.layouts(), random, manner, attempt.combiner?.memory.keep);
}

export function leastTried(attempts: readonly Attempt[]): Attempt | undefined {
  let least: Attempt | undefined;
  for (const attempt of attempts) if (least === undefined || attempt.spent < least.spent) least = attempt;
  return least;
}

/** The fullest sheets of a plan as far as the fleet has them, and empty sheets for the rest. */
export function startOn(fleet: Fleet, layouts: readonly Layout[], panels: readonly Panel[]): Layout[] {
  const start: Layout[] = [];
  panels.forEach((panel, bin) => {
    const kept = layouts.filter((layout) => layout.bin === bin).sort((a, b) => a.free - b.free);
    for (let at = 0; at < fleet[bin]!; at++) start.push(kept[at] ?? layOut(bin, panel.w, panel.h, undefined, 0));
  });
  return start;
}

/** Sheets that were combined anew and the rest of a fleet that has them all; undefined where that is more than they are. */
export function filledUp({ layouts, out }: Loose, fleet: Fleet, panels: readonly Panel[]): Loose | undefined {
  const there = fleetOf(layouts, panels);
  const used = layouts.filter((layout) => layout.root !== undefined);
  const rest = fleet.map((count, bin) => count - there[bin]!);
  const empty = startOn(rest, [], panels);
  return used.length < empty.length ? undefined : { layouts: [...used, ...empty], out };
}

/** What blanks ask of a fleet: area, and all that is demanded. */
export type Need = { readonly area: number; readonly demands: readonly Demand[] };

/** A fleet with as much more as this cost allows, the largest sheets first; undefined where that is still too little. */
export function widened(fleet: Fleet, panels: readonly Panel[], cost: number, need: Need): Fleet | undefined {
  const wide = fleet.map((count, bin) => (panels[bin]!.offcut ? panels[bin]!.have : count));
  const largest = panels.map((_, bin) => bin).filter((bin) => !panels[bin]!.offcut && 0 < panels[bin]!.cost);
  largest.sort((a, b) => panels[b]!.w * panels[b]!.h - panels[a]!.w * panels[a]!.h);
  for (const bin of largest) {
    const panel = panels[bin]!;
    const left = cost * (1 + 1e-9) - fleetPrice(wide, panels).cost;
    wide[bin] = Math.min(panel.have, wide[bin]! + Math.max(0, Math.floor(left / panel.cost)));
  }
  return need.area <= areaOf(wide, panels) && suffices(wide, need.demands) ? wide : undefined;
}
