import type { FrontBlock } from "../core/design.ts";
import { withUnit } from "../core/length.ts";
import { oncePer } from "../core/once-per.ts";
import type { Machining } from "../core/part.ts";
import { toNumber } from "../core/rational.ts";
import { hingeCount } from "../published/hinges.ts";
import type { Context } from "./context.ts";
import { givenSize, pieces } from "./context.ts";
import { fallback } from "./defaults.ts";
import type { FrontInput } from "./front-parts.ts";
import { cupCentre } from "./rules/cup-centre.ts";

/** A pair of doors that says no edge turns on its two outer ones: the word that makes it a pair says so. */
export const hung = oncePer((whole: FrontBlock): FrontBlock => {
  const { pair } = whole;
  if (whole.kind !== "door" || pair === undefined || whole.hinged !== undefined) return whole;
  return { ...whole, hinged: { key: pair, value: "left", span: pair.span } };
});

/** The cups bored in a door's hinge side; nothing for a front that does not turn. */
export function cupMachining(context: Context, front: FrontInput): readonly Machining[] {
  const use = front.whole.hinges;
  const block =
    use === undefined ? undefined : context.design.hinges.find((hinge) => hinge.name.text === use.name.text);
  if (use === undefined || block === undefined || front.whole.hinged === undefined) return [];
  const cup = givenSize(context, block.cup) ?? fallback("hinge.cup");
  const bore = givenSize(context, block.bore) ?? fallback("hinge.bore");
  const written = use.count === undefined ? undefined : pieces(context, use.count, 12);
  return [
    {
      kind: "cup",
      where: `back, ${front.whole.hinged.value} edge`,
      wide: cup,
      from: cupCentre(bore, cup),
      count: written ?? hingesFor(front),
      note: `${sideOf(front)}; outer centres ${withUnit(fallback("hinge.fromEnd").value, context.units)} from the ends, further ones evenly between`,
    },
  ];
}

/** The two leaves of a pair are mirror images, and stand in one row of the list. */
function sideOf({ leaves, whole }: FrontInput): string {
  const lies = whole.hinged?.value === "top" || whole.hinged?.value === "bottom";
  return leaves === 1 || lies
    ? "hinge side only"
    : "hinge side only: the left leaf's left edge, the right leaf's right edge";
}

/** Hinges by height; by weight they are checked once the door's weight is known. */
export function hingesFor(front: FrontInput): number {
  return hingeCount(toNumber(front.high.value), 0)?.value ?? 5;
}
