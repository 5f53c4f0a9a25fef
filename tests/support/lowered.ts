import type { Design } from "../../language/core/design.ts";
import type { Length } from "../../language/core/length.ts";
import type { Sourced } from "../../language/core/sourced.ts";
import { isTrouble, lengthOf } from "../../language/derive/evaluate.ts";
import { lower } from "../../language/syntax/lower.ts";

export const testUri = "file:///test.scant";

/** The design of a text, which must be without findings. */
export function clean(text: string): Design {
  const design = lower(text, testUri);
  if (design.findings.length !== 0) throw new Error(`${text}\n${findingLines(design).join("\n")}`);
  return design;
}

/** Each finding of a text as `line:column code: message`, counted from one. */
export function findingLines(design: Pick<Design, "findings">): readonly string[] {
  return design.findings.map(({ span, code, message }) => `${span.line + 1}:${span.column + 1} ${code}: ${message}`);
}

export function codesOf(text: string): readonly string[] {
  return lower(text, testUri).findings.map((finding) => finding.code);
}

/** The length that a text stands for, in a file of these units; the code of what is wrong where it has none. */
export function lengthFrom(text: string, units = "inches"): Sourced<Length> | string {
  const design = lower(`${units}\nlet it = ${text}\n`, testUri);
  const worst = design.findings.find((finding) => finding.severity === "error");
  if (worst !== undefined) return worst.code;
  const value = design.lets[0]?.value;
  if (value === undefined) return "nothing";
  const length = lengthOf(value, (path) => ({
    code: "name/unknown-length",
    span: path[0]!.span,
    message: "no names here",
  }));
  return isTrouble(length) ? length.code : length;
}

/** A design as plain text without the places, to see whether two say the same. */
export function gist(design: Design): string {
  return JSON.stringify(design, (key, value: unknown) => {
    if (["span", "head", "open", "findings", "uri", "scope"].includes(key)) return undefined;
    return typeof value === "bigint" ? value.toString() : value;
  });
}
