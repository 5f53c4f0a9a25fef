import type { CutRecord } from "../../core/design.ts";
import type { Edit, Finding, Fix } from "../../core/finding.ts";
import { equal } from "../../core/rational.ts";
import { behind } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import { finding } from "../../fit/check.ts";
import { ownerOf } from "../pieces.ts";
import type { Wanted } from "../wanted.ts";
import { addTo, atText, pluralOf } from "./words.ts";

/** A record that may mean several unlike parts. */
export function whichPart(context: Context, record: CutRecord, found: readonly Wanted[]): Finding {
  const names = [...new Set(found.map(({ name }) => name))];
  const what =
    names.length === 1 ? `${pluralOf(names[0]!)} of ${found.length} kinds` : `parts of ${names.length} names`;
  return finding({
    code: "cut/which-part",
    severity: "warning",
    span: record.span,
    message: `${ownerOf(record)} has ${what}: which of them is meant is not said`,
    reason: "The list of what is left to cut would lack one that is not made, and keep one that is.",
    remedy: "Say the name, the size or the stock of the one that is meant.",
    fixes: fixesFor(context, record, found),
  });
}

/** The name where it is missing, else the stock where the sizes are alike, else the size. */
function fixesFor(context: Context, record: CutRecord, found: readonly Wanted[]): readonly Fix[] {
  if (record.part === undefined && record.owner.text !== "part") {
    const names = [...new Set(found.map(({ name }) => name))];
    return names.map((name) => writing(name, { span: behind(record.of.span), text: ` ${name}` }));
  }
  return found.map(({ part }): Fix => {
    const sized = found.filter(
      (other) => equal(other.part.length.value, part.length.value) && equal(other.part.width.value, part.width.value),
    );
    if (1 < sized.length) return writing(`from ${part.stock}`, addTo(record, `from ${part.stock}`));
    const text = atText(context, part.length.value, part.width.value);
    return writing(text, { span: behind(record.count.span), text: ` ${text}` });
  });
}

function writing(text: string, edit: Edit): Fix {
  return { title: `Write ${text}`, edits: [edit], safe: false };
}
