import type { Finding } from "../../core/finding.ts";
import type { Context } from "../../derive/context.ts";
import { finding } from "../../fit/check.ts";
import type { AsCut } from "../as-cut.ts";
import type { SavedOf } from "./saved.ts";
import { countedName, sizesText } from "./words.ts";

/** A spoiled piece: it is cut again, and what is good of it may serve. */
export function spoiledFindings(context: Context, made: AsCut, saved: SavedOf): readonly Finding[] {
  return made.pieces.flatMap((piece): readonly Finding[] => {
    const { record, wanted, count } = piece;
    if (!piece.spoiled || wanted === undefined || record.spoiled === undefined) return [];
    const left = made.counts.find((one) => one.wanted === wanted)?.left ?? 0;
    const again = left === 0 ? "; all that are wanted are made" : `; ${left} of them still to cut`;
    const { remedy, fixes } = saved(record);
    const good =
      record.at === undefined
        ? ` Write how much of it is good: at LENGTH x WIDTH, ${sizesText(context, wanted.part.length.value, wanted.part.width.value)} at most.`
        : "";
    return [
      finding({
        code: "cut/spoiled",
        severity: "hint",
        span: record.spoiled.span,
        message: `${countedName(wanted, count)} spoiled${again}`,
        reason: "What is good of a spoiled piece is wood that need not be cut from a new sheet or board.",
        remedy: `${remedy}${good}`.trim() || "Keep what is good of it.",
        fixes,
      }),
    ];
  });
}
