import type { BenchPart, BenchSection, PlanView } from "../../language/view/bench.ts";
import type { RodBatch, RodRow, RodTable, RodView, Target } from "../../language/view/types.ts";
import type { BenchAnswer, DrawingsAnswer, DrawingTitle, PlanScope, SearchState } from "../../server/protocol.ts";
import { isBenchPart, isPlanScope, isSearchState, readBenchAnswer } from "./bench-messages.ts";
import {
  haveStrings,
  isColumn,
  isCount,
  isDrawing,
  isDrawingTitle,
  isLine,
  isList,
  isRecord,
  isString,
  isTarget,
} from "./guards.ts";

export type { BenchAnswer, BenchPart, BenchSection, DrawingsAnswer, DrawingTitle, PlanScope, PlanView, SearchState };

/** What the host tells the page. */
export type HostMessage =
  /**
   * This is the rod; `stale` says that the text is broken and this is the last one that could be made, `broken` which of
   * its parts stand where an error is or were lost.
   */
  | { readonly type: "show"; readonly view: RodView; readonly stale: boolean; readonly broken: readonly string[] }
  /** There is no rod to show. */
  | { readonly type: "begin" }
  /** The rows with these ids are written where the cursor is; none takes the mark away. */
  | { readonly type: "mark"; readonly rows: readonly string[] }
  /** The drawings there are, and one of them. */
  | { readonly type: "drawings"; readonly answer: DrawingsAnswer }
  /** The parts that are open, and how the search for a plan stands. */
  | { readonly type: "bench"; readonly answer: BenchAnswer }
  /** How the search for a plan gets on. */
  | { readonly type: "searched"; readonly search: SearchState }
  /** Open this part and bring it into view. */
  | { readonly type: "openPart"; readonly part: BenchPart }
  /** Open this drawing and bring the item of it into view. */
  | { readonly type: "openDrawn"; readonly drawn: Drawn }
  /** No drawings are wanted in this window. */
  | { readonly type: "undrawn" }
  /** The language server is not answering; what is shown stays. */
  | { readonly type: "offline" };

/** What the page tells the host. */
export type PageMessage =
  /** The page listens; said anew each time it has been made. */
  | { readonly type: "ready" }
  /** Show where this row is written, by its id. */
  | { readonly type: "reveal"; readonly row: string }
  /** The drawing with this id is looked at, the first one for an unknown id; without an id, none is any more. */
  | { readonly type: "draw"; readonly id: string | undefined }
  /** Show where the part with this id in the drawing at hand, or in that of the plan, is written. */
  | { readonly type: "revealDrawn"; readonly part: string; readonly on: DrawnOn }
  /** These parts are open, this drawing of the plan is looked at, and the plan is to be of this, if that was chosen. */
  | {
      readonly type: "bench";
      readonly parts: readonly BenchPart[];
      readonly sheet: string;
      readonly scope: PlanScope | undefined;
    }
  /** Go on with the search for a plan, or leave it. */
  | { readonly type: "search"; readonly go: "on" | "stop" }
  /** Write down the offcuts that are worth keeping. */
  | { readonly type: "keep" }
  /** So many pieces of the row with this mark, and this id, have been cut; below nought they are taken off again. */
  | { readonly type: "tick"; readonly mark: string; readonly row: string; readonly count: number };

/** An item of a drawing, both by their ids. */
export interface Drawn {
  readonly drawing: string;
  readonly item: string;
}

/** Which of the two drawings on the rod. */
export type DrawnOn = "drawings" | "plan";

/** What the page remembers while it is hidden, and the window from one start to the next. */
export interface SavedState {
  readonly version: 1;
  readonly uri: string;
  /** The row that had the focus. */
  readonly row: string;
  /** How far the page was scrolled, in pixels. */
  readonly scroll: number;
  /** The drawing that was looked at; left out when none was. */
  readonly drawing?: string;
  /** The parts that were open; left out when none was. */
  readonly parts?: readonly BenchPart[];
  /** Of what the plan is to be; left out while that was not chosen. */
  readonly plan?: PlanScope;
}

/** The id of a row of one of the further tables, told apart from those of parts by its first sign. */
export function tableRowId(table: string, index: number): string {
  return `#${table}/${index}`;
}

/** Where the row with the id is written; `undefined` if there is no such row, or nothing it was written as. */
export function targetOfRow(view: RodView, bench: readonly BenchSection[], id: string): Target | undefined {
  const part = view.batches.flatMap((batch) => batch.rows).find((row) => row.id === id);
  const tables = [...view.tables, ...bench.flatMap((section) => section.tables)];
  const others = tables.flatMap((table) => table.rows.filter((_, index) => tableRowId(table.id, index) === id));
  return part?.target ?? others[0]?.target;
}

