import type { Edit, Finding, Fix } from "../core/finding.ts";

/** A text with its safe fixes applied, and which they were, in the order in which they were applied. */
export interface FixedText {
  readonly text: string;
  readonly applied: readonly { readonly code: string; readonly title: string }[];
}

/** One safe fix of a finding. */
interface Step {
  readonly code: string;
  readonly fix: Fix;
}

/** Each round mends what the one before uncovered; a text that is not done by then is left as it is. */
const mostRounds = 20;

/**
 * Applies the safe fixes of one file until there are none. `check` gives the findings of the build with that text. A
 * fix that would make a new finding is left out, edits never overlap, and a text seen before ends it. Pure, but for `check`.
 */
export function fixAll(uri: string, text: string, check: (text: string) => readonly Finding[]): FixedText {
  const applied: FixedText["applied"][number][] = [];
  const seen = new Set([text]);
  let now = text;
  for (let round = 0; round < mostRounds; round++) {
    const findings = check(now);
    const done = oneRound(now, findings, safeSteps(findings, uri), check);
    if (done.steps.length === 0 || seen.has(done.text)) break;
    seen.add(done.text);
    now = done.text;
    applied.push(...done.steps.map(({ code, fix }) => ({ code, title: fix.title })));
  }
  return { text: now, applied };
}

/** The edits that mend all that is clear in a file at once: sorted from its start, none overlapping. One round of `fixAll`. */
export function safeEdits(findings: readonly Finding[], uri: string): readonly Edit[] {
  return sortedEdits(safeSteps(findings, uri).flatMap(({ fix }) => fix.edits));
}

/** The text with edits that do not overlap. */
export function applied(text: string, edits: readonly Edit[]): string {
  return [...sortedEdits(edits)]
    .reverse()
    .reduce((whole, { span, text: put }) => whole.slice(0, span.start) + put + whole.slice(span.end), text);
}

interface Round {
  readonly text: string;
  readonly steps: readonly Step[];
}

function oneRound(
  text: string,
  before: readonly Finding[],
  steps: readonly Step[],
  check: (text: string) => readonly Finding[],
): Round {
  if (steps.length === 0) return { text, steps };
  const whole = applied(
    text,
    steps.flatMap(({ fix }) => fix.edits),
  );
  if (!addsFindings(before, check(whole))) return { text: whole, steps };
  // Together they do harm: the first that does none alone goes ahead, and the next round looks at the rest again.
  for (const step of steps) {
    const alone = applied(text, step.fix.edits);
    if (!addsFindings(before, check(alone))) return { text: alone, steps: [step] };
  }
  return { text, steps: [] };
}

/** The best fix of each finding, if that is safe and only touches this file, without those that would touch one place twice. */
function safeSteps(findings: readonly Finding[], uri: string): readonly Step[] {
  const taken: Edit[] = [];
  return findings.flatMap(({ code, fixes }): readonly Step[] => {
    const fix = fixes[0];
    if (fix === undefined || !fix.safe || !fix.edits.every(({ span }) => span.uri === uri)) return [];
    if (fix.edits.some((edit) => taken.some((other) => overlap(edit, other)))) return [];
    taken.push(...fix.edits);
    return [{ code, fix }];
  });
}

/** Two edits at one empty place would stand in an order that nothing decides, and count as overlapping. */
function overlap({ span: a }: Edit, { span: b }: Edit): boolean {
  return a.start === b.start || (a.start < b.end && b.start < a.end);
}

function sortedEdits(edits: readonly Edit[]): readonly Edit[] {
  return [...edits].sort((a, b) => a.span.start - b.span.start);
}

/** Whether some code is found more often than before. */
export function addsFindings(before: readonly Finding[], after: readonly Finding[]): boolean {
  const counts = countsOf(before);
  return [...countsOf(after)].some(([code, count]) => (counts.get(code) ?? 0) < count);
}

function countsOf(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { code } of findings) counts.set(code, (counts.get(code) ?? 0) + 1);
  return counts;
}
