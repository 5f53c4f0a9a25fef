import type { Severity } from "../../language/core/finding.ts";
import type { ListFinding } from "../../language/view/types.ts";

/** What `check --json` prints; every finding once, under the file that it stands in. */
export interface CheckDocument {
  readonly schema: "scantling/check/1";
  readonly files: readonly { readonly file: string; readonly findings: readonly ListFinding[] }[];
  readonly errors: number;
  readonly warnings: number;
  readonly hints: number;
}

/** The files checked in the order they were named, those they use with findings behind them. */
export function checkDocument(checked: readonly string[], findings: readonly ListFinding[]): CheckDocument {
  const files = new Set([...checked, ...findings.map((finding) => finding.file)]);
  const count = (severity: Severity): number => findings.filter((finding) => finding.severity === severity).length;
  return {
    schema: "scantling/check/1",
    files: [...files].map((file) => ({ file, findings: findings.filter((finding) => finding.file === file) })),
    errors: count("error"),
    warnings: count("warning"),
    hints: count("hint"),
  };
}
