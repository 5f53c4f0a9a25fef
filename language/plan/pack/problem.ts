/**
 * What a packing of sheets is asked and answers. Every length is a whole number of one unit chosen by the caller, so
 * that all sums are exact; x runs along `width`, y along `height`, from the sheet's corner.
 */

/** A kind of sheet, or one offcut in the rack; `have` limits how many there are, and an offcut's cost counts as paid. */
export type SheetStock = {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly cost: number;
  readonly have?: number | undefined;
  readonly offcut?: boolean | undefined;
};

/** A part to cut; `turn` "fixed" keeps width along the sheet's width (grain), `group` names a row cut from one strip. */
export type SheetPart = {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly quantity: number;
  readonly turn: "fixed" | "free";
  readonly group?: string | undefined;
};

/** A matched row: its parts lie in the order given by the list of parts, along x or along y; "x" when not stated. */
export type MatchedRow = { readonly id: string; readonly along: "x" | "y" };

/** The sheets there are, what the saw takes, and the parts; `trim` is cut off all four edges of every full sheet. */
export type SheetProblem = {
  readonly sheets: readonly SheetStock[];
  readonly kerf: number;
  readonly trim: number;
  readonly parts: readonly SheetPart[];
  readonly rows?: readonly MatchedRow[] | undefined;
};

/** One part in its place on a sheet: corner, size as it lies, and whether it was turned. */
export type Placement = {
  readonly part: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly turned: boolean;
};

/** A rectangle of a sheet as the saw leaves it: a part, a remainder, or something cut on into pieces along one way. */
export type CutPiece = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly content:
    | { readonly kind: "part"; readonly part: string; readonly turned: boolean }
    | { readonly kind: "remainder" }
    | { readonly kind: "cut"; readonly along: "x" | "y"; readonly pieces: readonly CutPiece[] };
};

/** A sheet used: which stock, where the parts lie, and the tree of cuts that frees them (its root is the trimmed sheet). */
export type UsedSheet = {
  readonly stock: string;
  readonly width: number;
  readonly height: number;
  readonly placed: readonly Placement[];
  readonly cuts: CutPiece;
};

/** Why parts have no place: no sheet is large enough, the stock ran out, or a figure is not a size or a count. */
export type Unplaced = {
  readonly part: string;
  readonly quantity: number;
  readonly why: "larger than every sheet" | "no stock left" | "not a size" | "not a count";
};

/** Something in the input that could not be used, named by the id it stands on ("" for the saw). */
export type PackFault = { readonly id: string; readonly why: string };

/** A least number that was shown, and the reason that showed it. */
export type BoundReason = { readonly sheets: number; readonly cost: number; readonly because: string };

/**
 * A cutting plan for sheets. `sheetsUsed` and `lowerBound` count new sheets, not offcuts; `proven` holds only when the
 * plan places all that fits and meets the bound in cost, or in number where all new sheets cost the same.
 */
export type SheetPlan = {
  readonly sheets: readonly UsedSheet[];
  readonly unplaced: readonly Unplaced[];
  readonly faults: readonly PackFault[];
  readonly sheetsUsed: number;
  readonly offcutsUsed: number;
  readonly cost: number;
  readonly lowerBound: number;
  readonly costBound: number;
  readonly proven: boolean;
  readonly reasons: readonly BoundReason[];
};
