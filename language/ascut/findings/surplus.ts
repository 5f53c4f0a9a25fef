import type { CutRecord } from "../../core/design.ts";
import type { Finding, Fix } from "../../core/finding.ts";
import { finding, rewrite } from "../../fit/check.ts";
import type { AsCut, Surplus } from "../as-cut.ts";
import { calledIn, isNeededNoMore } from "./nameless.ts";
import type { SavedOf } from "./saved.ts";
import { countedName, takeOut } from "./words.ts";

/** More pieces of a part than are wanted, and pieces of a part that nothing wants any more. */
export function surplusFindings(made: AsCut, saved: SavedOf): readonly Finding[] {
  const all = made.counts.map(({ wanted }) => wanted);
  return made.surplus.flatMap(({ piece, count }): readonly Finding[] => {
    const { record, wanted } = piece;
    if (wanted === undefined) return isNeededNoMore(record, all) ? [notNeeded(record, saved)] : [];
    const { remedy, fixes } = saved(record);
    return [
      finding({
        code: "cut/too-many",
        severity: "warning",
        span: record.count.span,
        message: `${countedName(wanted, wanted.quantity)} ${wanted.quantity === 1 ? "is" : "are"} wanted, and ${count} more ${count === 1 ? "is" : "are"} written down as made`,
        reason: "Either it was counted twice, or something was made that nothing needs.",
        remedy: `Count again. ${remedy}`.trim(),
        fixes: [fewer(piece, count), ...fixes],
      }),
    ];
  });
}

function fewer({ record, count: made }: Surplus["piece"], count: number): Fix {
  return made <= count ? takeOut(record) : rewrite(record.count.span, String(made - count));
}

function notNeeded(record: CutRecord, saved: SavedOf): Finding {
  const { remedy, fixes } = saved(record);
  const isKnown = record.at !== undefined && record.wide !== undefined;
  return finding({
    code: "cut/not-needed",
    severity: "warning",
    span: record.span,
    message: `nothing needs ${calledIn(record)} any more`,
    reason: "It was made before the design was changed. What exists and is not needed can become something else.",
    remedy:
      remedy ||
      (isKnown
        ? "Keep it, or take the record out."
        : "Write its size and stock (at LENGTH x WIDTH from STOCK) to see what it can become."),
    fixes: [...fixes, takeOut(record)],
  });
}
