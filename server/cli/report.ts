import type { Finding } from "../../language/core/finding.ts";
import { widthOf, wrap } from "../../language/view/wrap.ts";
import { sentence } from "../sentence.ts";
import { excerptOf } from "./excerpt.ts";
import { harmless } from "./harmless.ts";
import type { Loaded } from "./load.ts";
import type { Style } from "./style.ts";

const columns = 80;

/** One finding for a terminal: where, the line with carets, what is so, why it matters, what would do, what else to see. */
export function findingText(finding: Finding, loaded: Loaded, style: Style): string {
  const { message, reason, remedy, related } = finding;
  return [
    ...headLines(finding, loaded, style),
    ...sourceLines(finding, loaded, style),
    ...block("", sentence(message)),
    ...(reason === "" ? [] : block("why: ", sentence(reason))),
    ...(remedy === "" ? [] : block("do:  ", sentence(remedy))),
    ...related.flatMap((one) => {
      const { uri, line, column } = one.span;
      return block("see: ", `${loaded.labelOf(uri)}:${line + 1}:${column + 1} ${one.message}`);
    }),
    "",
  ]
    .map((line) => `${line}\n`)
    .join("");
}

function headLines({ span, severity, code }: Finding, { labelOf }: Loaded, style: Style): readonly string[] {
  const place = harmless(`${labelOf(span.uri)}:${span.line + 1}:${span.column + 1}`);
  const kind = `${style.severity(severity, severity)} ${code}`;
  const fits = widthOf(`${place} ${severity} ${code}`) <= columns;
  return fits ? [`${style.strong(place)} ${kind}`] : [style.strong(place), `  ${kind}`];
}

function sourceLines({ span, severity }: Finding, { textOf }: Loaded, style: Style): readonly string[] {
  const line = linesOf(textOf(span.uri) ?? "")[span.line];
  if (line === undefined || line.trim() === "") return [];
  const number = String(span.line + 1).padStart(4);
  const isLonger = span.line < span.endLine;
  const stretch = { from: span.column, to: isLonger ? line.length : span.endColumn };
  const { source, carets } = excerptOf(line, stretch, columns - number.length - 3);
  return [
    `${style.faint(`${number} |`)} ${source}`,
    `${style.faint(`${" ".repeat(number.length)} |`)} ${caretLine(carets, style, severity)}`,
    ...(isLonger ? [`${style.faint(`${" ".repeat(number.length)} |`)} to line ${span.endLine + 1}`] : []),
  ];
}

function caretLine(carets: string, style: Style, severity: Finding["severity"]): string {
  const first = carets.indexOf("^");
  return carets.slice(0, first) + style.severity(severity, carets.slice(first));
}

let lastText: string | undefined;
let lastLines: readonly string[] = [];

/** Kept for the next finding, which is mostly of the same text. */
function linesOf(text: string): readonly string[] {
  if (text !== lastText) {
    lastText = text;
    lastLines = text.split(/\r\n|\n|\r/);
  }
  return lastLines;
}

function block(label: string, text: string): readonly string[] {
  const indent = "  ";
  const room = columns - indent.length - label.length;
  return wrap(harmless(text), room).map(
    (line, index) => indent + (index === 0 ? label : " ".repeat(label.length)) + line,
  );
}
