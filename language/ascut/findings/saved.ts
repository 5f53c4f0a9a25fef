import type { CutRecord } from "../../core/design.ts";
import type { Fix } from "../../core/finding.ts";
import { ratio } from "../../core/rational.ts";
import { behind } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { recordedAs } from "../pieces.ts";
import type { Rescue, Saved } from "../rescue.ts";
import { atText, countedName, nameOf, tapeText } from "./words.ts";

/** What the pieces of a record can still become: a sentence, and fixes that write it down. */
export interface SavedText {
  readonly remedy: string;
  readonly fixes: readonly Fix[];
}

export type SavedOf = (record: CutRecord) => SavedText;

export function savedText(context: Context, rescue: Rescue): SavedOf {
  return (record) => {
    const own = rescue.saved.filter(({ spare }) => "record" in spare.from && spare.from.record === record);
    if (own.length === 0) {
      const isWaste = rescue.waste.some(({ from }) => "record" in from && from.record === record);
      return { remedy: isWaste ? "It is too small for anything that is left." : "", fixes: [] };
    }
    const become = alike(own).map((group) => becomes(context, group[0]!, group.length));
    const which = own.length === 1 ? "It" : `${own.length} of them`;
    return { remedy: `${which} can still become ${become.join("; ")}.`, fixes: [rewritten(context, record, own)] };
  };
}

/** What is saved in one way, together: the same spare, become the same part. */
export function alike(saved: readonly Saved[]): readonly (readonly Saved[])[] {
  const groups: Saved[][] = [];
  for (const one of saved) {
    const group = groups.find(([first]) => first!.wanted === one.wanted && first!.spare === one.spare);
    if (group === undefined) groups.push([one]);
    else group.push(one);
  }
  return groups;
}

export function becomes(context: Context, { wanted, part, provided }: Saved, count: number): string {
  const condition = provided.length === 0 ? "" : `, provided that ${provided.join(" and ")}`;
  return `${count === 1 ? nameOf(wanted) : countedName(wanted, count)}, cut to ${tapeText(context, part.length.value, part.width.value)}${condition}`;
}

/** The record as it reads once its pieces are what they can become. */
function rewritten(context: Context, record: CutRecord, own: readonly Saved[]): Fix {
  const records = alike(own).map((group) => recordText(context, group[0]!.wanted, group.length, group[0]!.part));
  const rest = restOf(record, own.length);
  const edits = [{ span: behind(record.span), text: `\n  ${records.join("\n  ")}` }, ...rest];
  const title = own.length === 1 ? `Write it down as ${nameOf(own[0]!.wanted)}` : "Write down what they become";
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
