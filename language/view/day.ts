import type { Count } from "../ascut/as-cut.ts";
import { inWords } from "../ascut/count-words.ts";
import { alike, becomes } from "../ascut/findings/saved.ts";
import { countedName, nameOf, sizesText } from "../ascut/findings/words.ts";
import { leftBatches } from "../ascut/left.ts";
import { type Given, type Rescue, rescueOf, type Saved } from "../ascut/rescue.ts";
import type { Spare } from "../ascut/spares.ts";
import type { Count as Minutes, TimesBlock } from "../core/design.ts";
import { decimalText } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { equal, less, multiply, over, type Rational, ratio, toNumber } from "../core/rational.ts";
import { amount, type Context, size } from "../derive/context.ts";
import type { CutBatch } from "../plan/cut-list.ts";
import type { CutPlan, PlanBudget } from "../plan/cut-plan.ts";
import { type CutStep, stepsOf } from "../plan/steps.ts";
import { rackLines } from "./day-rack.ts";
import { type DayJob, type PlannedJob, plannedJobs } from "./jobs.ts";

/** What is left of one job at the end of a day. */
export interface JobLeft {
  readonly job: DayJob;
  /** Pieces that are made, of all that are wanted; and those that were made in vain. */
  readonly made: number;
  readonly wanted: number;
  readonly spoiled: number;
  readonly lost: number;
  /** Pieces left to cut, those that are saved from spoiled ones counted in. */
  readonly left: number;
  /** Times that fence or stop have to be set for what is cut from the rack, from what is bought and from what is saved. */
  readonly setups: number;
  /** Minutes of work by the times that the maker gives; missing where none is given. */
  readonly minutes: number | undefined;
  /** What the minutes are of: `2 × breakdown`. */
  readonly work: readonly string[];
  readonly batches: readonly CutBatch[];
  readonly plan: CutPlan;
  readonly rack: readonly string[];
}

/** A day's report: every job by itself, and what can be saved for any of them. */
export interface Day {
  readonly jobs: readonly JobLeft[];
  readonly rescue: Rescue;
}

/** What is left of the jobs, planned one after the other; what spoiled pieces become is not cut from new stock. */
export function dayOf(jobs: readonly DayJob[], budget: PlanBudget): Day {
  const rescue = rescueOf(jobs);
  // What the rack's offcuts become is for the plan to say, which has new sheets to think of besides.
  const saved = rescue.saved.filter(({ spare }) => spare.kind !== "offcut");
  const jobsLeft = plannedJobs(jobs, saved, budget).map((planned) => {
    const own = rescue.given.filter(({ spare, parts }) => spare.kind !== "offcut" && parts[0]?.job === planned.job);
    return jobLeft(
      planned,
      own.flatMap((given) => given.steps),
    );
  });
  return { jobs: jobsLeft, rescue };
}

/** What is left, with the cuts that free what is saved beside those of the plan. */
function jobLeft(planned: PlannedJob, saving: readonly CutStep[]): JobLeft {
  const { job, plan } = planned;
  const { context, model, made } = job;
  const steps = [...stepsOf(context, plan), ...saving];
  const sum = (of: (count: Count) => number): number => made.counts.reduce((all, count) => all + of(count), 0);
  return {
    job,
    made: sum((count) => count.made),
    wanted: sum(({ wanted }) => wanted.quantity),
    spoiled: sum((count) => count.spoiled),
    lost: sum((count) => count.lost),
    left: sum((count) => count.left),
    setups: steps.filter(({ newSetting }) => newSetting).length,
    ...timeFor(context, plan, steps),
    batches: leftBatches(model, made),
    plan,
    rack: rackLines(planned),
  };
}

/** The kinds of work that the file gives times for, added up; what it gives none for is not counted. */
function timeFor(context: Context, plan: CutPlan, steps: readonly CutStep[]): Pick<JobLeft, "minutes" | "work"> {
  const times = context.design.shop.times[0];
  const each = (key: keyof Pick<TimesBlock, "breakdown" | "setting" | "sawing">): number | undefined => {
    const given: Minutes | undefined = times?.[key];
    const value = given === undefined ? undefined : amount(context, given.value);
    return value === undefined || value.n < 0n ? undefined : toNumber(value);
  };
  const work = [
    { word: "breakdown", each: each("breakdown"), count: plan.stocks.reduce((sum, { used }) => sum + used, 0) },
    { word: "setting", each: each("setting"), count: steps.filter(({ newSetting }) => newSetting).length },
    { word: "sawing", each: each("sawing"), count: steps.length },
  ].flatMap((one) => (one.each === undefined ? [] : [{ ...one, each: one.each }]));
  if (work.length === 0) return { minutes: undefined, work: [] };
  return {
    minutes: Math.round(work.reduce((sum, one) => sum + one.each * one.count, 0)),
    work: work.map(({ word, count }) => `${count} × ${word}`),
  };
}

