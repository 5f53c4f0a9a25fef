import type { PackFault, Unplaced } from "./problem.ts";

/** A length of bar, board or strip that is sold or in the rack; `have` limits how many there are. */
export type BarStock = {
  readonly id: string;
  readonly length: number;
  readonly cost: number;
  readonly have?: number | undefined;
};

/** A length to cut, so many times. */
export type BarPart = { readonly id: string; readonly length: number; readonly quantity: number };

/** Lengths to crosscut from bars, in whole numbers of one unit; `trim` is cut off each end of every bar. */
export type BarProblem = {
  readonly stock: readonly BarStock[];
  readonly kerf: number;
  readonly trim: number;
  readonly parts: readonly BarPart[];
};

/** A bar used, with its pieces and where each begins, from the untrimmed end. */
export type UsedBar = {
  readonly stock: string;
  readonly length: number;
  readonly pieces: readonly { readonly part: string; readonly at: number; readonly length: number }[];
};

/** A cutting plan for bars; `proven` holds when no cheaper purchase holds the parts (no fewer bars at equal prices). */
export type BarPlan = {
  readonly bars: readonly UsedBar[];
  readonly unplaced: readonly Unplaced[];
  readonly faults: readonly PackFault[];
  readonly barsUsed: number;
  readonly cost: number;
  readonly lowerBound: number;
  readonly costBound: number;
  readonly proven: boolean;
};
