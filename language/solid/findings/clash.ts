import type { Finding } from "../../core/finding.ts";
import { add, less, zero } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { BoxModel, Model } from "../../derive/model.ts";
import { finding, say } from "../../fit/check.ts";
import { type Clash, thinnest } from "../interference.ts";
import type { DryFitCheck } from "./check.ts";
import { nameOf, sizesOf } from "./names.ts";

/** Two parts must not claim one space. */
export const partsMustNotClash: DryFitCheck = {
  codes: ["dryfit/clash"],
  run: (context, { clashes, model, opposed }) => {
    const meeting = new Set(opposed.flatMap(({ a, b }) => [`${a.of}|${b.of}`, `${b.of}|${a.of}`]));
    const boxes = new Map(model.boxes.map((box) => [box.of, box]));
    const told = clashes.filter(
      (clash) => !meeting.has(`${clash.a.assembly}|${clash.b.assembly}`) && !isTold(model, boxes, clash),
    );
    return told.map((clash) => findingFor(context, clash));
  },
};

/** Whether the sizes alone have said it already: fronts that collide, and a box that is larger than its opening. */
function isTold(model: Model, boxes: ReadonlyMap<string, BoxModel>, { a, b }: Clash): boolean {
  if (isFace(a.assembly) && isFace(b.assembly) && a.assembly !== b.assembly) return true;
  const box = boxes.get(a.assembly) ?? boxes.get(b.assembly);
  if (box === undefined || a.assembly === b.assembly) return false;
  const { opening, slides } = box;
  const inset = model.fronts.find((front) => front.whole.inset !== undefined && front.openings.includes(opening));
  const deep = add(box.deep.value, inset?.thickness?.value ?? zero);
  return (
    less(opening.wide.value, box.wide.value) ||
    less(opening.high.value, add(box.high.value, slides.below.value)) ||
    (opening.deep !== undefined && less(opening.deep.value, deep))
  );
}

function isFace(assembly: string): boolean {
  return /^(front|door|false front) /.test(assembly);
}

function findingFor(context: Context, { a, b, bounds, volume, statements }: Clash): Finding {
  const { axis, by } = thinnest(bounds);
  const across = { x: "sideways", y: "up or down", z: "forwards or backwards" }[axis];
  const [at, ...others] = statements;
  return finding({
    code: "dryfit/clash",
    severity: "error",
    span: at!,
    message: `${nameOf(a)} and ${nameOf(b)} run into each other by ${say(context, by)}`,
    reason: `Put together they claim the same ${sizesOf(context, bounds)}, ${(Number(volume.n) / Number(volume.d)).toFixed(2)} cubic inches of it; wood does not give way.`,
    remedy: `Move one of them ${across} by ${say(context, by)}, or make it that much smaller.`,
    related: others.map((span) => ({ span, message: `${nameOf(b)} comes from here` })),
  });
}
