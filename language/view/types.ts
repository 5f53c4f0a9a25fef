/**
 * Plain data for people and programs: texts and numbers only, ready to be sent anywhere. Lines and columns of a `Place`
 * count from one; the rod's `Target` counts from zero, as editors do.
 */

export interface ListDocument {
  readonly schema: "scantling/list/1";
  readonly project: string;
  readonly units: "inches" | "millimetres";
  readonly parts: readonly ListPart[];
  readonly findings: readonly ListFinding[];
}

export interface ListSize {
  /** Inches as an exact fraction, `29/2`. */
  readonly exact: string;
  readonly inches: number;
  readonly mm: number;
  /** As the tape shows it in the file's units and reading; a trailing `−` marks a size rounded down. */
  readonly shop: string;
}

export interface ListPart {
  readonly name: string;
  readonly of: string;
  readonly quantity: number;
  readonly stock: string;
  readonly length: ListSize;
  readonly width: ListSize;
  readonly thickness: ListSize;
  readonly grain: "long" | "across" | "none";
  /** The face or edge that shows, and gets the face mark; missing where it does not matter. */
  readonly face?: string;
  /** Machining and what else the bench must know, one line each. */
  readonly notes: readonly string[];
  readonly why: string;
  readonly source: { readonly file: string; readonly line: number; readonly column: number };
}

export interface ListFinding {
  readonly code: string;
  readonly severity: "error" | "warning" | "hint";
  readonly message: string;
  readonly reason: string;
  readonly remedy: string;
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** A place in a file, counted from zero, end exclusive. */
export interface Target {
  readonly uri: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** What the rod shows of one build file. */
export interface RodView {
  readonly schema: "scantling/rod/1";
  readonly uri: string;
  readonly title: string;
  readonly units: "inches" | "millimetres";
  /** What the sizes are read to: `1/32 in`. */
  readonly reading: string;
  /** Whether the whole text could be read; if not, the view holds what is whole. */
  readonly whole: boolean;
  readonly pieces: number;
  readonly counts: { readonly errors: number; readonly warnings: number; readonly hints: number };
  readonly batches: readonly RodBatch[];
  /** Further lists: boxes, hardware. */
  readonly tables: readonly RodTable[];
  readonly notes: readonly string[];
}

/** A plain table for people: every cell is ready to be read. */
export interface RodTable {
  readonly id: "boxes" | "hardware" | "buying";
  readonly title: string;
  readonly columns: readonly { readonly title: string; readonly align: "left" | "right" }[];
  readonly rows: readonly { readonly cells: readonly string[]; readonly target: Target | undefined }[];
  readonly note: string;
}

/** The rows of one stock, longest first. */
export interface RodBatch {
  readonly stock: string;
  /** `sheet, 45/64 thick`. */
  readonly note: string;
  readonly rows: readonly RodRow[];
}

export interface RodRow {
  readonly id: string;
  readonly mark: string;
  readonly quantity: number;
  /** How many of them exist already; missing where the file records nothing as cut. */
  readonly done?: number;
  readonly name: string;
  readonly of: string;
  readonly length: string;
  readonly width: string;
  readonly thickness: string;
  readonly grain: string;
  /** Machining and other notes, one line each. */
  readonly notes: readonly string[];
  readonly why: string;
  readonly target: Target;
}

/** The cutting plan. Sizes of sheets and placements are inches; x runs across the grain of a sheet, y along it. */
export interface PlanDocument {
  readonly schema: "scantling/plan/1";
  readonly project: string;
  readonly units: "inches" | "millimetres";
  readonly sheets: readonly PlanSheet[];
  readonly boards: readonly PlanSheet[];
  /** New sheets, offcuts not counted. */
  readonly sheetsUsed: number;
  readonly lowerBound: number;
  readonly proven: boolean;
  readonly stocks: readonly PlanStock[];
  /** Stocks whose size is not stated. */
  readonly unsized: readonly string[];
  readonly steps: readonly PlanStep[];
  /** Offcuts of new sheets and boards worth keeping, as lines of a build file. */
  readonly keep: readonly string[];
  readonly cautions: readonly string[];
}

export interface PlanStock {
  readonly stock: string;
  readonly kind: "sheet" | "board";
  readonly used: number;
  readonly lowerBound: number;
  readonly proven: boolean;
  readonly inRack: number;
  readonly buy: number;
  readonly cost?: number;
  readonly unplaced: readonly {
    readonly mark: string;
    readonly part: string;
    readonly quantity: number;
    readonly length: string;
    readonly width: string;
    readonly why: string;
  }[];
}

export interface PlanSheet {
  readonly name: string;
  readonly stock: string;
  readonly offcut: boolean;
  readonly width: number;
  readonly height: number;
  readonly placed: readonly {
    readonly part: string;
    readonly mark: string;
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
    readonly turned: boolean;
  }[];
  readonly cuts: readonly PlanCut[];
}

/** One piece that a cut frees, and the cuts made in it. */
export interface PlanCut {
  readonly along: "x" | "y";
  readonly at: ListSize;
  readonly gives: string;
  readonly cuts: readonly PlanCut[];
}

export interface PlanStep {
  readonly number: number;
  readonly sheet: string;
  readonly tool: string;
  readonly kind: "rip" | "crosscut" | "trim";
  readonly setting: ListSize;
  readonly newSetting: boolean;
  readonly from: { readonly width: ListSize; readonly height: ListSize; readonly pounds: number };
  readonly keeps: string;
  readonly falls: string;
  readonly fallsPounds: number;
  readonly heavy: boolean;
  readonly short: boolean;
  readonly stands: readonly string[];
}