/** The message if the data are one in every field that is read, else `undefined`. */
export function readHostMessage(data: unknown): HostMessage | undefined {
  if (!isRecord(data)) return undefined;
  if (data.type === "begin" || data.type === "offline" || data.type === "undrawn") return { type: data.type };
  if (data.type === "mark") return isList(data.rows, isString) ? { type: "mark", rows: data.rows } : undefined;
  if (data.type === "drawings") {
    const answer = readDrawingsAnswer(data.answer);
    return answer === undefined ? undefined : { type: "drawings", answer };
  }
  if (data.type === "bench") {
    const answer = readBenchAnswer(data.answer);
    return answer === undefined ? undefined : { type: "bench", answer };
  }
  if (data.type === "searched")
    return isSearchState(data.search) ? { type: "searched", search: data.search } : undefined;
  if (data.type === "openDrawn") {
    const { drawn } = data;
    if (!isRecord(drawn) || !isString(drawn.drawing) || !isString(drawn.item)) return undefined;
    return { type: "openDrawn", drawn: { drawing: drawn.drawing, item: drawn.item } };
  }
  if (data.type === "openPart") return isBenchPart(data.part) ? { type: "openPart", part: data.part } : undefined;
  if (data.type !== "show" || typeof data.stale !== "boolean" || !isRodView(data.view)) return undefined;
  if (!isList(data.broken, isString)) return undefined;
  return { type: "show", view: data.view, stale: data.stale, broken: data.broken };
}

/** The message if the data are one in every field that is read, else `undefined`. */
export function readPageMessage(data: unknown): PageMessage | undefined {
  if (!isRecord(data)) return undefined;
  if (data.type === "ready") return { type: "ready" };
  if (data.type === "reveal" && isString(data.row)) return { type: "reveal", row: data.row };
  if (data.type === "draw" && (data.id === undefined || isString(data.id))) return { type: "draw", id: data.id };
  if (data.type === "revealDrawn" && isString(data.part) && (data.on === "drawings" || data.on === "plan"))
    return { type: "revealDrawn", part: data.part, on: data.on };
  if (data.type === "bench" && isList(data.parts, isBenchPart) && isString(data.sheet)) {
    if (data.scope !== undefined && !isPlanScope(data.scope)) return undefined;
    return { type: "bench", parts: data.parts, sheet: data.sheet, scope: data.scope };
  }
  if (data.type === "search" && (data.go === "on" || data.go === "stop")) return { type: "search", go: data.go };
  if (data.type === "keep") return { type: "keep" };
  if (data.type === "tick" && isString(data.mark) && isString(data.row) && Number.isInteger(data.count))
    return { type: "tick", mark: data.mark, row: data.row, count: Number(data.count) };
  return undefined;
}

/** The state if the data are one of this version, else `undefined`. */
export function readSavedState(data: unknown): SavedState | undefined {
  if (!isRecord(data) || data.version !== 1) return undefined;
  const { uri, row, scroll, drawing, parts, plan } = data;
  if (typeof uri !== "string" || uri === "" || typeof row !== "string" || !isCount(scroll)) return undefined;
  if (drawing !== undefined && !isString(drawing)) return undefined;
  if (parts !== undefined && !isList(parts, isBenchPart)) return undefined;
  if (plan !== undefined && !isPlanScope(plan)) return undefined;
  return {
    version: 1,
    uri,
    row,
    scroll,
    ...(drawing === undefined ? {} : { drawing }),
    ...(parts === undefined ? {} : { parts }),
    ...(plan === undefined ? {} : { plan }),
  };
}

/** Whether the data are a rod of the version this extension shows. */
export function isRodView(data: unknown): data is RodView {
  return (
    isRecord(data) &&
    data.schema === "scantling/rod/1" &&
    haveStrings(data, ["uri", "title", "units", "reading"]) &&
    typeof data.whole === "boolean" &&
    isCount(data.pieces) &&
    isRecord(data.counts) &&
    [data.counts.errors, data.counts.warnings, data.counts.hints].every(isCount) &&
    isList(data.batches, isBatch) &&
    isList(data.tables, isTable) &&
    isList(data.notes, isString)
  );
}

/** The drawings if the data are such in every field that is read, else `undefined`. */
export function readDrawingsAnswer(data: unknown): DrawingsAnswer | undefined {
  if (!isRecord(data) || !isList(data.titles, isDrawingTitle)) return undefined;
  if (data.drawing !== null && !isDrawing(data.drawing)) return undefined;
  return { titles: data.titles, drawing: data.drawing };
}

function isBatch(data: unknown): data is RodBatch {
  return isRecord(data) && haveStrings(data, ["stock", "note"]) && isList(data.rows, isRow);
}

function isRow(data: unknown): data is RodRow {
  return (
    isRecord(data) &&
    haveStrings(data, ["id", "mark", "name", "of", "length", "width", "thickness", "grain", "why"]) &&
    isCount(data.quantity) &&
    (data.done === undefined || isCount(data.done)) &&
    isList(data.notes, isString) &&
    isTarget(data.target)
  );
}

function isTable(data: unknown): data is RodTable {
  return (
    isRecord(data) &&
    haveStrings(data, ["id", "title", "note"]) &&
    isList(data.columns, isColumn) &&
    isList(data.rows, isLine)
  );
}
