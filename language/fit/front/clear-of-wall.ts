import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import { add, less, subtract, toNumber, zero } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import type { CaseModel, FrontModel, Model } from "../../derive/model.ts";
import type { Wall } from "../../derive/walls.ts";
import type { Check } from "../check.ts";
import { finding, say } from "../check.ts";
import { limits } from "../limits.ts";

/**
 * A front beside a wall must come out past it, and past the trim of a doorway that stands out of it. A false front stays
 * where it is, and an inset one behind the frame that it stands in.
 */
export const frontMustPassWall: Check = {
  codes: ["front/meets-wall"],
  run: (context, model) =>
    model.cases.flatMap((home) => home.walls.flatMap((wall) => worst(context, model, home, wall))),
};

/** A front at the end of a case that says a wall, and what is between them. */
interface Beside {
  readonly front: FrontModel;
  readonly clear: Length;
}

function worst(context: Context, model: Model, home: CaseModel, wall: Wall): readonly Finding[] {
  if (wall.past !== undefined && !less(zero, wall.past.value)) return [];
  const all = model.fronts.flatMap((front) => besides(front, home, wall));
  const nearest = all.reduce<Beside | undefined>(
    (least, one) => (least === undefined || less(one.clear, least.clear) ? one : least),
    undefined,
  );
  return nearest === undefined ? [] : near(context, nearest, home, wall);
}

function besides(front: FrontModel, home: CaseModel, wall: Wall): readonly Beside[] {
  const overlay = front.overlays[wall.side]?.value;
  if (overlay === undefined || front.block.kind === "false front") return [];
  return front.openings.flatMap(({ bounds, face, case: of }): readonly Beside[] => {
    const { member, outer } = bounds[wall.side];
    if (of !== home.name || face !== "front" || !outer || member === undefined) return [];
    return [{ front, clear: add(wall.away.value, subtract(member.value, overlay)) }];
  });
}

function near(context: Context, { front, clear }: Beside, home: CaseModel, wall: Wall): readonly Finding[] {
  const least = limits.frontGap.value;
  if (!less(clear, least)) return [];
  const strikes = less(clear, zero);
  const what = `the ${wall.trimmed ? "trim on the wall" : "wall"} at the ${wall.side} of "${home.name}"`;
  const filler = strikes ? `a filler of ${say(context, subtract(least, clear))} or more` : "a filler";
  return [
    finding({
      code: "front/meets-wall",
      severity: strikes ? "error" : "warning",
      span: wall.span,
      message: strikes
        ? `${front.of} reaches ${say(context, subtract(zero, clear))} past ${what}`
        : `${front.of} is ${toNumber(clear) === 0 ? "right at" : `${say(context, clear)} from`} ${what}`,
      reason: strikes
        ? "Opened, it strikes what stands in its way; a drawer does so with its whole front."
        : `Walls are neither straight nor plumb, and a front this near one rubs somewhere. From memory: at least ${say(context, least)} between what moves and what stands.`,
      remedy: `Put ${filler} between case and wall (half an inch to an inch is usual: common practice, no source), or give the front a smaller overlay there.`,
      related: [{ span: front.block.head, message: "the front" }],
    }),
  ];
}
