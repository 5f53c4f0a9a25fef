/** Whether data from another program are what they should be; nothing is trusted that has not been looked at. */
import type { DrawingView } from "../../language/draw/drawing-view.ts";
import type { RodTable, Target } from "../../language/view/types.ts";
import type { DrawingTitle } from "../../server/protocol.ts";

export function isDrawingTitle(data: unknown): data is DrawingTitle {
  return isRecord(data) && haveStrings(data, ["id", "title", "scale"]);
}

export function isDrawing(data: unknown): data is DrawingView {
  if (!isDrawingTitle(data) || !("svg" in data) || !isString(data.svg) || !("textEquivalent" in data)) return false;
  const table = data.textEquivalent;
  return isRecord(table) && isList(table.columns, isString) && isList(table.rows, isStrings);
}

export function isStrings(data: unknown): data is readonly string[] {
  return isList(data, isString);
}

export function isColumn(data: unknown): data is RodTable["columns"][number] {
  return isRecord(data) && haveStrings(data, ["title"]) && (data.align === "left" || data.align === "right");
}

export function isLine(data: unknown): data is RodTable["rows"][number] {
  return isRecord(data) && isList(data.cells, isString) && (data.target === undefined || isTarget(data.target));
}

export function isTarget(data: unknown): data is Target {
  return (
    isRecord(data) &&
    haveStrings(data, ["uri"]) &&
    [data.line, data.column, data.endLine, data.endColumn].every(isCount)
  );
}

export function isRecord(data: unknown): data is Readonly<Record<string, unknown>> {
  return typeof data === "object" && data !== null && !Array.isArray(data);
}

export function haveStrings(data: Readonly<Record<string, unknown>>, names: readonly string[]): boolean {
  return names.every((name) => typeof data[name] === "string");
}

export function isList<T>(data: unknown, fits: (each: unknown) => each is T): data is readonly T[] {
  return Array.isArray(data) && data.every(fits);
}

export function isString(data: unknown): data is string {
  return typeof data === "string";
}

export function isCount(data: unknown): data is number {
  return typeof data === "number" && Number.isFinite(data) && 0 <= data;
}
