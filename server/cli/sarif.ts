import type { Log, PhysicalLocation, ReportingDescriptor, Result } from "sarif";
import type { Finding, Severity } from "../../language/core/finding.ts";
import type { Span } from "../../language/core/span.ts";
import { catalogue, pagePath } from "../../language/service.ts";
import type { Loaded } from "./load.ts";

const levels = { error: "error", warning: "warning", hint: "note" } as const satisfies Record<Severity, string>;

/** What the files hold, as SARIF 2.1.0 (OASIS): one run, a rule for each code that occurs. Fixes are given as replacements. */
export function sarifLog(loaded: readonly Loaded[], version: string): Log {
  const all = loaded.flatMap((file) => file.build.findings.map((finding) => ({ file, finding })));
  const codes = [...new Set(all.map(({ finding }) => finding.code))].sort();
  return {
    version: "2.1.0",
    $schema: "https://json.schemastore.org/sarif-2.1.0.json",
    runs: [
      {
        tool: { driver: { name: "scantling", version, rules: codes.map(ruleFor) } },
        columnKind: "utf16CodeUnits",
        results: all.map(({ file, finding }) => resultFor(file, finding, codes.indexOf(finding.code))),
      },
    ],
  };
}

function ruleFor(code: string): ReportingDescriptor {
  const row = catalogue[code];
  if (row === undefined) return { id: code };
  return {
    id: code,
    shortDescription: { text: row.title },
    fullDescription: { text: row.means },
    help: { text: `See ${pagePath(code)}.` },
  };
}

function resultFor(file: Loaded, finding: Finding, ruleIndex: number): Result {
  const { code, severity, message, reason, remedy, span, related, fixes } = finding;
  return {
    ruleId: code,
    ruleIndex,
    level: levels[severity],
    message: { text: [`${message}.`, reason, remedy].filter((text) => text !== "").join(" ") },
    locations: [{ physicalLocation: placeOf(file, span) }],
    ...(related.length === 0
      ? {}
      : {
          relatedLocations: related.map((one, id) => ({
            id,
            message: { text: one.message },
            physicalLocation: placeOf(file, one.span),
          })),
        }),
    ...(fixes.length === 0
      ? {}
      : {
          fixes: fixes.map((fix) => ({
            description: { text: fix.title },
            artifactChanges: [...new Set(fix.edits.map((edit) => edit.span.uri))].map((uri) => ({
              artifactLocation: { uri: addressOf(file, uri) },
              replacements: fix.edits
                .filter((edit) => edit.span.uri === uri)
                .map((edit) => ({ deletedRegion: regionOf(edit.span), insertedContent: { text: edit.text } })),
            })),
          })),
        }),
  };
}

function placeOf(file: Loaded, span: Span): PhysicalLocation {
  return { artifactLocation: { uri: addressOf(file, span.uri) }, region: regionOf(span) };
}

/** A file's name as a relative address: spaces and the like are escaped, the slashes stay. */
function addressOf(file: Loaded, uri: string): string {
  return file.labelOf(uri).replaceAll("\\", "/").split("/").map(encodeURIComponent).join("/");
}

/** Lines and columns count from one, the end column is behind the last sign. */
function regionOf(span: Span) {
  return {
    startLine: span.line + 1,
    startColumn: span.column + 1,
    endLine: span.endLine + 1,
    endColumn: span.endColumn + 1,
  };
}
