import type { RodRow, RodView } from "../../../language/view/types.ts";
import type { BenchPart, DrawnOn, PlanScope } from "../messages.ts";

/** One part of the page under its own heading: the cut list, the further lists, the drawings. */
export interface Section {
  readonly element: HTMLElement;
  /** Shows a view; only what differs from the last one is touched. */
  update(view: RodView): void;
  /** Hides it when there is nothing in it to show. */
  hide(): void;
}

/** What a section tells the page. */
export interface SectionHost {
  /** The user wants to see where the row with this id is written. */
  reveal(id: string): void;
  /** The user wants to see where the part with this id in a drawing is written. */
  revealDrawn(part: string, on: DrawnOn): void;
  /** The user has these parts open, looks at this drawing of the plan, and wants the plan of this, if that was chosen. */
  bench(parts: readonly BenchPart[], sheet: string, scope: PlanScope | undefined): void;
  /** The user wants the search for a plan to go on, or to stop. */
  search(go: "on" | "stop"): void;
  /** The user wants the offcuts of the plan written down. */
  keep(): void;
  /** So many pieces of the row have been cut; below nought they are taken off again. */
  tick(row: RodRow, count: number): void;
  /** Where the sizes of a part come from, if the cut list says so. */
  whyOf(part: string): string | undefined;
  /** Says something to those who listen; at most once a second. */
  announce(text: string): void;
  /** The user looks at the drawing with this id, or at none any more. */
  draw(id: string | undefined): void;
  /** What there is to say of the row the user is at, or points at; `undefined` when there is none any more. */
  explain(text: string | undefined): void;
  /** The user is now at the row with this id. */
  remember(id: string): void;
}
