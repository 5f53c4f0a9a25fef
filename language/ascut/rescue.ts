import type { CutRecord, OffcutStatement } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Grain, Part } from "../core/part.ts";
import { equal, less, multiply, type Rational, sum } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import { size } from "../derive/context.ts";
import type { Model, Stock } from "../derive/model.ts";
import { type AsCut, leftOf } from "./as-cut.ts";
import { isNeededNoMore } from "./findings/nameless.ts";
import { bestMatching } from "./matching.ts";
import { ownerOf, type Piece } from "./pieces.ts";
import { heldTogether, nothingHeld, onHand, recordedIn, stockKey } from "./rack.ts";
import type { Wanted } from "./wanted.ts";

/** One job whose pieces and parts take part: its design, what was derived, and what is on the bench. */
export interface Job {
  readonly title: string;
  readonly context: Context;
  readonly model: Model;
  readonly made: AsCut;
}

/** Something that lies about and may still become a part. */
export interface Spare {
  readonly job: Job;
  readonly kind: "spoiled" | "lost" | "surplus" | "offcut";
  readonly from:
    | { readonly record: CutRecord; readonly wanted: Wanted | undefined }
    | { readonly offcut: OffcutStatement };
  readonly stock: Stock;
  readonly thickness: Length;
  /** Along the grain and across it, in inches. */
  readonly along: Length;
  readonly across: Length;
  readonly grain: Grain;
  /** Whether all of it is known to be good: of a spoiled piece without a size only the outline is known. */
  readonly isSure: boolean;
  /** Machining that it has if it got as far, and that another part may not want. */
  readonly worked: readonly string[];
}

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

export function sparesIn(job: Job, jobs: readonly Job[]): readonly Spare[] {
  const { made } = job;
  const lost = made.judged.filter(({ isGood }) => !isGood);
  return [
    ...made.pieces.filter(({ spoiled }) => spoiled).flatMap((piece) => piecesOf(job, "spoiled", piece, piece.count)),
    ...lost.flatMap(({ piece }) => piecesOf(job, "lost", piece, piece.count)),
    ...made.surplus.flatMap(({ piece, count }) => (piece.spoiled ? [] : piecesOf(job, "surplus", piece, count))),
    ...offcutsOf(job, jobs),
  ];
}

function piecesOf(job: Job, kind: Spare["kind"], piece: Piece, count: number): readonly Spare[] {
  const { record, wanted } = piece;
  // A slip of the pen is no piece of wood.
  if (
    wanted === undefined &&
    !isNeededNoMore(
      record,
      job.made.counts.map((one) => one.wanted),
    )
  )
    return [];
  const like = wanted?.part ?? likeIn(job, record);
  const stock = job.model.stocks.get(record.stock?.text ?? like?.stock ?? "");
  const length = piece.length?.value ?? wanted?.part.length.value;
  const width = piece.width?.value ?? wanted?.part.width.value;
  if (stock === undefined || length === undefined || width === undefined) return [];
  const grain = like?.grain ?? "long";
  const [along, across] = grain === "across" ? [width, length] : [length, width];
  const isSure = kind !== "spoiled" || piece.length !== undefined;
  const worked = [...new Set((wanted?.part.machining ?? []).map((made) => made.kind))];
  const thickness = like?.stock === stock.name ? like.thickness.value : stock.thickness.value;
  const spare: Spare = { job, kind, from: { record, wanted }, stock, thickness, along, across, grain, isSure, worked };
  return Array.from({ length: count }, () => spare);
}

/** What a part that is needed no more was most likely made of: as parts of its name still are. */
function likeIn({ made }: Job, record: CutRecord): Part | undefined {
  const named = made.counts.filter(({ wanted }) => wanted.name === record.part?.text);
  const kind = named.find(({ wanted }) => wanted.of.startsWith(`${record.owner.text} `));
  return (named.find(({ wanted }) => wanted.of === ownerOf(record)) ?? kind)?.wanted.part;
}

/** The face grain of an offcut runs along its second figure. What one job has used up is there for none. */
function offcutsOf(job: Job, jobs: readonly Job[]): readonly Spare[] {
  const held = jobs.filter((other) => other !== job).map((other) => recordedIn(other.context, other.model));
  const { context, model } = onHand(job.context, job.model, held.reduce(heldTogether, nothingHeld));
  return context.design.offcuts.flatMap((offcut): readonly Spare[] => {
    const stock = model.stocks.get(offcut.stock.text);
    const [first, second] = [size(context, offcut.first)?.value, size(context, offcut.second)?.value];
    if (stock === undefined || first === undefined || second === undefined) return [];
    const grain = stock.kind === "sheet" ? (stock.block.grain?.value ?? "long") : "long";
    const [along, across] = grain === "across" ? [first, second] : [second, first];
    const isPlain = grain === "none";
    const base = { job, stock, thickness: stock.thickness.value, along, across, isSure: true, worked: [] };
    return [{ ...base, kind: "offcut", from: { offcut }, grain: isPlain ? "none" : "long" }];
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
