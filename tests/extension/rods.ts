import type { RodRow, RodView } from "../../language/view/types.ts";

/** A row with what a test does not care about filled in. */
export function row(id: string, changes: Partial<RodRow> = {}): RodRow {
  return {
    id,
    mark: id.toUpperCase(),
    quantity: 2,
    name: "side",
    of: "box inks",
    length: "20",
    width: "5 1/2",
    thickness: "15/32",
    grain: "along",
    notes: [],
    why: `why ${id}`,
    target: { uri: "file:///job.scant", line: 3, column: 2, endLine: 3, endColumn: 7 },
    ...changes,
  };
}

/** A rod of one stock with the rows given. */
export function rodOf(rows: readonly RodRow[], changes: Partial<RodView> = {}): RodView {
  return {
    schema: "scantling/rod/1",
    uri: "file:///job.scant",
    title: "Seed store",
    units: "inches",
    reading: "1/32 in",
    whole: true,
    pieces: rows.reduce((sum, each) => sum + each.quantity, 0),
    counts: { errors: 0, warnings: 0, hints: 0 },
    batches: rows.length === 0 ? [] : [{ stock: "birch-12", note: "sheet, 15/32 thick", rows }],
    tables: [],
    notes: [],
    ...changes,
  };
}
