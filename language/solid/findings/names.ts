import type { Length } from "../../core/length.ts";
import { inUnits } from "../../core/length.ts";
import { ratio, times, toNumber } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { say } from "../../fit/check.ts";
import type { Box } from "../box.ts";
import { extent } from "../box.ts";
import type { Solid } from "../solid.ts";

/** A part as a person says it: `the side of box plan-1`. */
export function nameOf({ part }: Pick<Solid, "part">): string {
  return part.of === `part ${part.name}` ? `the ${part.name}` : `the ${part.name} of ${part.of}`;
}

/** Two parts together: `two mid rails of case one` where they have one name. */
export function bothOf(a: Solid, b: Solid): string {
  const [one, other] = [nameOf(a), nameOf(b)];
  const plural = a.part.name.replace(/f$/, "ve").replace(/$/, "s");
  return one === other ? `two ${plural} of ${a.part.of}` : `${one} and ${other}`;
}

/** The three sizes of a box, width first. */
export function sizesOf(context: Context, box: Box): string {
  return [box.x, box.y, box.z].map((range) => say(context, extent(range))).join(" × ");
}

/** A measure of inches that no tape gives, to a hundredth of an inch or a tenth of a millimetre. */
export function about(context: Context, inches: number): string {
  const steps = context.units === "inches" ? 100 : 254;
  return say(context, rounded(inches, steps));
}

/** As the tape reads it, and no less than that: what a thing must be moved or made wider by. */
export function atLeast(context: Context, inches: number): string {
  const { step } = context.reading;
  const steps = Number.isFinite(inches) ? Math.ceil(inches / toNumber(step) - 1e-6) : 0;
  return say(context, times(step, steps));
}

function rounded(inches: number, steps: number): Length {
  const value = Number.isFinite(inches) ? Math.round(inches * steps) : 0;
  return inUnits(ratio(value, steps), "inches");
}
