import type { DrawingView } from "../draw/drawing-view.ts";
import type { RodTable } from "./types.ts";

/** What the rod shows beside the cut list and the drawings, each made only while it is open. */
export type BenchPart = "plan" | "buying" | "settings" | "sticks" | "fit";

/** One open part of the rod: sentences, tables, and for the cutting plan its drawings and steps. */
export interface BenchSection {
  readonly id: BenchPart;
  /** Sentences that stand over the tables. */
  readonly notes: readonly string[];
  readonly tables: readonly BenchTable[];
  /** Missing for all parts but the plan. */
  readonly plan?: PlanView;
  /** What to mind, the usual cautions: nothing here certifies anything. */
  readonly cautions: readonly string[];
}

/** A table of a section; its id is unique in the whole rod. */
export interface BenchTable extends Omit<RodTable, "id"> {
  readonly id: string;
}

/** How sheets and boards are cut up. */
export interface PlanView {
  /** One drawing for each sheet, board or offcut; only the one asked for comes with it, or else the first. */
  readonly titles: readonly { readonly id: string; readonly title: string; readonly scale: string }[];
  /** `null` where there is nothing to lay out. */
  readonly drawing: DrawingView | null;
  readonly steps: readonly PlanLine[];
  /** Offcuts worth keeping, as lines of a build file. */
  readonly keep: readonly string[];
}

/** One cut, or several alike at one setting, in words. */
export interface PlanLine {
  readonly number: number;
  readonly text: string;
  /** More than one person handles alone. */
  readonly heavy: boolean;
}
