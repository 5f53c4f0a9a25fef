import type { CaseBlock, WallUse } from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Span } from "../core/span.ts";
import { type Context, givenDistance } from "./context.ts";
import { fromWall } from "./rules/from-wall.ts";

/** A wall of the room beside a case. */
export interface Wall {
  readonly side: "left" | "right";
  /** From the outside of the case to the wall, or to the trim that stands out of it: less than nought where that stands before the case. */
  readonly away: Sourced<Length>;
  /** How far past the face of the case it runs; missing where it does not end. */
  readonly past: Sourced<Length> | undefined;
  /** Whether it is the trim that comes first. */
  readonly trimmed: boolean;
  readonly span: Span;
}

/** The walls that a case says it stands beside. */
export function wallsOf(context: Context, block: CaseBlock): readonly Wall[] {
  return block.walls.flatMap((use): readonly Wall[] => {
    const read = (measure: WallUse["trim"]): Sourced<Length> | undefined =>
      measure === undefined ? undefined : givenDistance(context, { key: use.key, measure });
    const [away, trim, past] = [use.away, use.trim, use.past].map(read);
    if (away === undefined) return [];
    return [
      {
        side: use.side,
        away: trim === undefined ? away : fromWall(away, trim),
        past,
        trimmed: trim !== undefined,
        span: use.key.span,
      },
    ];
  });
}
