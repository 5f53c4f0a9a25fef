import type { ListFinding } from "../../language/view/types.ts";

/** One finding as the problem matcher `$scantling` reads it, in one line: `chest.scant:34:17: error slide/too-long: …`. */
export function findingLine(finding: ListFinding, labelOf: (uri: string) => string): string {
  const { file, line, column, severity, code, message, remedy } = finding;
  const text = remedy === "" ? message : `${message.replace(/\.$/, "")}. ${remedy}`;
  return harmless(`${labelOf(file)}:${line}:${column}: ${severity} ${code}: ${text}`);
}

/** The last line: how many files and what was found. */
export function summaryLine(files: number, findings: readonly ListFinding[]): string {
  const counts = (["error", "warning", "hint"] as const).flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    return count === 0 ? [] : [counted(count, severity)];
  });
  return `${counted(files, "file")} checked: ${counts.length === 0 ? "nothing is wrong" : counts.join(", ")}`;
}

/** Of findings in several lists, those that say the same of the same place once. */
export function onceEach(findings: readonly ListFinding[]): readonly ListFinding[] {
  return [...new Map(findings.map((finding) => [JSON.stringify(finding), finding])).values()];
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

/** A name out of a file must not steer the terminal. */
function harmless(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
  return text.replace(/[\u0000-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]+/g, " ");
}
