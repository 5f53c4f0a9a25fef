import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { less, subtract, zero } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { isCupHinge } from "../../derive/hinging.ts";
import type { Check } from "../check.ts";
import { finding, rewrite, say } from "../check.ts";
import type { PlacedFront } from "../front/placed.ts";
import { placedFronts } from "../front/placed.ts";

/**
 * A door on hinges outside it turns about the back of its hinge edge, and needs its own thickness beside that edge.
 * A cup hinge draws the door in as it opens, so such a door is only held to the gap that all fronts keep.
 */
export const doorMustSwingClear: Check = {
  codes: ["door/cannot-clear"],
  run: (context, model) => {
    const cups = new Set(context.design.hinges.flatMap((one) => (isCupHinge(one) ? [one.name.text] : [])));
    return placedFronts(model).flatMap((fronts) =>
      fronts.flatMap((door) => check(context, fronts, door, cups.has(door.front.whole.hinges?.name.text ?? ""))),
    );
  },
};

function check(
  context: Context,
  fronts: readonly PlacedFront[],
  door: PlacedFront,
  hasCups: boolean,
): readonly Finding[] {
  const { whole, thickness, of } = door.front;
  const { hinged } = whole;
  if (door.front.block.kind !== "door" || hinged === undefined || whole.hinges === undefined) return [];
  if (hasCups || thickness === undefined || hinged.value === "top" || hinged.value === "bottom") return [];
  const gap = nearest(fronts, door, hinged.value);
  if (gap === undefined || !less(gap.wide, thickness.value)) return [];
  const other = hinged.value === "left" ? "right" : "left";
  const clear = nearest(fronts, door, other);
  const swaps = whole.pair === undefined && (clear === undefined || !less(clear.wide, thickness.value));
  return [
    finding({
      code: "door/cannot-clear",
      severity: "error",
      span: hinged.span,
      message: `${of} stands ${say(context, gap.wide)} from ${gap.to.front.of} at its hinges, and swings through ${say(context, thickness.value)} there`,
      reason:
        "A door on hinges at its edge turns about their pin: its own thickness passes beside the edge as it opens.",
      remedy: swaps
        ? `Hinge it on the ${other}, use cup hinges, or leave ${say(context, thickness.value)} between them.`
        : `Use cup hinges, or leave ${say(context, thickness.value)} between them.`,
      related: [{ span: gap.to.front.block.head, message: "the neighbour" }],
      fixes: swaps ? [rewrite(hinged.span, other, `Hinge it on the ${other}`)] : [],
    }),
  ];
}

interface Gap {
  readonly wide: Length;
  readonly to: PlacedFront;
}

/** The neighbour beside one edge of a door, and how far away it stands. */
function nearest(fronts: readonly PlacedFront[], door: PlacedFront, side: "left" | "right"): Gap | undefined {
  let best: Gap | undefined;
  for (const other of fronts) {
    if (other === door || other.rough.top <= door.rough.bottom || door.rough.top <= other.rough.bottom) continue;
    const wide = side === "left" ? subtract(door.left, other.right) : subtract(other.left, door.right);
    if (less(wide, zero) || (best !== undefined && !less(wide, best.wide))) continue;
    best = { wide, to: other };
  }
  return best;
}
