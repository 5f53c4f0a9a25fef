import type { ListDocument, ListFinding, ListPart, ListSize } from "../../language/view/types.ts";

const size = (shop: string): ListSize => ({ exact: shop, inches: 1, mm: 25.4, shop });

/** A finding with what a test does not care about filled in. */
export function finding(changes: Partial<ListFinding> = {}): ListFinding {
  return {
    code: "slide/too-long",
    severity: "error",
    message: "a 24 slide needs 24 1/2 of depth; this opening has 23 1/2",
    reason: "It would stand out.",
    remedy: "Write 22.",
    file: "file:///shop/job%20two.scant",
    line: 34,
    column: 17,
    endLine: 34,
    endColumn: 19,
    ...changes,
  };
}

export function part(changes: Partial<ListPart> = {}): ListPart {
  return {
    name: "side",
    of: "box inks",
    quantity: 2,
    stock: "birch-12",
    length: size("20"),
    width: size("5 1/2 −"),
    thickness: size("15/32"),
    grain: "long",
    notes: [],
    why: "as long as the slide",
    source: { file: "file:///shop/job.scant", line: 3, column: 1 },
    ...changes,
  };
}

export function listOf(parts: readonly ListPart[], findings: readonly ListFinding[]): ListDocument {
  return { schema: "scantling/list/1", project: "Job", units: "inches", parts, findings };
}
