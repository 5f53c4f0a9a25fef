import type { BenchPart, BenchSection, BenchTable, PlanLine, PlanView } from "../../language/view/bench.ts";
import type { BenchAnswer, PlanScope, SearchState } from "../../server/protocol.ts";
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
} from "./guards.ts";

/** The parts of the rod beside list and drawings, in the order in which they stand on it. */
export const BENCH_PARTS: readonly BenchPart[] = ["plan", "buying", "settings", "sticks", "fit"];

const STATES: readonly SearchState["state"][] = ["searching", "finished", "halted"];

/** The parts if the data are such in every field that is read, else `undefined`. */
export function readBenchAnswer(data: unknown): BenchAnswer | undefined {
  if (!isRecord(data) || !isList(data.sections, isSection) || !isSearchState(data.search)) return undefined;
  if (data.scope !== undefined && !isPlanScope(data.scope)) return undefined;
  return { sections: data.sections, search: data.search, ...(data.scope === undefined ? {} : { scope: data.scope }) };
}

export function isPlanScope(data: unknown): data is PlanScope {
  return data === "whole" || data === "left";
}

export function isBenchPart(data: unknown): data is BenchPart {
  return BENCH_PARTS.some((part) => part === data);
}

export function isSearchState(data: unknown): data is SearchState {
  return isRecord(data) && STATES.some((state) => state === data.state) && isCount(data.percent);
}

function isSection(data: unknown): data is BenchSection {
  return (
    isRecord(data) &&
    isBenchPart(data.id) &&
    isList(data.notes, isString) &&
    isList(data.cautions, isString) &&
    isList(data.tables, isTable) &&
    (data.plan === undefined || isPlan(data.plan))
  );
}

function isTable(data: unknown): data is BenchTable {
  return (
    isRecord(data) &&
    haveStrings(data, ["id", "title", "note"]) &&
    isList(data.columns, isColumn) &&
    isList(data.rows, isLine)
  );
}

function isPlan(data: unknown): data is PlanView {
  return (
    isRecord(data) &&
    isList(data.titles, isDrawingTitle) &&
    (data.drawing === null || isDrawing(data.drawing)) &&
    isList(data.steps, isStep) &&
    isList(data.keep, isString)
  );
}

function isStep(data: unknown): data is PlanLine {
  return isRecord(data) && isCount(data.number) && isString(data.text) && typeof data.heavy === "boolean";
}
