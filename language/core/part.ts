import type { Length } from "./length.ts";
import type { Sourced } from "./sourced.ts";
import type { Span } from "./span.ts";

/** Which way the face grain runs on a part: along its length, along its width, or it does not matter. */
export type Grain = "long" | "across" | "none";

export type StockKind = "sheet" | "board" | "edging";

/** What is cut into a part besides its outline. Lengths in inches, exact. */
export interface Machining {
  readonly kind:
    | "groove"
    | "rabbet"
    | "dado"
    | "tongue"
    | "notch"
    | "pockets"
    | "holes"
    | "cup"
    | "edging"
    | "mitre"
    | "lap"
    | "tails"
    | "fingers"
    | "tenon"
    | "mortise";
  /** Where on the part, in shop words: `inside face, bottom edge`. */
  readonly where: string;
  readonly wide?: Sourced<Length>;
  readonly deep?: Sourced<Length>;
  /** From the edge named in `where`. */
  readonly from?: Sourced<Length>;
  readonly count?: number;
  /** What the machining is for or made with, where that matters at the bench. */
  readonly note?: string;
}

/** A part to be cut: how many of one shape an owner needs. Sizes are finished sizes unless `cutToFit` says otherwise. */
export interface Part {
  /** Stable within a build: owner and part name, `box plan-1/side`. */
  readonly id: string;
  readonly name: string;
  /** The thing it belongs to: `box plan-1`. */
  readonly of: string;
  readonly quantity: number;
  /** The name of its stock; the thickness is the stock's as measured. */
  readonly stock: string;
  readonly stockKind: StockKind;
  readonly length: Sourced<Length>;
  readonly width: Sourced<Length>;
  readonly thickness: Sourced<Length>;
  readonly grain: Grain;
  readonly machining: readonly Machining[];
  /** Face or edge that shows, for the face mark. */
  readonly face?: string;
  /** Why the size must be taken from the work and not from the list. */
  readonly cutToFit?: string;
  /** Anything else that the bench must know. */
  readonly note?: string;
  /** Parts that must come from one strip, in this order. */
  readonly matched?: { readonly group: string; readonly place: number; readonly along: "grain" | "across" };
  readonly source: Span;
}
