import type { Severity } from "../../language/core/finding.ts";

/** Dresses text for a terminal, or leaves it as it is. */
export interface Style {
  severity(severity: Severity, text: string): string;
  strong(text: string): string;
  faint(text: string): string;
}

/** The terminal's own colours, so that its user's theme governs: the severity is always said in words as well. */
const codes: Readonly<Record<Severity, string>> = { error: "31;1", warning: "33;1", hint: "36;1" };

export function createStyle(colour: boolean): Style {
  const dressed = (code: string, text: string): string => (colour ? `\u001b[${code}m${text}\u001b[0m` : text);
  return {
    severity: (severity, text) => dressed(codes[severity], text),
    strong: (text) => dressed("1", text),
    faint: (text) => dressed("2", text),
  };
}
