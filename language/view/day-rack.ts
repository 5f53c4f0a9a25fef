import { sizesText } from "../ascut/findings/words.ts";
import { brokenDownOf } from "../ascut/rack.ts";
import type { OffcutStatement } from "../core/design.ts";
import { equal } from "../core/rational.ts";
import { size } from "../derive/context.ts";
import type { Stock } from "../derive/model.ts";
import type { PlannedSheet, StockPlan } from "../plan/cut-plan.ts";
import { sheetsInRack } from "../plan/problems.ts";
import type { DayJob, PlannedJob } from "./jobs.ts";

/** What is whole in the rack, what is cut from its offcuts, and what nobody has said of it. */
export function rackLines({ job, plan, rack }: PlannedJob): readonly string[] {
  return [...rack.model.stocks.values()].flatMap((stock): readonly string[] => {
    const planned = plan.stocks.find((one) => one.stock.name === stock.name);
    const own = rack.context.design.offcuts.filter((one) => one.stock.text === stock.name);
    const leavings = job.context.design.leavings.filter((one) => one.stock.text === stock.name);
    return [
      ...wholeLine(job, stock, planned),
      ...offcutLines(job, planned?.sheets ?? [], own),
      ...leavings.map((one) => leavingLine(job, one)),
    ];
  });
}

function wholeLine(job: DayJob, stock: Stock, planned: StockPlan | undefined): readonly string[] {
  if (stock.kind === "edging") return [];
  const broken = brokenDownOf(job.context, stock.name);
  const left = planned?.inRack ?? sheetsInRack(job.context, stock);
  const used = planned?.used ?? 0;
  if (stock.block.have === undefined && broken === 0 && used === 0) return [];
  const noun = (count: number): string => `${count} whole ${count === 1 ? stock.kind : `${stock.kind}s`}`;
  const has = left === 0 ? "none in the rack" : `${noun(left)} in the rack`;
  const buys = left < used ? `: ${used - left} to buy` : "";
  const needs = used === 0 ? "none needed" : `${used} needed${buys}`;
  return [`${stock.name}: ${has}, ${needs}${unsaid(job, stock, left, broken)}`];
}

/** Parts of a sheet stand there, and no record says that a sheet was broken down for them. */
function unsaid({ made }: DayJob, stock: Stock, left: number, broken: number): string {
  const isCut = made.counts.some(
    (count) => 0 < count.made + count.spoiled + count.lost && count.wanted.part.stock === stock.name,
  );
  if (stock.kind !== "sheet" || left === 0 || !isCut || 0 < broken) return "";
  return `; nothing says how many were broken down for what is made: write sheet ${stock.name} COUNT in the cut block`;
}

/** What the plan cuts from each offcut. */
function offcutLines(
  { context }: DayJob,
  sheets: readonly PlannedSheet[],
  offcuts: readonly OffcutStatement[],
): readonly string[] {
  const rest = sheets.filter(({ offcut }) => offcut);
  return offcuts.flatMap((one) => {
    const [width, height] = [size(context, one.first)?.value, size(context, one.second)?.value];
    if (width === undefined || height === undefined) return [`the offcut of ${one.stock.text}`];
    const at = rest.findIndex((sheet) => equal(sheet.width, width) && equal(sheet.height, height));
    const [used] = 0 <= at ? rest.splice(at, 1) : [];
    const given = used === undefined ? "nothing that is left is cut from it" : partsOn(used);
    // Of what other plans leave over only what is used is worth a line.
    if (used === undefined && one.from !== undefined) return [];
    const from = one.from === undefined ? "" : `, left over by ${one.from.text}`;
    return [`the offcut of ${one.stock.text}, ${sizesText(context, width, height)}${from}: ${given}`];
  });
}

/** What the job's own plan leaves over is not there before it is cut. */
function leavingLine({ context }: DayJob, one: OffcutStatement): string {
  const [width, height] = [size(context, one.first)?.value, size(context, one.second)?.value];
  const sized = width === undefined || height === undefined ? "" : `, ${sizesText(context, width, height)}`;
  return `the offcut of ${one.stock.text}${sized}: what the plan of this job leaves over; once it lies in the rack, take from "${one.from?.text}" away behind it`;
}

/** `D partition, 2 × G side`. */
function partsOn({ placed }: PlannedSheet): string {
  const counts = new Map<string, number>();
  for (const { mark, part } of placed) {
    const name = `${mark} ${part.name}`;
    counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  return [...counts].map(([name, count]) => (count === 1 ? name : `${count} × ${name}`)).join(", ");
}
