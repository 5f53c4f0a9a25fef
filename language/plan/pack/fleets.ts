import { type Demand, suffices } from "./demands.ts";
import type { Layout } from "./layout.ts";
import { cheapestToMeet } from "./least-to-meet.ts";
import type { Panel } from "./prepare.ts";

/** How many of each panel, by its number in the list of panels. */
export type Fleet = readonly number[];

/** What a set of sheets costs: price first, then the number of new sheets, then their area. */
export type Price = { readonly cost: number; readonly sheets: number; readonly area: number };

/** The price of the sheets in use; offcuts count as paid. */
export function priceOf(layouts: readonly Layout[], panels: readonly Panel[]): Price {
  return fleetPrice(fleetOf(layouts, panels), panels);
}

/** True when a is the better price. */
export function cheaper(a: Price, b: Price): boolean {
  if (Math.abs(a.cost - b.cost) <= 1e-9 * (1 + b.cost))
    return a.sheets !== b.sheets ? a.sheets < b.sheets : a.area < b.area;
  return a.cost < b.cost;
}

/** The fleet of the sheets in use. */
export function fleetOf(layouts: readonly Layout[], panels: readonly Panel[]): number[] {
  const fleet = panels.map(() => 0);
  for (const layout of layouts) if (layout.root !== undefined) fleet[layout.bin]!++;
  return fleet;
}

/** So many fleets are looked at besides those one step away. */
const MOST_CHEAPEST = 8;

/**
 * Better fleets: those one step away, without one sheet, or with one or two sheets exchanged for one or two others, each with
 * room for `area` and all that is demanded, and cheaper; and the cheapest of all. The roomiest first. Offcuts are always all there. A fleet whose sheets another has all, and
 * more, is left out: whoever finds that one comes to it next.
 */
export function betterFleets(from: Fleet, panels: readonly Panel[], demands: readonly Demand[], area: number): Fleet[] {
  const found = new Map<string, Fleet>();
  const base = from.map((count, at) => (panels[at]!.offcut ? panels[at]!.have : count));
  const price = fleetPrice(base, panels);
  const fresh = panels.flatMap((panel, at) => (panel.offcut ? [] : [at]));
  const changes = [
    [],
    ...fresh.map((at) => [at]),
    ...fresh.flatMap((a) => fresh.filter((b) => a <= b).map((b) => [a, b])),
  ];
  for (const away of changes) {
    for (const put of changes) {
      if (away.length === 0 || (2 < fresh.length && 1 < away.length && 1 < put.length)) continue;
      const fleet = base.slice();
      for (const at of away) fleet[at]!--;
      for (const at of put) fleet[at]!++;
      if (fleet.some((count, at) => count < 0 || panels[at]!.have < count)) continue;
      if (areaOf(fleet, panels) < area || !cheaper(fleetPrice(fleet, panels), price)) continue;
      if (!suffices(fleet, demands)) continue;
      found.set(fleet.join(), fleet);
    }
  }
  for (const fleet of cheapestToMeet(demands, panels, price.cost * (1 + 1e-9), MOST_CHEAPEST)) {
    if (area <= areaOf(fleet, panels) && cheaper(fleetPrice(fleet, panels), price)) found.set(fleet.join(), fleet);
  }
  const fleets: Fleet[] = [...found.values()];
  const order = fleets.filter((fleet) => !fleets.some((other) => other !== fleet && holds(other, fleet)));
  order.sort((a, b) => areaOf(b, panels) - areaOf(a, panels));
  return order.slice(0, 8);
}

/** True when a fleet has every sheet that another has: it is the easier one, and the other is the next step from it. */
export function holds(fleet: Fleet, other: Fleet): boolean {
  return fleet.every((count, at) => other[at]! <= count);
}

export function fleetPrice(fleet: Fleet, panels: readonly Panel[]): Price {
  let cost = 0;
  let sheets = 0;
  let area = 0;
  for (let at = 0; at < fleet.length; at++) {
    const panel = panels[at]!;
    if (panel.offcut) continue;
    cost += fleet[at]! * panel.cost;
    sheets += fleet[at]!;
    area += fleet[at]! * panel.w * panel.h;
  }
  return { cost, sheets, area };
}

export function areaOf(fleet: Fleet, panels: readonly Panel[]): number {
  return fleet.reduce((sum, count, at) => sum + count * panels[at]!.w * panels[at]!.h, 0);
}
