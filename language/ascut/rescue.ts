import { gatheredBy } from "../core/gather.ts";
import type { Part } from "../core/part.ts";
import { multiply, type Rational, sum, times, toText, zero } from "../core/rational.ts";
import { inLengths, type PlannedSheet } from "../plan/cut-plan.ts";
import { type CutUp, cutsOf } from "../plan/pack/fillings.ts";
import { type CutStep, stepsOn } from "../plan/steps.ts";
import { leftOf } from "./as-cut.ts";
import { type Division, divisionOf } from "./division.ts";
import { stockKey } from "./rack.ts";
import { shareOut } from "./sharing.ts";
import { type Job, type Spare, sparesIn } from "./spares.ts";
import { providedFor, suits, type Target } from "./suits.ts";
import type { Wanted } from "./wanted.ts";

/** A part that is cut from a spare. */
export interface Saved {
  readonly spare: Spare;
  readonly job: Job;
  readonly wanted: Wanted;
  /** As it must be cut. */
  readonly part: Part;
  /** What must be so for it to serve: nothing, where it certainly does. */
  readonly provided: readonly string[];
}

/** One piece with all that it becomes. */
export interface Given {
  readonly spare: Spare;
  readonly parts: readonly Saved[];
  /** The cuts that free them, in their order; none where it is not known what of the piece is good. */
  readonly steps: readonly CutStep[];
}

export interface Rescue {
  readonly given: readonly Given[];
  /** The parts of all of them. */
  readonly saved: readonly Saved[];
  /** Pieces that nothing left is small enough for. */
  readonly waste: readonly Spare[];
  /** What was made and must be cut anew from stock, less what is saved. */
  readonly recut: readonly { readonly job: Job; readonly wanted: Wanted; readonly count: number }[];
  /** Square inches that need not be cut from stock, and the most that any way could save: the same where that is proven. */
  readonly area: Rational;
  readonly most: Rational;
}

/**
 * What each spare can still become, so that the least has to be cut from stock; among the cheapest ways the one that
 * cuts least from the rack's offcuts, and then uses the smallest pieces and the fewest doubtful ones, over all jobs that
 * share a rack. Stocks of which nothing but offcuts lies about are left to the plan.
 */
export function rescueOf(jobs: readonly Job[]): Rescue {
  const targets = gatheredBy(jobs.flatMap(targetsIn), ({ stock, part }) => keyOf(stock, part.thickness.value));
  const all = jobs.flatMap((job) => sparesIn(job, jobs)).filter(isOnce());
  const spares = gatheredBy(all, ({ stock, thickness }) => keyOf(stock, thickness));
  const shared = [...spares].map(([key, some]) => rescued(some, targets.get(key) ?? []));
  const given = shared.flatMap((one) => one.given);
  const saved = given.flatMap(({ parts }) => parts);
  return {
    given,
    saved,
    waste: shared.flatMap(({ waste }) => waste),
    recut: recutIn(jobs, saved),
    area: sum(shared.map(({ area }) => area)),
    most: sum(shared.map(({ most }) => most)),
  };
}

function keyOf(stock: Spare["stock"], thickness: Rational): string {
  return `${stockKey(stock)} ${toText(thickness)}`;
}

/** Offcuts of one rack are seen by every job that uses it; only the first of these has them to give. */
function isOnce(): (spare: Spare) => boolean {
  const seen = new Set<string>();
  return ({ from }) => {
    if (!("offcut" in from)) return true;
    const { uri, start } = from.offcut.span;
    const key = `${uri}:${start}`;
    return !seen.has(key) && seen.add(key) !== undefined;
  };
}

function targetsIn(job: Job): readonly Target[] {
  const wantedOf = new Map(
    job.made.counts.flatMap(({ wanted }) => wanted.parts.map((part) => [part, wanted] as const)),
  );
  return leftOf(job.made).flatMap(({ from, part }) => {
    const [stock, wanted] = [job.model.stocks.get(part.stock), wantedOf.get(from)];
    if (stock === undefined || wanted === undefined) return [];
    return Array.from({ length: part.quantity }, (): Target => ({ job, wanted, part, stock }));
  });
}

/** The same of one stock. */
type OfOneStock = Pick<Rescue, "given" | "waste" | "area" | "most">;

