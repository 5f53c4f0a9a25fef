import type {
  BoardBlock,
  BoxBlock,
  CaseBlock,
  EdgingBlock,
  FrontBlock,
  SheetBlock,
  ShelfBlock,
  SlidesBlock,
} from "../core/design.ts";
import type { Length } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import type { Sourced } from "../core/sourced.ts";
import type { Span, Word } from "../core/span.ts";
import type { HardwareItem } from "./hardware.ts";
import type { Wall } from "./walls.ts";

/** A rectangle seen from the front of a case: inches from its left bottom corner, y upwards. */
export interface Rect {
  readonly x: Length;
  readonly y: Length;
  readonly wide: Length;
  readonly high: Length;
}

/** A sheet, board or edging with the thickness that everything made of it has. */
export type Stock = SheetStock | BoardStock | EdgingStock;

export interface SheetStock {
  readonly kind: "sheet";
  readonly name: string;
  readonly block: SheetBlock;
  readonly thickness: Sourced<Length>;
  /** Whether the thickness was measured, or is only what the label promises. */
  readonly measured: boolean;
}

export interface BoardStock {
  readonly kind: "board";
  readonly name: string;
  readonly block: BoardBlock;
  readonly thickness: Sourced<Length>;
}

export interface EdgingStock {
  readonly kind: "edging";
  readonly name: string;
  readonly block: EdgingBlock;
  readonly thickness: Sourced<Length>;
}

export type Side = "left" | "right" | "top" | "bottom";

/** What bounds an opening on one side. */
export interface Bound {
  /** The width of the frame member or panel there; missing where nothing is known (a standing opening). */
  readonly member: Sourced<Length> | undefined;
  /** Whether it is the outside of the case. */
  readonly outer: boolean;
  /** How far the panel behind lies from the opening's edge; missing where there is none. */
  readonly beside: Sourced<Length> | undefined;
  /** Whether two openings share the member and no panel stands behind it: one mount fills its width. */
  readonly shared: boolean;
  /** Where the member is written: the same place is the same member. */
  readonly at?: Span;
}

/** A space that something goes into. */
export interface Opening {
  readonly name: Word;
  /** The smallest reading: it governs what goes in. */
  readonly wide: Sourced<Length>;
  readonly high: Sourced<Length>;
  /** The largest reading: it governs what covers it. */
  readonly widest: Sourced<Length>;
  readonly highest: Sourced<Length>;
  /** From its front edge to what stands behind; missing where it has not been measured. */
  readonly deep: Sourced<Length> | undefined;
  /** Depth behind the face frame, where a frame stands before it. */
  readonly behindFrame: Sourced<Length> | undefined;
  readonly bounds: Readonly<Record<Side, Bound>>;
  readonly framed: boolean;
  readonly case: string | undefined;
  readonly face: "front" | "rear";
  readonly rect: Rect | undefined;
  readonly span: Span;
}

/** Openings by name. */
export type OpeningTable = Pick<ReadonlyMap<string, Opening>, "get">;

export interface CaseModel {
  readonly block: CaseBlock;
  readonly name: string;
  readonly wide: Sourced<Length>;
  readonly high: Sourced<Length>;
  readonly deep: Sourced<Length>;
  readonly openings: readonly Opening[];
  readonly members: readonly Member[];
  readonly panels: Stock | undefined;
  readonly frame: Stock | undefined;
  readonly kick: Sourced<Length> | undefined;
  readonly walls: readonly Wall[];
}

/** A member of a face frame, or a partition, in its place. */
export interface Member {
  readonly kind: "stile" | "rail" | "partition";
  readonly length: Sourced<Length>;
  readonly width: Sourced<Length>;
  readonly rect: Rect;
  readonly face: "front" | "rear";
  readonly span: Span;
}

export interface SlideModel {
  readonly block: SlidesBlock;
  readonly name: string;
  /** The length of the slide used; missing where none fits. */
  readonly length: Sourced<Length> | undefined;
  /** What the depth leaves for it, by the length that it is named by. */
  readonly room: Sourced<Length> | undefined;
  /** What the depth leaves for the box on it. */
  readonly boxRoom: Sourced<Length> | undefined;
  /** The series, shortest first. */
  readonly series: readonly Sourced<Length>[];
  readonly clearance: Sourced<Length>;
  readonly above: Sourced<Length>;
  readonly below: Sourced<Length>;
  readonly behind: Sourced<Length>;
  /** How far it comes out; of a standard extension as little as is usual. */
  readonly travel: Sourced<Length> | undefined;
  /** How far it may come out: of a standard extension as far as is usual. What must not tip is judged by it. */
  readonly farthest: Sourced<Length> | undefined;
}

export interface BoxModel {
  readonly block: BoxBlock;
  /** The block with what it takes over from the one that it is like. */
  readonly whole: BoxBlock;
  readonly of: string;
  readonly opening: Opening;
  readonly slides: SlideModel;
  readonly wide: Sourced<Length>;
  readonly high: Sourced<Length>;
  readonly deep: Sourced<Length>;
  readonly inside:
    | { readonly wide: Sourced<Length>; readonly deep: Sourced<Length>; readonly high: Sourced<Length> }
    | undefined;
  readonly sides: Stock;
  readonly bottom: Stock | undefined;
  readonly parts: readonly Part[];
}

/** What a side-mounted slide is screwed to where the case side lies behind the edge of the opening. */
export interface MountModel {
  readonly of: string;
  /** The openings whose slides it carries: several where their mounts would run into each other. */
  readonly openings: readonly Opening[];
  readonly side: "left" | "right" | "middle";
  /** What must be filled for the slide to be flush with the opening's edge. */
  readonly need: Sourced<Length>;
  readonly layers: readonly Stock[];
  /** What the layers measure together. */
  readonly built: Sourced<Length>;
  /** What is left to shim. */
  readonly left: Sourced<Length>;
  /** Height of its middle above the floor of the opening. */
  readonly at: Sourced<Length>;
  readonly high: Sourced<Length>;
  readonly long: Sourced<Length>;
  readonly parts: readonly Part[];
}

export interface FrontModel {
  readonly block: FrontBlock;
  readonly whole: FrontBlock;
  readonly of: string;
  readonly openings: readonly Opening[];
  /** Of one leaf. */
  readonly wide: Sourced<Length>;
  readonly high: Sourced<Length>;
  readonly leaves: number;
  readonly thickness: Sourced<Length> | undefined;
  readonly overlays: Readonly<Record<Side, Sourced<Length> | undefined>>;
  /** How far it opens, in degrees, where it turns. */
  readonly opens: Sourced<number>;
  readonly parts: readonly Part[];
}

export interface ShelfModel {
  readonly block: ShelfBlock;
  /** The block with what it takes over from the one that it is like. */
  readonly whole: ShelfBlock;
  readonly of: string;
  readonly opening: Opening;
  /** How high the upper face of each is above the floor of the opening; missing where they are spread evenly. */
  readonly at: readonly Sourced<Length>[] | undefined;
  readonly parts: readonly Part[];
}

/** Everything that was derived. */
export interface Model {
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly openings: readonly Opening[];
  readonly cases: readonly CaseModel[];
  readonly boxes: readonly BoxModel[];
  readonly mounts: readonly MountModel[];
  readonly fronts: readonly FrontModel[];
  readonly shelves: readonly ShelfModel[];
  readonly parts: readonly Part[];
  readonly hardware: readonly HardwareItem[];
}
