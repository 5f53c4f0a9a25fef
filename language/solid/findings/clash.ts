import type { Finding } from "../../core/finding.ts";
import { add, less, type Rational, zero } from "../../core/rational.ts";
import type { Span } from "../../core/span.ts";
import type { Context } from "../../derive/context.ts";
import type { Model } from "../../derive/model.ts";
import { finding, say } from "../../fit/check.ts";
import { type Clash, thinnest } from "../interference.ts";
import type { Solid } from "../solid.ts";
import type { DryFitCheck } from "./check.ts";
import { bothOf, nameOf, sizesOf } from "./names.ts";

/** Two parts must not claim one space. */
export const partsMustNotClash: DryFitCheck = {
  codes: ["dryfit/clash"],
  run: (context, { clashes, model, opposed }) => {
    const told = new Set(opposed.flatMap(({ a, b }) => [`${a.of}|${b.of}`, `${b.of}|${a.of}`]));
    const isNew = (clash: Clash): boolean =>
      !told.has(`${clash.a.assembly}|${clash.b.assembly}`) &&
      !saidBySizes(model, clash) &&
      !clash.statements.some((span) => lacksSize(context, span));
    return clashes.filter(isNew).map((clash) => findingFor(context, clash));
  },
};

/** Whether nothing was left for some part of a statement: what is there has no room either. */
function lacksSize({ findings }: Context, { uri, start }: Span): boolean {
  return findings.some(({ code, span }) => code === "part/no-size" && span.uri === uri && span.start === start);
}

/** Whether other checks say it from the sizes alone. */
function saidBySizes(model: Model, { a, b }: Clash): boolean {
  return tenonsMeet(a, b) || filledTwice(model, a, b) || facesCollide(model, a, b) || tooLarge(model, a, b);
}

/** Tenons of two rails that meet in one stile. */
function tenonsMeet(a: Solid, b: Solid): boolean {
  return [a, b].every(({ part }) => part.machining.some(({ kind }) => kind === "tenon"));
}

/** Two boxes or two fronts of one opening, or a box and a shelf. */
function filledTwice({ boxes, fronts, shelves }: Model, a: Solid, b: Solid): boolean {
  const named = (of: string) => [...boxes, ...fronts].filter((one) => one.of === of).length;
  if (1 < named(a.assembly) || 1 < named(b.assembly)) return true;
  const box = boxes.find(({ of }) => of === a.assembly || of === b.assembly);
  const shelf = shelves.find(({ of }) => of === a.assembly || of === b.assembly);
  return box !== undefined && shelf !== undefined && box.opening.name.text === shelf.opening.name.text;
}

/** Fronts that cover each other, and an inset front that a shelf stands in the way of. */
function facesCollide({ fronts, shelves }: Model, a: Solid, b: Solid): boolean {
  const faces = fronts.filter(({ of }) => of === a.assembly || of === b.assembly);
  if (faces.length === 2) return true;
  const isShelf = shelves.some(({ of }) => of === a.assembly || of === b.assembly);
  return isShelf && faces[0]?.whole.inset !== undefined;
}

/** A box that is larger than its opening. */
function tooLarge({ boxes, fronts }: Model, a: Solid, b: Solid): boolean {
  const box = boxes.find(({ of }) => of === a.assembly || of === b.assembly);
  if (box === undefined || a.assembly === b.assembly) return false;
  const { opening, slides } = box;
  const inset = fronts.find((front) => front.whole.inset !== undefined && front.openings.includes(opening));
  const deep = add(box.deep.value, inset?.thickness?.value ?? zero);
  return (
    less(opening.wide.value, box.wide.value) ||
    less(opening.high.value, add(box.high.value, slides.below.value)) ||
    (opening.deep !== undefined && less(opening.deep.value, deep))
  );
}

function findingFor(context: Context, { a, b, bounds, volume, statements }: Clash): Finding {
  const { axis, by } = thinnest(bounds);
  const across = { x: "sideways", y: "up or down", z: "forwards or backwards" }[axis];
  const [at, ...others] = statements;
  return finding({
    code: "dryfit/clash",
    severity: "error",
    span: at!,
    message: `${bothOf(a, b)} run into each other by ${say(context, by)}`,
    reason: `Put together they claim the same ${sizesOf(context, bounds)}, ${shared(context, volume)} of it; wood does not give way.`,
    remedy: `Move one of them ${across} by ${say(context, by)}, or make it that much smaller.`,
    related: others.map((span) => ({ span, message: `${nameOf(b)} comes from here` })),
  });
}

/** What two parts claim at once, of cubic inches: `0.42 cubic inches`, `6.9 cubic centimetres`. */
function shared(context: Context, { n, d }: Rational): string {
  const inches = Number(n) / Number(d);
  if (context.units === "inches") return `${inches.toFixed(2)} cubic inches`;
  return `${(inches * 2.54 ** 3).toFixed(1)} cubic centimetres`;
}
