import type { Finding } from "../../core/finding.ts";
import type { BenchPart, BenchSection, BenchTable } from "../../view/bench.ts";
import { targetOf } from "../../view/rod.ts";

/** A section with what is usual left empty. */
export function section(id: BenchPart, more: Partial<Omit<BenchSection, "id">>): BenchSection {
  return { id, notes: [], tables: [], cautions: [], ...more };
}

/** Columns of words, and of figures, which stand on the right. */
export function columns(...titles: readonly (string | { readonly figures: string })[]): BenchTable["columns"] {
  return titles.map((title) =>
    typeof title === "string" ? { title, align: "left" } : { title: title.figures, align: "right" },
  );
}

/** A table of findings: what is so, what to do, and where it is written. */
export function findingTable(id: string, title: string, findings: readonly Finding[]): BenchTable {
  return {
    id,
    title,
    columns: columns("kind", "what is so", "what to do"),
    rows: findings.map(({ severity, message, remedy, span }) => ({
      cells: [severity, message, remedy],
      target: targetOf(span),
    })),
    note: "",
  };
}