/** What the pieces of one stock become. */
function rescued(all: readonly Spare[], targets: readonly Target[]): OfOneStock {
  const isLoose = ({ kind }: Spare): boolean => kind !== "offcut";
  if (!all.some(isLoose)) return { given: [], waste: [], area: zero, most: zero };
  const [spares, tooMany] = asManyAsSuit(all, targets);
  if (spares.length === 0) return { given: [], waste: tooMany.filter(isLoose), area: zero, most: zero };
  const division = divisionOf(spares, targets);
  const demand = division.kinds.map(({ length }) => length);
  const shared = shareOut(division.givers, demand, division.areas);
  const left = division.kinds.map((kind) => [...kind]);
  const given = division.spares.flatMap((spare, at): Given[] => {
    const filling = shared.given[at];
    return filling === undefined ? [] : [givenBy(division, spare, filling, left)];
  });
  const order = new Map(all.map((spare, at) => [spare, at]));
  given.sort((a, b) => order.get(a.spare)! - order.get(b.spare)!);
  const unused = division.spares.filter((_, at) => shared.given[at] === undefined);
  const unit = division.scale.length(1);
  const area = (units: number): Rational => times(multiply(unit, unit), BigInt(units));
  return {
    given,
    waste: [...unused, ...tooMany].filter(isLoose),
    area: area(shared.area),
    most: area(shared.most),
  };
}

/** Of alike spares no more than there are parts for them, so that a count of a thousand costs no time; and the others. */
function asManyAsSuit(
  spares: readonly Spare[],
  targets: readonly Target[],
): readonly [readonly Spare[], readonly Spare[]] {
  const room = new Map<Spare, number>();
  const [some, others]: [Spare[], Spare[]] = [[], []];
  for (const spare of spares) {
    const free = room.get(spare) ?? targets.filter((target) => suits(spare, target)).length;
    room.set(spare, free - 1);
    (0 < free ? some : others).push(spare);
  }
  return [some, others];
}

/** Takes the parts out of what is left of their kinds: those of the piece's own job first. */
function givenBy(division: Division, spare: Spare, filling: CutUp, left: Target[][]): Given {
  const parts = filling.counts.flatMap((count, kind) =>
    Array.from({ length: count }, (): Saved => {
      const targets = left[kind]!;
      const own = targets.findIndex(({ job }) => job === spare.job);
      const [target] = targets.splice(Math.max(0, own), 1);
      return { ...target!, spare, provided: providedFor(spare, target!.part) };
    }),
  );
  return { spare, parts, steps: spare.isSure ? stepsFor(division, spare, filling) : [] };
}

function stepsFor({ scale, kerf, givers, spares, kinds }: Division, spare: Spare, filling: CutUp): readonly CutStep[] {
  const { w, h, kinds: lying } = givers[spares.indexOf(spare)]!;
  const partOf = (kind: number) => {
    const { w: wide, h: high, turns } = lying[kind]!;
    return { id: String(kind), width: wide - kerf, height: high - kerf, turn: turns ? "free" : "fixed" } as const;
  };
  const cuts = cutsOf({ width: w - kerf, height: h - kerf }, kerf, partOf, filling);
  if (cuts === undefined) return [];
  const named = (id: string) => {
    const { part } = kinds[Number(id)]![0]!;
    return { mark: part.name, part };
  };
  const sheet: PlannedSheet = {
    stock: spare.stock,
    name: spare.stock.name,
    offcut: true,
    width: scale.length(w - kerf),
    height: scale.length(h - kerf),
    price: undefined,
    placed: [],
    cuts: inLengths(cuts, scale, named),
  };
  return stepsOn(spare.job.context, [[sheet]]);
}

/** What was made and is of no use to its own list, less what other spares become. */
function recutIn(jobs: readonly Job[], saved: readonly Saved[]): Rescue["recut"] {
  return jobs.flatMap((job) =>
    job.made.counts.flatMap((count) => {
      const again = Math.min(count.left, count.spoiled + count.lost);
      const free = saved.filter((one) => one.job === job && one.wanted === count.wanted && one.spare.kind !== "offcut");
      const rest = Math.max(0, again - free.length);
      return rest === 0 ? [] : [{ job, wanted: count.wanted, count: rest }];
    }),
  );
}
