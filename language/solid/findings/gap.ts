import type { Finding } from "../../core/finding.ts";
import { less, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { finding, say } from "../../fit/check.ts";
import type { Mate } from "../mate.ts";
import type { Solid } from "../solid.ts";
import type { DryFitCheck } from "./check.ts";
import { nameOf } from "./names.ts";

/** Faces that are meant to meet must meet within the fit's tolerance, and a shelf must have something to lie on. */
export const facesMustMeet: DryFitCheck = {
  codes: ["dryfit/gap", "dryfit/unsupported"],
  run: (context, { gaps }) => gaps.flatMap((mate) => (mate.b === undefined ? [] : gapAt(context, mate))),
};

function gapAt(context: Context, mate: Mate): readonly Finding[] {
  const { a, b, gap, least, most, how } = mate;
  // What overlaps is a clash, and is told as one.
  if (b === undefined || (gap !== undefined && gap.n < 0n) || isCutThrough(a) || isCutThrough(b)) return [];
  if (how === "pins" || a.part.name === "shelf")
    return gap !== undefined && less(gap, least) ? [] : [unsupported(context, mate)];
  const isWide = gap === undefined || less(most, gap);
  const said = gap === undefined ? "do not meet at all" : `stand ${say(context, gap)} apart`;
  const off = gap === undefined ? undefined : isWide ? subtract(gap, most) : subtract(least, gap);
  return [
    finding({
      code: "dryfit/gap",
      severity: "warning",
      span: a.part.source,
      message: `${nameOf(a)} and ${nameOf(b)} ${said}; ${say(context, least)} to ${say(context, most)} is what this fit allows`,
      reason: isWide
        ? "A joint that stands open holds nothing, and glue does not bridge it."
        : "Without this room it binds, or does not go in at all.",
      remedy:
        off === undefined
          ? "Check the sizes and places of both."
          : `Make it ${say(context, off)} ${isWide ? "longer" : "shorter"}, or change what it meets.`,
      related: [{ span: b.part.source, message: `${nameOf(b)} comes from here` }],
    }),
  ];
}

/** A joint as deep as its wood is thick has a finding of its own. */
function isCutThrough({ part }: Solid): boolean {
  return part.machining.some(
    ({ kind, deep }) =>
      ["groove", "rabbet", "dado", "lap"].includes(kind) &&
      deep !== undefined &&
      part.name !== "panel" &&
      !less(deep.value, part.thickness.value),
  );
}

function unsupported(context: Context, { a, b, gap }: Mate): Finding {
  const away = gap === undefined ? "" : `: the nearest panel is ${say(context, gap)} away`;
  return finding({
    code: "dryfit/unsupported",
    severity: "warning",
    span: a.part.source,
    message: `one end of ${nameOf(a)} has nothing to lie on${away}`,
    reason: "Pins stand in a side or a partition; a face frame alone carries no shelf.",
    remedy: "Give the case a partition behind that stile (partitions STOCK), or leave the shelf out.",
    related: b === undefined ? [] : [{ span: b.part.source, message: "the nearest panel" }],
  });
}
