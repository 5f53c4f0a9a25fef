import type { AsCut } from "../ascut/as-cut.ts";
import { sizesText } from "../ascut/findings/words.ts";
import { leftBatches, leftModel } from "../ascut/left.ts";
import { type Held, heldTogether, nothingHeld, onHand, recordedIn, takenBy } from "../ascut/rack.ts";
import { rescueOf, type Saved } from "../ascut/rescue.ts";
import type { Job } from "../ascut/spares.ts";
import type { Finding } from "../core/finding.ts";
import { equal } from "../core/rational.ts";
import { size } from "../derive/context.ts";
import { markedParts } from "../plan/cut-list.ts";
import { type CutPlan, cutPlan, type PlanBudget } from "../plan/cut-plan.ts";
import { type BuyLine, buyLines } from "./buying.ts";
import { type Leaving, leavingsOf, withLeavings } from "./leavings.ts";
import { wrap } from "./wrap.ts";

/** One of several jobs: what its file says, what was found in it, and what is on the bench. */
export interface DayJob extends Job {
  readonly findings: readonly Finding[];
}

/** A job with how what is left of it is cut, and what that takes from the rack. */
export interface PlannedJob {
  readonly job: DayJob;
  readonly plan: CutPlan;
  /** What it takes from the rack. */
  readonly held: Held;
  /** The job with what lay in the rack for it. */
  readonly rack: Pick<Job, "context" | "model">;
}

/**
 * What is left of the jobs, planned one after the other: what one takes from a rack that they share is not there for
 * the next, what it leaves over is, and what any of them has broken down or used up is there for none. What is saved is not
 * planned.
 */
export function plannedJobs(
  jobs: readonly DayJob[],
  saved: readonly Saved[],
  budget: PlanBudget,
): readonly PlannedJob[] {
  let held = nothingHeld;
  let leavings: readonly Leaving[] = [];
  return jobs.map((job) => {
    const recorded = jobs.filter((other) => other !== job).map((other) => recordedIn(other.context, other.model));
    const context = withLeavings(job, jobs, leavings);
    const one = planned({ ...job, context }, saved, recorded.reduce(heldTogether, held), budget);
    held = heldTogether(held, one.held);
    leavings = [...leavings, ...leavingsOf(job, one.plan)];
    return { ...one, job };
  });
}

function planned(job: DayJob, saved: readonly Saved[], held: Held, budget: PlanBudget): PlannedJob {
  const { context, model } = job;
  const made = lessSaved(
    job.made,
    saved.filter((one) => one.job.made === job.made),
  );
  const rack = onHand(context, leftModel(model, made), held);
  const plan = cutPlan(rack.context, rack.model, markedParts(leftBatches(model, made)), budget);
  return { job, plan, held: takenBy(plan), rack };
}

/** The counts with what is saved from other pieces no longer left. */
function lessSaved(made: AsCut, saved: readonly Saved[]): AsCut {
  const counts = made.counts.map((count) => {
    const off = saved.filter(({ wanted }) => wanted === count.wanted).length;
    return off === 0 ? count : { ...count, left: Math.max(0, count.left - off) };
  });
  return { ...made, counts };
}

/** What one of several jobs wants from the yard, and what it takes from the rack, as lines. */
export interface Order {
  readonly title: string;
  readonly lines: readonly BuyLine[];
  readonly reserved: readonly string[];
  /** Parts that come out of pieces that lie about, and are not bought anew. */
  readonly saved: number;
}

/** What the jobs want from the yard for what is left of them, each with what it takes from the rack. */
export function ordersOf(jobs: readonly DayJob[], budget: PlanBudget): readonly Order[] {
  const saved = rescueOf(jobs).saved.filter(({ spare }) => spare.kind !== "offcut");
  return plannedJobs(jobs, saved, budget).map(({ job, plan, held, rack }) => ({
    title: job.title,
    lines: buyLines(job.context, job.model, plan),
    reserved: reservedLines(job, plan, held, rack.context),
    saved: saved.filter((one) => one.job === job).length,
  }));
}

function reservedLines(
  { context }: DayJob,
  plan: CutPlan,
  { offcuts }: Held,
  rack: DayJob["context"],
): readonly string[] {
  const whole = plan.stocks.flatMap(({ stock, used, inRack }) => {
    const count = Math.min(used, inRack);
    const noun = count === 1 ? stock.kind : `${stock.kind}s`;
    return count === 0 ? [] : [`${count} whole ${noun} of ${stock.name}`];
  });
  const pieces = offcuts.filter((one, index) => offcuts.findIndex((other) => isSame(one, other)) === index);
  const sized = pieces.map((one) => {
    const count = offcuts.filter((other) => isSame(one, other)).length;
    const measures = sizesText(context, one.width, one.height);
    const left = leftBy(rack, one);
    return `${count === 1 ? "the offcut" : `${count} offcuts`} of ${one.name}, ${measures}${left}`;
  });
  return [...whole, ...sized];
}

/** Whose plan leaves an offcut over, where none of its size lies in the rack by itself. */
export function leftBy(context: DayJob["context"], offcut: Pick<Offcut, "name" | "width" | "height">): string {
  const alike = context.design.offcuts.filter(({ stock, first, second }) => {
    const [width, height] = [size(context, first)?.value, size(context, second)?.value];
    if (stock.text !== offcut.name || width === undefined || height === undefined) return false;
    return equal(width, offcut.width) && equal(height, offcut.height);
  });
  const from = alike.every((one) => one.from !== undefined) ? alike[0]?.from : undefined;
  return from === undefined ? "" : `, left over by ${from.text}`;
}

type Offcut = Held["offcuts"][number];

function isSame(a: Offcut, b: Offcut): boolean {
  return a.stock === b.stock && equal(a.width, b.width) && equal(a.height, b.height);
}

/** That what spoiled pieces become is not bought, for a terminal; nothing where they become nothing. */
export function savedText(orders: readonly Order[]): string {
  const saved = orders.reduce((sum, order) => sum + order.saved, 0);
  if (saved === 0) return "";
  const [what, them] = saved === 1 ? ["1 part", "it comes"] : [`${saved} parts`, "they come"];
  const text = `Nothing is bought for ${what} that can be saved: ${them} out of pieces that lie about, as scantling day says.`;
  return `\n${wrap(text, 80).join("\n")}\n`;
}

/** What each job takes from the rack, for a terminal; nothing where none takes anything. */
export function rackText(orders: readonly Order[]): string {
  const several = 1 < orders.length;
  const lines = orders.flatMap(({ title, reserved }) =>
    reserved.flatMap((line) =>
      wrap(several ? `${line}: for ${title}` : line, 76).map((text, index) => `${index === 0 ? "  " : "    "}${text}`),
    ),
  );
  return lines.length === 0 ? "" : `\nFrom the rack\n${lines.join("\n")}\n`;
}
