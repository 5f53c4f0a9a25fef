import type { Finding } from "../../core/finding.ts";
import { writtenText } from "../../core/length.ts";
import { less, toNumber } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { size } from "../../derive/context.ts";
import type { CaseModel, Model } from "../../derive/model.ts";
import { clothingStorageScope, drawerVolume, fixedStorageVolume } from "../../published/clothing-storage.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say, sayVolume, sayWeight } from "../check.ts";
import { limits } from "../limits.ts";
import { weightOfAll } from "../weight.ts";

/** A free-standing chest that can tip should be anchored, and a kick should leave room for a foot. */
export const caseShouldStandSafely: Check = {
  codes: ["case/may-tip", "case/toe-space"],
  run: (context, model) => model.cases.flatMap((one) => [...mayTip(context, model, one), ...toeSpace(context, one)]),
};

function mayTip(context: Context, model: Model, one: CaseModel): readonly Finding[] {
  const flag = one.block.freestanding;
  if (flag === undefined) return [];
  const names = new Set(one.openings.map((opening) => opening.name.text));
  const boxes = model.boxes.filter((box) => names.has(box.opening.name.text));
  const fronts = model.fronts.filter((front) => front.openings.some((opening) => names.has(opening.name.text)));
  const own = model.parts.filter((part) => part.of === `case ${one.name}`);
  const mass = weightOfAll(context, model, [
    ...own,
    ...boxes.flatMap((box) => box.parts),
    ...fronts.flatMap((front) => front.parts),
  ]);
  const drawers = boxes.reduce((sum, box) => {
    const { inside } = box;
    const toObstruction = inside === undefined ? 0 : toNumber(inside.high.value) + toNumber(box.slides.above.value);
    const volume =
      inside === undefined
        ? 0
        : drawerVolume({ toObstruction, width: toNumber(inside.wide.value), depth: toNumber(inside.deep.value) });
    return sum + (volume ?? 0);
  }, 0);
  const boxed = new Set(boxes.map((box) => box.opening.name.text));
  const closed = fronts.flatMap((front) => front.openings).filter((opening) => !boxed.has(opening.name.text));
  const behindDoors = closed.reduce(
    (sum, { wide, high, deep }) =>
      sum +
      (deep === undefined
        ? 0
        : (fixedStorageVolume(toNumber(high.value), toNumber(wide.value), toNumber(deep.value)) ?? 0)),
    0,
  );
  const volume = drawers + behindDoors;
  const scope = clothingStorageScope({ freestanding: true, height: toNumber(one.high.value), mass, volume });
  if (scope === undefined || !scope.inScope) return [];
  return [
    finding({
      code: "case/may-tip",
      severity: "warning",
      span: flag.span,
      message: `at ${say(context, one.high.value)}, about ${sayWeight(context, mass)} and ${sayVolume(context, volume * 1728)}, "${one.name}" is in the scope of the stability standard for clothing storage`,
      reason: `${scope.caution.value} (ASTM F2057-23 cl. 1.1, 16 CFR 1261.)`,
      remedy:
        "Anchor it to the wall at a stud, and read the standard: it names its own tests, which are not made here.",
      related: [{ span: one.block.name.span, message: "the case" }],
    }),
  ];
}

function toeSpace(context: Context, { block }: CaseModel): readonly Finding[] {
  const { kick } = block;
  if (kick === undefined) return [];
  const pairs = [
    { measure: kick.high, least: limits.toeHigh.value, word: "high" },
    { measure: kick.deep, least: limits.toeDeep.value, word: "deep" },
  ];
  return pairs.flatMap(({ measure, least, word }) => {
    const value = size(context, measure);
    if (value === undefined || !less(value.value, least)) return [];
    const text = writtenText(least, context.units);
    return [
      finding({
        code: "case/toe-space",
        severity: "hint",
        span: measure.span,
        message: `a kick ${say(context, value.value)} ${word} leaves little room for a foot: ${say(context, least)} is the least that is usual`,
        reason: `Whoever stands before it stands too far away (${limits.toeHigh.source}).`,
        remedy: `Make it ${say(context, least)} ${word} at least, or allow it where nobody stands.`,
        fixes: [rewrite(measure.span, text)],
      }),
    ];
  });
}
