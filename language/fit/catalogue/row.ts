import type { Severity } from "../../core/finding.ts";

/** What one code stands for. */
export interface CatalogueRow {
  /** A few words, for a heading. */
  readonly title: string;
  readonly severity: Severity;
  /** One sentence. */
  readonly means: string;
  /** Where its bound was read, or its standing; missing where it follows from geometry or from the language itself. */
  readonly source: string | undefined;
}

export function error(title: string, means: string, source?: string): CatalogueRow {
  return { title, severity: "error", means, source };
}

export function warning(title: string, means: string, source?: string): CatalogueRow {
  return { title, severity: "warning", means, source };
}

export function hint(title: string, means: string, source?: string): CatalogueRow {
  return { title, severity: "hint", means, source };
}
