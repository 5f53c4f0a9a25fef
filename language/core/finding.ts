import type { Span } from "./span.ts";

/** Errors can't be built or won't work; warnings will bind, sag, split or show; hints the maker may want to know. */
export type Severity = "error" | "warning" | "hint";

export interface Edit {
  readonly span: Span;
  readonly text: string;
}

/** A change of the text that mends a finding. Several of one finding stand best first. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly Edit[];
  /** Whether it may be applied unseen, with all others of its kind. */
  readonly safe: boolean;
}

export interface Related {
  readonly span: Span;
  readonly message: string;
}

/** One thing that is wrong or worth knowing, on the word that must change. */
export interface Finding {
  readonly code: string;
  readonly severity: Severity;
  readonly span: Span;
  /** What is so, and by how much. */
  readonly message: string;
  /** Why it matters. */
  readonly reason: string;
  /** What would do. */
  readonly remedy: string;
  readonly related: readonly Related[];
  readonly fixes: readonly Fix[];
}
