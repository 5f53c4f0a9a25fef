import type { Count, FrontBlock } from "../core/design.ts";
import { toNumber } from "../core/rational.ts";
import type { Sourced } from "../core/sourced.ts";
import { amount, type Context, found } from "./context.ts";

/** Hinges whose pin stands outside the door let it turn right round to the side of its case. */
const most = 270;

const rightAngle: Sourced<number> = {
  value: 90,
  origin: {
    kind: "default",
    key: "hinge.opens",
    tag: "common practice",
    because: "the least that any hinge opens to; what comes out past the door must clear it there",
    source: undefined,
  },
};

/** How far a door opens, in degrees: as it says itself, as its hinges do, or to a right angle. */
export function openingAngle(context: Context, { opens, hinges }: FrontBlock): Sourced<number> {
  const block = context.design.hinges.find((one) => one.name.text === hinges?.name.text);
  return degrees(context, opens) ?? degrees(context, block?.opens) ?? rightAngle;
}

/** An angle that is written, or a finding and `undefined`. */
export function degrees(context: Context, said: Count | undefined): Sourced<number> | undefined {
  const read = said === undefined ? undefined : amount(context, said.value);
  if (said === undefined || read === undefined) return undefined;
  const value = toNumber(read);
  if (0 < value && value <= most)
    return { value, origin: { kind: "written", span: said.value.span, text: `${value} degrees` } };
  found(context, {
    code: "door/no-angle",
    severity: "error",
    span: said.value.span,
    message: `no door opens to ${value} degrees`,
    reason: `A door at a right angle stands at 90, one that is folded right back at 180; ${most} is as far as any hinge goes.`,
    remedy: `Write the angle on the hinge's sheet of sizes, more than nought and ${most} at most.`,
  });
  return undefined;
}
