import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { writtenText } from "../../core/length.ts";
import type { Machining, Part } from "../../core/part.ts";
import { floor, isPositive, less, multiply, over, ratio, smallest, subtract } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { Check } from "../check.ts";
import { finding, nameOf, placeOf, rewrite, say } from "../check.ts";
import { limits } from "../limits.ts";

/** A groove, dado or rabbet in a face must not cut through the piece, and should leave wood enough behind it. */
export const jointMustLeaveWood: Check = {
  codes: ["joint/cuts-through", "joint/leaves-thin"],
  run: (context, { parts }) => parts.flatMap((part) => part.machining.flatMap((made) => check(context, part, made))),
};

const kinds = new Set<Machining["kind"]>(["groove", "dado", "rabbet"]);

function check(context: Context, part: Part, made: Machining): readonly Finding[] {
  if (!kinds.has(made.kind) || made.deep === undefined || !made.where.startsWith("inside face")) return [];
  const left = subtract(part.thickness.value, made.deep.value);
  if (!less(left, limits.leastLeft.value)) return [];
  const through = !isPositive(left);
  const what = `a ${made.kind} ${say(context, made.deep.value)} deep`;
  const most = deepest(part.thickness.value);
  const { origin } = made.deep;
  const text = writtenText(most, context.units);
  return [
    finding({
      code: through ? "joint/cuts-through" : "joint/leaves-thin",
      severity: through ? "error" : "warning",
      span: placeOf(made.deep, part.source),
      message: through
        ? `${what} cuts through the ${part.name}, which is ${say(context, part.thickness.value)} thick`
        : `${what} leaves ${say(context, left)} of the ${part.name}, which is ${say(context, part.thickness.value)} thick`,
      reason: through
        ? "Nothing of the piece is left there."
        : `So little wood breaks when the joint is driven home. From memory: at least ${say(context, limits.leastLeft.value)}.`,
      remedy: `Make it ${say(context, most)} deep at most${origin.kind === "written" ? "" : ", by writing its depth"}.`,
      related: [{ span: part.source, message: nameOf(part) }],
      fixes: origin.kind === "written" && isPositive(most) ? [rewrite(origin.span, text)] : [],
    }),
  ];
}

/** Half of the piece, or what leaves enough of a thin one, down to a sixteenth. */
function deepest(thickness: Length): Length {
  const most = smallest(over(thickness, 2), subtract(thickness, limits.leastLeft.value));
  return over(ratio(floor(multiply(most, ratio(16)))), 16);
}
