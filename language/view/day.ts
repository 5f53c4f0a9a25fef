import type { Count } from "../ascut/as-cut.ts";
import { becomes } from "../ascut/findings/saved.ts";
import { countedName, nameOf, sizesText } from "../ascut/findings/words.ts";
import { leftBatches } from "../ascut/left.ts";
import { brokenDownOf } from "../ascut/rack.ts";
import { type Rescue, rescueOf, type Saved, type Spare } from "../ascut/rescue.ts";
import type { Count as Minutes, TimesBlock } from "../core/design.ts";
import { exactText } from "../core/length.ts";
import { toNumber } from "../core/rational.ts";
import { amount, type Context } from "../derive/context.ts";
import type { CutBatch } from "../plan/cut-list.ts";
import type { CutPlan, PlanBudget } from "../plan/cut-plan.ts";
import { sheetsInRack } from "../plan/problems.ts";
import { type CutStep, stepsOf } from "../plan/steps.ts";
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
  /** Times that fence or stop have to be set for what is cut from the rack and from what is bought. */
  readonly setups: number;
  /** Minutes at the saw by the times that the maker gives; missing where none is given. */
  readonly minutes: number | undefined;
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
  // One part from an offcut is less than the plan cuts from it.
  const saved = rescue.saved.filter(({ spare }) => spare.kind !== "offcut");
  return { jobs: plannedJobs(jobs, saved, budget).map(jobLeft), rescue };
}

function jobLeft({ job, plan }: PlannedJob): JobLeft {
  const { context, model, made } = job;
  const steps = stepsOf(context, plan);
  const sum = (of: (count: Count) => number): number => made.counts.reduce((all, count) => all + of(count), 0);
  return {
    job,
    made: sum((count) => count.made),
    wanted: sum(({ wanted }) => wanted.quantity),
    spoiled: sum((count) => count.spoiled),
    lost: sum((count) => count.lost),
    left: sum((count) => count.left),
    setups: steps.filter(({ newSetting }) => newSetting).length,
    minutes: minutesFor(context, plan, steps),
    batches: leftBatches(model, made),
    plan,
    rack: rackLines(job, plan),
  };
}

/** The kinds of work that the file gives times for, added up. */
function minutesFor(context: Context, plan: CutPlan, steps: readonly CutStep[]): number | undefined {
  const times = context.design.shop.times[0];
  const each = (key: keyof Pick<TimesBlock, "breakdown" | "setting" | "sawing">): number | undefined => {
    const given: Minutes | undefined = times?.[key];
    const value = given === undefined ? undefined : amount(context, given.value);
    return value === undefined || value.n < 0n ? undefined : toNumber(value);
  };
  const [breakdown, setting, sawing] = [each("breakdown"), each("setting"), each("sawing")];
  if (breakdown === undefined && setting === undefined && sawing === undefined) return undefined;
  const sheets = plan.stocks.reduce((sum, { used }) => sum + used, 0);
  const setups = steps.filter(({ newSetting }) => newSetting).length;
  return Math.round((breakdown ?? 0) * sheets + (setting ?? 0) * setups + (sawing ?? 0) * steps.length);
}

/** What is whole in the rack, and what nobody has said of it. */
function rackLines({ context, model, made }: DayJob, plan: CutPlan): readonly string[] {
  return [...model.stocks.values()].flatMap((stock): readonly string[] => {
    const planned = plan.stocks.find((one) => one.stock.name === stock.name);
    if (stock.kind === "edging") return [];
    const broken = brokenDownOf(context, stock.name);
    const left = planned?.inRack ?? Math.max(0, sheetsInRack(context, stock) - broken);
    const used = planned?.used ?? 0;
    const noun = (count: number): string => (count === 1 ? stock.kind : `${stock.kind}s`);
    const isCut = made.counts.some(
      (count) => 0 < count.made + count.spoiled + count.lost && count.wanted.part.stock === stock.name,
    );
    const needs =
      used === 0 ? "none is needed" : used <= left ? `${used} of them needed` : `${used} needed: ${used - left} to buy`;
    const has = stock.block.have !== undefined || 0 < broken;
    const unsaid =
      stock.kind === "sheet" && 0 < left && isCut && broken === 0
        ? `; nothing says how many were broken down for what is made: write ${stock.kind} ${stock.name} COUNT in the cut block`
        : "";
    return has || 0 < used ? [`${stock.name}: ${left} whole ${noun(left)} in the rack, ${needs}${unsaid}`] : [];
  });
}

/** `two`, and figures above twelve. */
export function inWords(count: number): string {
  const words = [
    "no",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
  ];
  return words[count] ?? String(count);
}

/** `Left: 14 parts, two set-ups, 40 minutes at the saw.` */
export function leftLine({ left, setups, minutes }: Pick<JobLeft, "left" | "setups" | "minutes">): string {
  if (left === 0) return "Left: nothing to cut.";
  const time = minutes === undefined ? "" : `, ${minutes} ${minutes === 1 ? "minute" : "minutes"} at the saw`;
  return `Left: ${left} ${left === 1 ? "part" : "parts"}, ${inWords(setups)} ${setups === 1 ? "set-up" : "set-ups"}${time}.`;
}

/** `The spoiled side of box plan-1, 20 × 4 3/4 in`, with its job where there are several. */
export function spareText(spare: Spare): string {
  const { context } = spare.job;
  if ("offcut" in spare.from)
    return `the offcut of ${spare.stock.name}, ${exactText(spare.across, context.units)} × ${exactText(spare.along, context.units)}`;
  const { record, wanted } = spare.from;
  const name =
    wanted === undefined
      ? [record.owner.text, record.of.text, record.part?.text ?? ""].join(" ").trim()
      : nameOf(wanted);
  const word = spare.kind === "spoiled" ? "spoiled" : spare.kind === "lost" ? "wrong" : "surplus";
  const [length, width] = spare.grain === "across" ? [spare.across, spare.along] : [spare.along, spare.across];
  return `${name.replace(/^the /, `the ${word} `)}, ${sizesText(context, length, width)}`;
}

/** Spares that are alike and become alike parts, in one line. */
export function savedLine(group: readonly Saved[]): string {
  const [one] = group;
  if (one === undefined) return "";
  const [which, verb] = group.length === 1 ? ["", "becomes"] : [`${group.length} × `, "become"];
  return `${which}${spareText(one.spare)} ${verb} ${becomes(one.job.context, one, group.length)}`;
}

export function recutLine({ wanted, count }: Rescue["recut"][number]): string {
  return countedName(wanted, count);
}
