import type { OffcutStatement } from "../core/design.ts";
import type { Edit } from "../core/finding.ts";
import { placedAt, startOfFile } from "../core/span.ts";
import { applied } from "../fit/fix-all.ts";
import { lower } from "../syntax/lower.ts";

/** What it takes for a file to hold the offcuts that the plan of a job leaves over, in place of those of an earlier plan. */
export interface Keeping {
  readonly edits: readonly Edit[];
  /** The text with them. */
  readonly text: string;
  /** Lines that are new in the file, lines of an earlier plan that are gone, and those that stood there already. */
  readonly added: number;
  readonly takenOut: number;
  readonly held: number;
  /** Lines of an earlier plan that stay, since sheets or boards of their stock are broken down: the offcuts may lie there by now. */
  readonly stay: number;
}

/**
 * The edits that leave of this job's offcuts exactly these lines in a text, but for those of stocks that are broken down;
 * none where it holds them already.
 */
export function keptOffcutsIn(
  text: string,
  uri: string,
  title: string,
  lines: readonly string[],
  brokenDown: ReadonlySet<string>,
): Keeping {
  const missing = [...lines];
  const others: OffcutStatement[] = [];
  for (const one of lower(text, uri).offcuts) {
    if (one.from?.text !== title) continue;
    const written = text.slice(one.span.start, one.span.end).replace(/\s+/g, " ");
    const at = missing.indexOf(written);
    if (at < 0) others.push(one);
    else missing.splice(at, 1);
  }
  const gone = others.filter(({ stock }) => !brokenDown.has(stock.text));
  const edits = [
    ...gone.map((one) => takenOut(text, one)),
    ...(missing.length === 0 ? [] : [{ span: endOf(text, uri), text: appended(text, missing) }]),
  ];
  return {
    edits,
    text: applied(text, edits),
    added: missing.length,
    takenOut: gone.length,
    held: lines.length - missing.length,
    stay: others.length - gone.length,
  };
}

/** The whole line where nothing else stands on it. */
function takenOut(text: string, { span }: OffcutStatement): Edit {
  const start = text.lastIndexOf("\n", span.start - 1) + 1;
  const end = /^[ \t]*(?:\r\n|\r|\n|$)/.exec(text.slice(span.end));
  if (end === null || text.slice(start, span.start).trim() !== "" || !/[\r\n]/.test(end[0])) return { span, text: "" };
  const whole = { start, column: 0, end: span.end + end[0].length, endLine: span.endLine + 1, endColumn: 0 };
  return { span: placedAt(span, whole), text: "" };
}

function endOf(text: string, uri: string): Edit["span"] {
  const lines = text.split(/\r\n|\r|\n/);
  const [line, column] = [lines.length - 1, lines.at(-1)!.length];
  const end = text.length;
  return placedAt(startOfFile(uri), { start: end, end, line, column, endLine: line, endColumn: column });
}

/** Below a text, each on a line of its own. */
function appended(text: string, lines: readonly string[]): string {
  const end = text.includes("\r\n") ? "\r\n" : "\n";
  const gap = text === "" || text.endsWith("\n") ? "" : end;
  return `${gap}${lines.join(end)}${end}`;
}
