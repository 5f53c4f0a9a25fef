import { fileName, titleOf } from "../core/file-name.ts";
import type { Finding } from "../core/finding.ts";
import { exactText, showText, withUnit } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import type { Span } from "../core/span.ts";
import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import type { CutBatch, CutRow } from "../plan/cut-list.ts";
import { cutList } from "../plan/cut-list.ts";
import { boxesTable } from "./boxes.ts";
import { hardwareTable } from "./hardware.ts";
import { notesOf } from "./machining.ts";
import { ownersText } from "./owners.ts";
import type { RodBatch, RodRow, RodView, Target } from "./types.ts";
import { whyLine } from "./why.ts";

/** What a rod may show instead of the whole list, and beside it. */
export interface Shows {
  readonly batches: readonly CutBatch[];
  /** How many of some parts exist already. */
  readonly doneIn: ((parts: readonly Part[]) => number) | undefined;
}

/** What the rod shows. `whole` says whether the text could be read to its end. */
export function rodView(
  context: Context,
  model: Model,
  findings: readonly Finding[],
  whole: boolean,
  { batches: shown, doneIn }: Shows = { batches: cutList(model), doneIn: undefined },
): RodView {
  const batches = shown.map(
    (batch): RodBatch => ({
      stock: batch.stock,
      note: stockNote(context, model, batch.stock),
      rows: batch.rows.map((row) => rodRow(context, row, doneIn)),
    }),
  );
  const count = (severity: Finding["severity"]): number =>
    findings.filter((finding) => finding.severity === severity).length;
  return {
    schema: "scantling/rod/1",
    uri: context.design.uri,
    title: titleOf(context.design),
    units: context.units,
    reading: withUnit(context.reading.step, context.units),
    whole,
    pieces: model.parts.reduce((sum, part) => sum + part.quantity, 0),
    counts: { errors: count("error"), warnings: count("warning"), hints: count("hint") },
    batches,
    tables: [boxesTable(context, model), hardwareTable(model)].filter((table) => 0 < table.rows.length),
    notes: notesFor(batches),
  };
}

/** What a job is called that says no title: its file, without what all build files end in. */
export function nameOf(uri: string): string {
  return fileName(uri).replace(/\.scant$/, "");
}

function stockNote(context: Context, model: Model, name: string): string {
  const stock = model.stocks.get(name);
  if (stock === undefined) return "";
  const measured = stock.kind === "sheet" && !stock.measured ? ", not measured yet" : "";
  return `${stock.kind}, ${exactText(stock.thickness.value, context.units)} thick${measured}`;
}

function rodRow(context: Context, row: CutRow, doneIn: Shows["doneIn"]): RodRow {
  const part = row.parts[0]!;
  const { reading } = context;
  return {
    id: part.id,
    mark: row.mark,
    quantity: row.quantity,
    ...(doneIn === undefined ? {} : { done: doneIn(row.parts) }),
    name: [...new Set(row.parts.map((one) => one.name))].join(", "),
    of: ownersText(row.parts.map((one) => one.of)),
    length: showText(part.length.value, reading),
    width: showText(part.width.value, reading),
    thickness: exactText(part.thickness.value, reading.units),
    grain: grainText(part),
    notes: notesOf(part, reading),
    why: whyOf(part, context),
    target: targetOf(part.source),
  };
}

export function grainText(part: Part): string {
  switch (part.grain) {
    case "long":
      return "along";
    case "across":
      return "across";
    case "none":
      return "any";
  }
}

/** Length and width of a part with where they come from, in one line. */
export function whyOf(part: Part, context: Context): string {
  return `length: ${whyLine(part.length, context.reading)}; width: ${whyLine(part.width, context.reading)}`;
}

export function targetOf(span: Span): Target {
  return { uri: span.uri, line: span.line, column: span.column, endLine: span.endLine, endColumn: span.endColumn };
}

function notesFor(batches: readonly RodBatch[]): readonly string[] {
  const rounded = batches.some((batch) =>
    batch.rows.some((row) => / [−+]$/.test(row.length) || / [−+]$/.test(row.width)),
  );
  return rounded ? ["A size with − behind it is a hair over what is shown: it was rounded down to the tape."] : [];
}
