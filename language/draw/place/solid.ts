import type { Length } from "../../core/length.ts";
import type { Part } from "../../core/part.ts";
import { add, over, subtract } from "../../core/rational.ts";
import type { Span } from "../../core/span.ts";
import type { Stock } from "../../derive/model.ts";

export type Axis = "x" | "y" | "z";

/** From and to along one axis: inches, exact. */
export type Range = readonly [Length, Length];

/** x from left to right, y up, z from the front of the case backwards. */
export type Place = Readonly<Record<Axis, Range>>;

export type Role = "frame" | "case" | "box" | "mount" | "slide" | "front" | "shelf" | "existing";

/** What a cut through it looks like. */
export type Made = "ply" | "solid" | "core" | "metal" | "existing";

/** A piece in its place as it is drawn: an outline without joints. What is housed stands later in a list than what houses it. */
export interface Solid {
  readonly id: string;
  readonly role: Role;
  /** The part that it is; missing for slides and for what stands already. */
  readonly part: Part | undefined;
  readonly name: string;
  readonly of: string;
  readonly place: Place;
  readonly made: Made;
  /** The axis that the face grain runs along, where that matters. */
  readonly grain: Axis | undefined;
  /** Cut out of its front bottom corner, for a kick: to this z, up to this y. */
  readonly notch?: { readonly z: Length; readonly y: Length };
  readonly target: Span;
}

export function from(start: Length, long: Length): Range {
  return [start, add(start, long)];
}

/** The range that ends at `end`. */
export function upTo(end: Length, long: Length): Range {
  return [subtract(end, long), end];
}

export function middled(low: Length, high: Length, long: Length): Range {
  const start = over(subtract(add(low, high), long), 2);
  return from(start, long);
}

export function longOf([start, end]: Range): Length {
  return subtract(end, start);
}

export function madeOf(stock: Stock | undefined): Made {
  if (stock?.kind === "board") return "solid";
  const core = stock?.kind === "sheet" ? stock.block.core?.text : undefined;
  return core === "mdf" || core === "hardboard" || core === "particle" ? "core" : "ply";
}

/** The solid as placed from behind, turned round to be seen from the front of a case so wide and deep. */
export function turnedRound(solid: Solid, wide: Length, deep: Length): Solid {
  const flipped = ([start, end]: Range, extent: Length): Range => [subtract(extent, end), subtract(extent, start)];
  const { x, y, z } = solid.place;
  return { ...solid, place: { x: flipped(x, wide), y, z: flipped(z, deep) } };
}
