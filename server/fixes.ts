import type { Edit, Finding, Fix } from "../language/core/finding.ts";

/**
 * The edits of one file that may be made together unseen: of each finding its best fix, if that is safe, stays in the
 * file, and does not touch what an earlier one changes. In the order of the text.
 */
export function safeEdits(findings: readonly Finding[], uri: string): readonly Edit[] {
  const taken: Edit[] = [];
  for (const { fixes } of findings) {
    const best = fixes[0];
    if (best === undefined || !best.safe || !staysIn(best, uri)) continue;
    const fresh = best.edits.filter((edit) => !taken.some((other) => isSame(edit, other)));
    if (!fresh.some((edit) => taken.some((other) => overlaps(edit, other)))) taken.push(...fresh);
  }
  return taken.sort((a, b) => a.span.start - b.span.start);
}

function staysIn(fix: Fix, uri: string): boolean {
  return fix.edits.every((edit) => edit.span.uri === uri);
}

function isSame(a: Edit, b: Edit): boolean {
  return a.span.start === b.span.start && a.span.end === b.span.end && a.text === b.text && a.span.start < a.span.end;
}

/** Two insertions at one place overlap too: which comes first would be chance. */
function overlaps(a: Edit, b: Edit): boolean {
  if (a.span.start === b.span.start) return true;
  return a.span.start < b.span.end && b.span.start < a.span.end;
}

/** A text with edits made that do not overlap, as `safeEdits` gives them. */
export function applied(text: string, edits: readonly Edit[]): string {
  return [...edits]
    .sort((a, b) => b.span.start - a.span.start)
    .reduce((result, { span, text: by }) => result.slice(0, span.start) + by + result.slice(span.end), text);
}
