import type { FrontBlock, HingesBlock } from "../core/design.ts";
import { withUnit } from "../core/length.ts";
import { oncePer } from "../core/once-per.ts";
import type { Machining, Part } from "../core/part.ts";
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

/** Whether a hinge is set in a cup: it says the cup, or how that is bored. Any other sits at the edge of its door. */
export function isCupHinge({ cup, bore, deep }: HingesBlock): boolean {
  return (cup ?? bore ?? deep) !== undefined;
}

/** What is cut for a door's hinges at its hinge side; nothing for a front that does not turn. */
export function hingeMachining(context: Context, front: FrontInput): readonly Machining[] {
  const { hinges: use, hinged } = front.whole;
  const block = context.design.hinges.find((hinge) => hinge.name.text === use?.name.text);
  if (use === undefined || block === undefined || hinged === undefined) return [];
  const count = (use.count === undefined ? undefined : pieces(context, use.count, 12)) ?? hingesFor(front);
  const ends = `outer centres ${withUnit(fallback("hinge.fromEnd").value, context.units)} from the ends, further ones evenly between`;
  if (!isCupHinge(block)) {
    const note = `for the leaves of "${use.name.text}", marked from the hinge itself; ${sideOf(front)}; ${ends}`;
    return [{ kind: "mortise", where: `${hinged.value} edge`, count, note }];
  }
  const cup = givenSize(context, block.cup) ?? fallback("hinge.cup");
  const bore = givenSize(context, block.bore) ?? fallback("hinge.bore");
  return [
    {
      kind: "cup",
      where: `back, ${hinged.value} edge`,
      wide: cup,
      from: cupCentre(bore, cup),
      count,
      note: `${sideOf(front)}; ${ends}`,
    },
  ];
}

/** How many hinges the parts of a door are cut for. */
export function hingesCut(parts: readonly Part[]): number | undefined {
  return parts.flatMap(({ machining }) => machining).find(({ kind }) => kind === "cup" || kind === "mortise")?.count;
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
