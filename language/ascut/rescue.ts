import type { Part } from "../core/part.ts";
import { equal, less, multiply, type Rational, sum } from "../core/rational.ts";
import type { Stock } from "../derive/model.ts";
import { leftOf } from "./as-cut.ts";
import { bestMatching } from "./matching.ts";
import { stockKey } from "./rack.ts";
import { type Job, type Spare, sparesIn } from "./spares.ts";
import type { Wanted } from "./wanted.ts";

/** A spare with what it becomes. */
export interface Saved {
  readonly spare: Spare;
  readonly job: Job;
  readonly wanted: Wanted;
  /** As it must be cut. */
  readonly part: Part;
  /** What must be so for it to serve: nothing, where it certainly does. */
  readonly provided: readonly string[];
}

export interface Rescue {
  readonly saved: readonly Saved[];
  /** Pieces that nothing left is small enough for. */
  readonly waste: readonly Spare[];
  /** What was made and must be cut anew from stock, less what is saved. */
  readonly recut: readonly { readonly job: Job; readonly wanted: Wanted; readonly count: number }[];
  /** Square inches that need not be cut from stock. */
  readonly area: Rational;
}

interface Target {
  readonly job: Job;
  readonly wanted: Wanted;
  readonly part: Part;
  readonly stock: Stock;
}

/**
 * What each spare can still become, one part from each, so that the least has to be cut from stock; among the cheapest
 * ways the one that uses the smallest spares and the fewest doubtful ones. Exact, over all jobs that share a rack.
 */
export function rescueOf(jobs: readonly Job[]): Rescue {
  const targets = jobs.flatMap(targetsIn);
  const [spares, tooMany] = asManyAsSuit(
    jobs.flatMap((job) => sparesIn(job, jobs)),
    targets,
  );
  const given = bestMatching(spares.length, targets.length, worthOf(spares, targets));
  const saved = spares.flatMap((spare, index): readonly Saved[] => {
    const target = targets[given[index] ?? -1];
    return target === undefined ? [] : [{ ...target, spare, provided: providedFor(spare, target.part) }];
  });
  const waste = [...spares.filter((spare, index) => given[index] === undefined && spare.kind !== "offcut"), ...tooMany];
  return { saved, waste, recut: recutIn(jobs, saved), area: sum(saved.map(({ part }) => areaOf(part))) };
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
    if (0 < free || spare.kind === "offcut") some.push(spare);
    else others.push(spare);
  }
  return [some, others];
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

/** Offcuts of one rack are seen by every job that uses it; only the first of these has them to give. */
function isOnce(spares: readonly Spare[], index: number): boolean {
  const spare = spares[index]!;
  if (!("offcut" in spare.from)) return true;
  const { span } = spare.from.offcut;
  return spares.every((other, before) => {
    if (index <= before || !("offcut" in other.from)) return true;
    return other.from.offcut.span.uri !== span.uri || other.from.offcut.span.start !== span.start;
  });
}

function worthOf(
  spares: readonly Spare[],
  targets: readonly Target[],
): (row: number, column: number) => bigint | undefined {
  const areas = [
    ...spares.map((spare) => multiply(spare.along, spare.across)),
    ...targets.map(({ part }) => areaOf(part)),
  ];
  const scale = areas.reduce((all, { d }) => (all / gcd(all, d)) * d, 1n);
  const whole = areas.map(({ n, d }) => n * (scale / d));
  const [ofSpares, ofTargets] = [whole.slice(0, spares.length), whole.slice(spares.length)];
  const doubts = BigInt(spares.length + 1);
  // What is saved comes first, then the wood that is used up for it, then doubts: none can outweigh the one before.
  const used = (ofSpares.reduce((all, area) => all + area, 0n) + 1n) * doubts;
  const once = spares.map((_, index) => isOnce(spares, index));
  return (row, column) => {
    const [spare, target] = [spares[row]!, targets[column]!];
    if (!once[row] || !suits(spare, target)) return undefined;
    const doubt = providedFor(spare, target.part).length === 0 ? 0n : 1n;
    return ofTargets[column]! * used * 2n - ofSpares[row]! * doubts - doubt;
  };
}

/** Whether the part can be cut from the spare: of the same stock and thickness, its grain the right way, and large enough. */
function suits(spare: Spare, { part, stock }: Target): boolean {
  if (stockKey(spare.stock) !== stockKey(stock) || !equal(spare.thickness, part.thickness.value)) return false;
  const [along, across] =
    part.grain === "across" ? [part.width.value, part.length.value] : [part.length.value, part.width.value];
  const isFree = part.grain === "none" || spare.grain === "none";
  const straight = !less(spare.along, along) && !less(spare.across, across);
  const turned = isFree && !less(spare.along, across) && !less(spare.across, along);
  // What is spoiled somewhere must lose something somewhere.
  const isWhole = equal(multiply(spare.along, spare.across), multiply(along, across));
  return (straight || turned) && (spare.isSure || !isWhole);
}

function providedFor(spare: Spare, part: Part): readonly string[] {
  const unwanted = spare.worked.filter((kind) => !part.machining.some((made) => made.kind === kind));
  return [
    ...(spare.isSure ? [] : ["what is spoiled falls away"]),
    ...(unwanted.length === 0 ? [] : [`no ${unwanted.join(" or ")} is left in it`]),
  ];
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

function areaOf({ length, width }: Part): Rational {
  return multiply(length.value, width.value);
}

function gcd(a: bigint, b: bigint): bigint {
  return b === 0n ? a : gcd(b, a % b);
}