/** How many pieces of a row are saved from others, and need not be cut from stock. */
export function savedIn(parts: readonly Part[], job: DayJob, { saved }: Rescue): number {
  const isOne = (part: Part): boolean =>
    parts.some(
      ({ id, length, width }) =>
        id === part.id && equal(length.value, part.length.value) && equal(width.value, part.width.value),
    );
  return saved.filter((one) => one.job === job && one.spare.kind !== "offcut" && isOne(one.part)).length;
}

/** `Left: 14 parts, two set-ups, 40 minutes by the times given (2 × breakdown, 26 × sawing).` */
export function leftLine({ left, setups, minutes, work }: JobLeft): string {
  if (left === 0) return "Left: nothing to cut.";
  const time =
    minutes === undefined
      ? ""
      : `, ${minutes} ${minutes === 1 ? "minute" : "minutes"} by the times given (${work.join(", ")})`;
  return `Left: ${left} ${left === 1 ? "part" : "parts"}, ${inWords(setups)} ${setups === 1 ? "set-up" : "set-ups"}${time}.`;
}

/** `The spoiled side of box plan-1, 20 × 4 3/4 in`, with its job where there are several. */
export function spareText(spare: Spare): string {
  const { context } = spare.job;
  if ("offcut" in spare.from) return offcutText(context, spare);
  const { record, wanted } = spare.from;
  const name =
    wanted === undefined
      ? [record.owner.text, record.of.text, record.part?.text ?? ""].join(" ").trim()
      : nameOf(wanted);
  const word = spare.kind === "spoiled" ? "spoiled" : spare.kind === "lost" ? "wrong" : "surplus";
  const [length, width] = spare.grain === "across" ? [spare.across, spare.along] : [spare.along, spare.across];
  return `${name.replace(/^the /, `the ${word} `)}, ${sizesText(context, length, width)}`;
}

/** `the offcut of birch-34, 20 × 31 in`: across the grain, then along it, as it is stated. */
export function offcutText(context: Context, { stock, from }: Pick<Spare, "stock" | "from">): string {
  if (!("offcut" in from)) return stock.name;
  const [first, second] = [size(context, from.offcut.first), size(context, from.offcut.second)];
  if (first === undefined || second === undefined) return `the offcut of ${stock.name}`;
  return `the offcut of ${stock.name}, ${sizesText(context, first.value, second.value)}`;
}

/** Spares that are alike and become alike parts, in one line; with their jobs where there are several. */
export function givenLine(group: readonly Given[], jobWords: (job: Saved["job"]) => string): string {
  const [one] = group;
  if (one === undefined) return "";
  const [which, verb] = group.length === 1 ? ["", "becomes"] : [`${group.length} × `, "become"];
  return `${which}${spareText(one.spare)}${jobWords(one.spare.job)}, ${verb} ${becomes(group, jobWords)}`;
}

/** What spoiled and other loose pieces become, as sentences beside a list. */
export function savedNotes({ given }: Rescue): readonly string[] {
  const loose = given.filter(({ spare }) => spare.kind !== "offcut");
  return alike(loose).map((group) => {
    const line = givenLine(group, () => "");
    return `${line.slice(0, 1).toUpperCase()}${line.slice(1)}.`;
  });
}

/** What is to be said where not all ways of cutting what lies about were gone through; nothing where they were. */
export function unprovenLine({ rescue: { area, most } }: Day, { units }: Context): string | undefined {
  if (!less(area, most)) return undefined;
  const say = (inches: Rational): string =>
    units === "inches"
      ? `${decimalText(over(inches, 144), 1)} square feet`
      : `${decimalText(multiply(inches, ratio(64516, 100_000_000)), 2)} square metres`;
  return `whether another way saves more is not proven: with what comes from the offcuts this saves ${say(area)}, and no way more than ${say(most)}`;
}

export function recutLine({ wanted, count }: Rescue["recut"][number]): string {
  return countedName(wanted, count);
}
