import type { Severity } from "../../core/finding.ts";

/** What one code stands for. */
export interface CatalogueRow {
  /** A few words, for a heading. */
  readonly title: string;
  readonly severity: Severity;
  /** What it is in some cases instead: a fit that can never hold is an error, and not only a warning. */
  readonly or: Severity | undefined;
  /** One sentence. */
  readonly means: string;
  /** Where its bound was read, or its standing; missing where it follows from geometry or from the language itself. */
  readonly source: string | undefined;
}

export function error(title: string, means: string, source?: string): CatalogueRow {
  return { title, severity: "error", or: undefined, means, source };
}

export function warning(title: string, means: string, source?: string): CatalogueRow {
  return { title, severity: "warning", or: undefined, means, source };
}

export function hint(title: string, means: string, source?: string): CatalogueRow {
  return { title, severity: "hint", or: undefined, means, source };
}

/** A row of a finding that is graver, or milder, in some cases. */
export function orElse(row: CatalogueRow, or: Severity): CatalogueRow {
  return { ...row, or };
}
