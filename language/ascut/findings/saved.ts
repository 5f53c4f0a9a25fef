import type { CutRecord } from "../../core/design.ts";
import type { Fix } from "../../core/finding.ts";
import { showText } from "../../core/length.ts";
import { equal, ratio } from "../../core/rational.ts";
import { behind } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { runOf } from "../../plan/steps.ts";
import { recordedAs } from "../pieces.ts";
import type { Given, Rescue, Saved } from "../rescue.ts";
import { atText, countedName, nameOf, tapeText } from "./words.ts";

/** What the pieces of a record can still become: a sentence, and fixes that write it down. */
export interface SavedText {
  readonly remedy: string;
  readonly fixes: readonly Fix[];
}

export type SavedOf = (record: CutRecord) => SavedText;

export function savedText(context: Context, rescue: Rescue): SavedOf {
  return (record) => {
    const own = rescue.given.filter(({ spare }) => "record" in spare.from && spare.from.record === record);
    if (own.length === 0) {
      const isWaste = rescue.waste.some(({ from }) => "record" in from && from.record === record);
      return { remedy: isWaste ? "It is too small for anything that is left." : "", fixes: [] };
    }
    const become = alike(own).map((group) => becomes(group));
    const which = own.length === 1 ? "It" : `${own.length} of them`;
    return { remedy: `${which} can still become ${become.join("; ")}.`, fixes: [rewritten(context, record, own)] };
  };
}

/** Pieces that are cut in one way, together: the same spare, become the same parts. */
export function alike(given: readonly Given[]): readonly (readonly Given[])[] {
  const isAlike = (a: Given, b: Given): boolean =>
    a.spare === b.spare &&
    a.parts.length === b.parts.length &&
    a.parts.every(({ wanted }, at) => wanted === b.parts[at]!.wanted);
  const groups: Given[][] = [];
  for (const one of given) {
    const group = groups.find(([first]) => isAlike(first!, one));
    if (group === undefined) groups.push([one]);
    else group.push(one);
  }
  return groups;
}

/**
 * What pieces that are cut in one way become: `2 fronts of box plan-1, cut to 14 × 4 in; cuts: rip at 4 in, crosscut at
 * 14 in`. Behind the name of each part stands what is to be said of its job.
 */
export function becomes(group: readonly Given[], jobWords: (job: Saved["job"]) => string = () => ""): string {
  const parts = together(group).map(({ first, count }) => {
    const { wanted, part, provided, job } = first;
    const condition = provided.length === 0 ? "" : `, provided that ${provided.join(" and ")}`;
    const name = count === 1 ? nameOf(wanted) : countedName(wanted, count);
    return `${name}${jobWords(job)}, cut to ${tapeText(job.context, part.length.value, part.width.value)}${condition}`;
  });
  return [...parts, ...cutWords(group)].join("; ");
}

/** Where one part comes out of a piece, its size says how. */
function cutWords(group: readonly Given[]): readonly string[] {
  const [first] = group;
  if (first === undefined || first.parts.length < 2) return [];
  const said = cutsOf(first);
  return said.length === 0 ? [] : [`${group.length === 1 ? "cuts" : "cuts of each"}: ${said.join(", ")}`];
}

/** The cuts that free the parts of a piece, in their order: `rip at 4 in twice`. */
export function cutsOf({ spare, parts, steps }: Given): readonly string[] {
  // In the units of the parts, so that they can be set exactly; in those of the piece where its parts are of several.
  const own = parts[0]?.job.context ?? spare.job.context;
  const isOfOne = parts.every(({ job }) => job.context.units === own.units);
  const { reading, units } = isOfOne ? own : spare.job.context;
  const runs: { cut: string; times: number }[] = [];
  for (const step of steps) {
    const cut = `${runOf(step)} at ${showText(step.setting, reading)} ${units === "inches" ? "in" : "mm"}`;
    const last = runs.at(-1);
    if (last?.cut === cut) last.times++;
    else runs.push({ cut, times: 1 });
  }
  return runs.map(({ cut, times }) => (times === 1 ? cut : `${cut} ${times === 2 ? "twice" : `${times} times`}`));
}

/** The parts of alike pieces by what they are, with how many there are. */
function together(group: readonly Given[]): readonly { readonly first: Saved; readonly count: number }[] {
  const parts = group.flatMap((one) => one.parts);
  const firsts = parts.filter((one, at) => parts.findIndex((other) => isSame(one, other)) === at);
  return firsts.map((first) => ({ first, count: parts.filter((one) => isSame(one, first)).length }));
}

/** Parts of one name may have to be cut to several sizes now. */
function isSame(a: Saved, b: Saved): boolean {
  return (
    a.wanted === b.wanted &&
    equal(a.part.length.value, b.part.length.value) &&
    equal(a.part.width.value, b.part.width.value)
  );
}

/** The record as it reads once its pieces are what they can become. */
function rewritten(context: Context, record: CutRecord, own: readonly Given[]): Fix {
  const parts = together(own);
  const records = parts.map(({ first, count }) => recordText(context, first.wanted, count, first.part));
  const rest = restOf(record, own.length);
  const edits = [{ span: behind(record.span), text: `\n  ${records.join("\n  ")}` }, ...rest];
  const { first, count } = parts[0]!;
  const title =
    parts.length === 1 && count === 1
      ? `Write it down as ${nameOf(first.wanted)}`
      : `Write down what ${own.length === 1 ? "it becomes" : "they become"}`;
  return { title, edits: merged(record, edits, records), safe: false };
}

/** The line of a record for pieces of a part: `box plan-1 side 2 at 24 x 4 25/32`. */
export function recordText(
  context: Context,
  { of, name }: Saved["wanted"],
  count: number,
  part: Saved["part"],
  from = "",
): string {
  const what = of === `part ${name}` ? of : `${recordedAs(of)} ${name}`;
  return `${what} ${count} ${atText(context, part.length.value, part.width.value)}${from}`;
}

function restOf(record: CutRecord, used: number): Fix["edits"] {
  const { count } = record;
  const before = count.kind === "number" ? count.value : ratio(used);
  const left = Number(before.n / before.d) - used;
  return left <= 0 ? [] : [{ span: count.span, text: String(left) }];
}

/** Where every piece of the record is used, the new records stand in its place. */
function merged(record: CutRecord, edits: Fix["edits"], records: readonly string[]): Fix["edits"] {
  return 1 < edits.length ? edits : [{ span: record.span, text: records.join("\n  ") }];
}
