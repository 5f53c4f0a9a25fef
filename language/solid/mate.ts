import type { Length } from "../core/length.ts";
import { add, less, negate, zero } from "../core/rational.ts";
import { fallback } from "../derive/defaults.ts";
import type { Axis } from "./box.ts";
import { type Draft, gapBetween, type Solid } from "./solid.ts";

/** How two faces meet. Only what is `joined` is held so that it cannot move. */
export type Meeting = "joined" | "play" | "float" | "slide" | "pins" | "hinges" | "shim" | "existing work";

/** Two faces that are meant to meet, before their gap is measured. */
export interface MateDraft {
  readonly a: Draft;
  /** Missing where the other is hardware, or work that stands already. */
  readonly b: Draft | undefined;
  readonly axis: Axis;
  readonly toward: 1 | -1;
  readonly least: Length;
  readonly most: Length;
  readonly how: Meeting;
}

/** Two faces that are meant to meet, their gap in inches and the least and most that the fit allows. */
export interface Mate {
  readonly a: Solid;
  readonly b: Solid | undefined;
  readonly axis: Axis;
  readonly how: Meeting;
  /** Less than nought where they overlap; missing where they do not face each other at all. */
  readonly gap: Length | undefined;
  readonly least: Length;
  readonly most: Length;
  readonly good: boolean;
}

/** What a joint that is meant to be tight may stand open: the cut tolerance. */
export function tightness(): Length {
  return fallback("cut.tolerance").value;
}

/** Two faces that are glued, screwed or housed tight. */
export function joined(a: Draft, b: Draft | undefined, axis: Axis, toward: 1 | -1): readonly MateDraft[] {
  const facing = facingOf(a, axis, toward);
  return b === undefined ? [] : [{ a, b, axis, toward: facing, least: zero, most: tightness(), how: "joined" }];
}

/** Two faces with room between them, from `least` to `most` and the cut tolerance to each side. */
export function loose(
  a: Draft,
  b: Draft | undefined,
  axis: Axis,
  toward: 1 | -1,
  room: { readonly least: Length; readonly most: Length; readonly how: Meeting },
): readonly MateDraft[] {
  if (b === undefined) return [];
  const under = add(room.least, negate(tightness()));
  return [
    {
      a,
      b,
      axis,
      toward: facingOf(a, axis, toward),
      least: less(under, zero) ? zero : under,
      most: add(room.most, tightness()),
      how: room.how,
    },
  ];
}

/** What is laid as seen from behind faces the other way, but for up and down. */
function facingOf(a: Draft, axis: Axis, toward: 1 | -1): 1 | -1 {
  if (a.turn === undefined || axis === "y") return toward;
  return toward === 1 ? -1 : 1;
}

/** A part that hardware or standing work holds. */
export function heldBy(a: Draft, how: Meeting): MateDraft {
  return { a, b: undefined, axis: "z", toward: 1, least: zero, most: zero, how };
}

export function measured(mate: MateDraft, solids: ReadonlyMap<Draft, Solid>): readonly Mate[] {
  const a = solids.get(mate.a);
  const b = mate.b === undefined ? undefined : solids.get(mate.b);
  if (a === undefined) return [];
  const gap = b === undefined ? zero : gapBetween(a, b, mate.axis, mate.toward);
  const good = gap !== undefined && !less(gap, mate.least) && !less(mate.most, gap);
  const { axis, how, least, most } = mate;
  return [{ a, b, axis, how, gap, least, most, good }];
}
