import type { Span } from "../core/span.ts";

/**
 * What a drawing is made of, as plain data. All lengths are millimetres on the paper, x to the right and y downwards
 * from the drawing's left upper corner; whatever shows it may scale the whole. Nothing here has a colour.
 */
export type Item = Line | Shape | Area | Circle | Text | Group;

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Cut edges, edges in view, dimensions and hatching, grain. Widths on paper: `lineWidths`. */
export type Weight = "heavy" | "medium" | "fine" | "hair";

/** Dashed: hidden; chain: a section's place, a middle line, or what stands in front. */
export type Stroke = "solid" | "dashed" | "chain";

export interface Line {
  readonly kind: "line";
  readonly from: Point;
  readonly to: Point;
  readonly weight: Weight;
  readonly stroke: Stroke;
}

/** A run of straight lines; closed when it is filled or says so. */
export interface Shape {
  readonly kind: "shape";
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly weight: Weight | undefined;
  readonly stroke: Stroke;
  readonly fill: "paper" | "ink" | undefined;
}

/** What an area is made of, told by its lines: `hatchLines`. */
export type Hatch = "solid" | "ply" | "core" | "grain" | "metal" | "existing";

/** A closed outline on clear paper, filled with the lines of a material. */
export interface Area {
  readonly kind: "area";
  readonly points: readonly Point[];
  readonly hatch: Hatch | undefined;
  /** The direction of the grain or of the sheet; of length one. */
  readonly along: Point;
  readonly weight: Weight;
}

export interface Circle {
  readonly kind: "circle";
  readonly at: Point;
  readonly radius: number;
  readonly weight: Weight;
  readonly stroke: Stroke;
  readonly fill: "paper" | "ink" | undefined;
}

export interface Text {
  readonly kind: "text";
  /** On the base line. */
  readonly at: Point;
  readonly text: string;
  /** Height of a capital. */
  readonly size: number;
  readonly anchor: "start" | "middle" | "end";
  readonly face: "regular" | "bold";
  /** `up` is read from the right of the sheet. */
  readonly turn: "level" | "up";
  /** Whether the paper is cleared behind it. */
  readonly ground: "clear" | "none";
}

/** Items that are one thing: a part, an opening. */
export interface Group {
  readonly kind: "group";
  /** Unique in its drawing: a part that is drawn several times has `#` and a word behind its id. */
  readonly id: string;
  /** What a person who does not see it is told: name, size, units. */
  readonly name: string;
  readonly target: Span | undefined;
  readonly items: readonly Item[];
}

/** The same as text, for those who do not see the drawing. */
export interface Equivalent {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

export interface Drawing {
  /** Unique in its build, stable while its subject keeps its name: `case chest/front`. */
  readonly id: string;
  readonly title: string;
  /** `1 : 10`, or empty for a drawing to no scale. */
  readonly scale: string;
  /** Millimetres on the paper. */
  readonly wide: number;
  readonly high: number;
  readonly items: readonly Item[];
  readonly equivalent: Equivalent;
}

/** Line widths in millimetres, from the series of ISO 128-2. */
export const lineWidths: Readonly<Record<Weight, number>> = { heavy: 0.5, medium: 0.25, fine: 0.18, hair: 0.13 };

/** Dash and gap lengths in millimetres; empty for an unbroken line. */
export const dashes: Readonly<Record<Stroke, readonly number[]>> = {
  solid: [],
  dashed: [1.8, 0.9],
  chain: [5, 0.9, 0.6, 0.9],
};

/** Heights of capitals in millimetres, from the series of ISO 3098. */
export const letterHeights = { note: 1.8, size: 2.5, name: 3.5, title: 5 } as const;

/** What a capital's height is of the size that fonts go by, in the typeface that is embedded. */
export const capitalShare = 0.66;

export function line(from: Point, to: Point, weight: Weight = "fine", stroke: Stroke = "solid"): Line {
  return { kind: "line", from, to, weight, stroke };
}

/** A rectangle's corners, from two opposite ones. */
export function corners(a: Point, b: Point): readonly Point[] {
  return [a, { x: b.x, y: a.y }, b, { x: a.x, y: b.y }];
}

export function outline(points: readonly Point[], weight: Weight = "medium", stroke: Stroke = "solid"): Shape {
  return { kind: "shape", points, closed: true, weight, stroke, fill: undefined };
}

/** A text with the usual: at the base line's start, level, regular, nothing cleared behind it. */
export function text(at: Point, words: string, more: Partial<Omit<Text, "kind" | "at" | "text">> = {}): Text {
  return {
    kind: "text",
    at,
    text: words,
    size: letterHeights.size,
    anchor: "start",
    face: "regular",
    turn: "level",
    ground: "none",
    ...more,
  };
}
