import type { Length } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { equal, less, subtract } from "../core/rational.ts";
import { type Axis, alongside, apart, around, axes, type Box, without } from "./box.ts";

/** A part in its place: an outline with boxes added (tongues, bands) and boxes cut away (grooves, rabbets, notches). */
export interface Solid {
  /** `case chest/side`, with its number behind it where there are several. */
  readonly id: string;
  readonly part: Part;
  /** Which of the part's quantity it is, from 0. */
  readonly index: number;
  /** The frame of axes that it lies in: a case, or a standing opening. Solids of different frames are never compared. */
  readonly frame: string;
  /** What it belongs to and moves with: `case chest`, `box plan-1`. */
  readonly assembly: string;
  readonly outline: Box;
  readonly added: readonly Box[];
  readonly cuts: readonly Box[];
  /** What is left of the outline and the added boxes under the cuts: boxes that share nothing. */
  readonly pieces: readonly Box[];
  readonly bounds: Box;
}

/** The size of the case that something in its rear face is turned about in. */
export interface Turn {
  readonly wide: Length;
  readonly deep: Length;
}

/** A solid while its neighbours may still cut into it. */
export interface Draft {
  readonly part: Part;
  readonly index: number;
  readonly frame: string;
  readonly assembly: string;
  readonly turn: Turn | undefined;
  readonly outline: Box;
  readonly added: Box[];
  readonly cuts: Box[];
}

export function solidOf(draft: Draft): Solid {
  const pieces = draft.cuts.reduce<readonly Box[]>(
    (boxes, cut) => boxes.flatMap((box) => without(box, cut)),
    [draft.outline, ...draft.added],
  );
  const { part, index, frame, assembly, outline, added, cuts } = draft;
  return {
    part,
    index,
    frame,
    assembly,
    outline,
    added,
    cuts,
    id: part.quantity === 1 ? part.id : `${part.id} (${index + 1})`,
    pieces,
    bounds: around(pieces) ?? draft.outline,
  };
}

/**
 * How far `a` is from `b` when it looks along an axis, up (1) or down (-1): nought where they touch, less where they
 * overlap. `undefined` where no part of `b` lies before it.
 */
export function gapBetween(a: Solid, b: Solid, axis: Axis, toward: 1 | -1): Length | undefined {
  let least: Length | undefined;
  for (const mine of a.pieces) {
    for (const other of b.pieces) {
      if (!faces(mine, other, axis)) continue;
      // What lies wholly on the other side is not what is looked at.
      if (behind(mine, other, axis, toward)) continue;
      const gap = toward === 1 ? subtract(other[axis].from, mine[axis].to) : subtract(mine[axis].from, other[axis].to);
      if (least === undefined || less(gap, least)) least = gap;
    }
  }
  return least;
}

/** Whether two boxes lie before one another along an axis. */
function faces(a: Box, b: Box, axis: Axis): boolean {
  for (const other of axes) if (other !== axis && !alongside(a, b, other)) return false;
  return true;
}

function behind(a: Box, b: Box, axis: Axis, toward: 1 | -1): boolean {
  return toward === 1 ? !less(a[axis].from, b[axis].to) : !less(b[axis].from, a[axis].to);
}

/** Whether two solids touch face to face, sharing an area and no space. */
export function touch(a: Solid, b: Solid): boolean {
  if (apart(a.bounds, b.bounds)) return false;
  return a.pieces.some((mine) =>
    b.pieces.some(
      (other) =>
        !apart(mine, other) &&
        axes.some(
          (axis) =>
            (equal(mine[axis].to, other[axis].from) || equal(other[axis].to, mine[axis].from)) &&
            faces(mine, other, axis),
        ),
    ),
  );
}
