import type { DrawingView } from "../../language/draw/drawing-view.ts";
import type { RodBatch, RodRow, RodTable, RodView, Target } from "../../language/view/types.ts";

import type { DrawingsAnswer, DrawingTitle } from "../../server/protocol.ts";

export type { DrawingsAnswer, DrawingTitle };

/** What the host tells the page. */
export type HostMessage =
  /** This is the rod; `stale` says that the text is broken and this is the last one that could be made. */
  | { readonly type: "show"; readonly view: RodView; readonly stale: boolean }
  /** There is no rod to show. */
  | { readonly type: "begin" }
  /** The rows with these ids are written where the cursor is; none takes the mark away. */
  | { readonly type: "mark"; readonly rows: readonly string[] }
  /** The drawings there are, and one of them. */
  | { readonly type: "drawings"; readonly answer: DrawingsAnswer }
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
  /** Show where the part with this id in the drawing at hand is written. */
  | { readonly type: "revealDrawn"; readonly part: string };

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
}

/** The id of a row of one of the further tables, told apart from those of parts by its first sign. */
export function tableRowId(table: string, index: number): string {
  return `#${table}/${index}`;
}

/** Where the row with the id is written; `undefined` if there is no such row, or nothing it was written as. */
export function targetOfRow(view: RodView, id: string): Target | undefined {
  const part = view.batches.flatMap((batch) => batch.rows).find((row) => row.id === id);
  const others = view.tables.flatMap((table) => table.rows.filter((_, index) => tableRowId(table.id, index) === id));
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
  if (data.type !== "show" || typeof data.stale !== "boolean" || !isRodView(data.view)) return undefined;
  return { type: "show", view: data.view, stale: data.stale };
}

/** The message if the data are one in every field that is read, else `undefined`. */
export function readPageMessage(data: unknown): PageMessage | undefined {
  if (!isRecord(data)) return undefined;
  if (data.type === "ready") return { type: "ready" };
  if (data.type === "reveal" && isString(data.row)) return { type: "reveal", row: data.row };
  if (data.type === "draw" && (data.id === undefined || isString(data.id))) return { type: "draw", id: data.id };
  if (data.type === "revealDrawn" && isString(data.part)) return { type: "revealDrawn", part: data.part };
  return undefined;
}

/** The state if the data are one of this version, else `undefined`. */
export function readSavedState(data: unknown): SavedState | undefined {
  if (!isRecord(data) || data.version !== 1) return undefined;
  const { uri, row, scroll, drawing } = data;
  if (typeof uri !== "string" || uri === "" || typeof row !== "string" || !isCount(scroll)) return undefined;
  if (drawing !== undefined && !isString(drawing)) return undefined;
  return { version: 1, uri, row, scroll, ...(drawing === undefined ? {} : { drawing }) };
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

function isDrawingTitle(data: unknown): data is DrawingTitle {
  return isRecord(data) && haveStrings(data, ["id", "title", "scale"]);
}

function isDrawing(data: unknown): data is DrawingView {
  if (!isDrawingTitle(data) || !("svg" in data) || !isString(data.svg) || !("textEquivalent" in data)) return false;
  const table = data.textEquivalent;
  return isRecord(table) && isList(table.columns, isString) && isList(table.rows, isStrings);
}

function isStrings(data: unknown): data is readonly string[] {
  return isList(data, isString);
}

function isBatch(data: unknown): data is RodBatch {
  return isRecord(data) && haveStrings(data, ["stock", "note"]) && isList(data.rows, isRow);
}

function isRow(data: unknown): data is RodRow {
  return (
    isRecord(data) &&
    haveStrings(data, ["id", "mark", "name", "of", "length", "width", "thickness", "grain", "why"]) &&
    isCount(data.quantity) &&
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

function isColumn(data: unknown): data is RodTable["columns"][number] {
  return isRecord(data) && haveStrings(data, ["title"]) && (data.align === "left" || data.align === "right");
}

function isLine(data: unknown): data is RodTable["rows"][number] {
  return isRecord(data) && isList(data.cells, isString) && (data.target === undefined || isTarget(data.target));
}

function isTarget(data: unknown): data is Target {
  return (
    isRecord(data) &&
    haveStrings(data, ["uri"]) &&
    [data.line, data.column, data.endLine, data.endColumn].every(isCount)
  );
}

function isRecord(data: unknown): data is Readonly<Record<string, unknown>> {
  return typeof data === "object" && data !== null && !Array.isArray(data);
}

function haveStrings(data: Readonly<Record<string, unknown>>, names: readonly string[]): boolean {
  return names.every((name) => typeof data[name] === "string");
}

function isList<T>(data: unknown, fits: (each: unknown) => each is T): data is readonly T[] {
  return Array.isArray(data) && data.every(fits);
}

function isString(data: unknown): data is string {
  return typeof data === "string";
}

function isCount(data: unknown): data is number {
  return typeof data === "number" && Number.isFinite(data) && 0 <= data;
}
