import type { ListDocument } from "../../language/view/types.ts";

/** As many findings and parts as a conversation can bear; what is left out is counted. */
const MOST = 200;

/** The findings of a build file for a language model: gravest first, each with its place, reason and remedy. */
export function checkText(name: string, list: ListDocument): string {
  const order = ["error", "warning", "hint"] as const;
  const findings = order.flatMap((severity) => list.findings.filter((finding) => finding.severity === severity));
  if (findings.length === 0) return `${name}: ${pieces(list)}, no findings.`;
  const counts = order.map(
    (severity) => `${findings.filter((each) => each.severity === severity).length} ${severity}s`,
  );
  const lines = findings.slice(0, MOST).map((finding) => {
    const { severity, code, file, line, column, message, reason, remedy } = finding;
    const more = [reason === "" ? [] : `why: ${reason}`, remedy === "" ? [] : `do: ${remedy}`].flat();
    return [`${severity} ${code} at ${fileName(file)}:${line}:${column}: ${message}`, ...more].join("\n  ");
  });
  return [`${name}: ${pieces(list)}; ${counts.join(", ")}.`, ...lines, ...left(findings.length)].join("\n");
}

/** The parts of a build file for a language model, as tab-separated lines under a head; says when it has errors. */
export function partsText(name: string, list: ListDocument): string {
  const head = ["quantity", "part", "of", "length", "width", "thickness", "stock", "grain", "why"].join("\t");
  const lines = list.parts
    .slice(0, MOST)
    .map(({ quantity, name: part, of, length, width, thickness, stock, grain, why }) =>
      [quantity, part, of, length.shop, width.shop, thickness.shop, stock, grain, why].map(oneLine).join("\t"),
    );
  const errors = list.findings.filter(({ severity }) => severity === "error").length;
  const caution = errors === 0 ? [] : [`${errors} errors stand in the file: the list holds what could be worked out.`];
  const said = `${name}: ${pieces(list)}, sizes in ${list.units} as a tape shows them; − behind a size: rounded down.`;
  return [said, ...caution, head, ...lines, ...left(list.parts.length)].join("\n");
}

function pieces(list: ListDocument): string {
  const count = list.parts.reduce((sum, { quantity }) => sum + quantity, 0);
  return `${count} ${count === 1 ? "piece" : "pieces"}`;
}

function left(count: number): readonly string[] {
  return MOST < count ? [`… and ${count - MOST} more`] : [];
}

function oneLine(value: string | number): string {
  return String(value).replace(/[\t\r\n]+/g, " ");
}

function fileName(uri: string): string {
  const name = uri.slice(uri.lastIndexOf("/") + 1);
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}
