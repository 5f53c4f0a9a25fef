import type { RodRow, RodView } from "../../../language/view/types.ts";

/** One part of the page under its own heading: the cut list, and later the drawings and the plan. */
export interface Section {
  readonly element: HTMLElement;
  /** Shows a view; only what differs from the last one is touched. */
  update(view: RodView): void;
  /** Hides it when there is nothing in it to show. */
  hide(): void;
}

/** What a section tells the page. */
export interface SectionHost {
  /** The user wants to see where the row is written. */
  reveal(row: RodRow): void;
  /** The row the user is at, or points at; `undefined` when there is none any more. */
  explain(row: RodRow | undefined): void;
  /** The row the user was at changes. */
  remember(id: string): void;
}
