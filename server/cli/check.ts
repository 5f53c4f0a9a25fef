import type { Finding, Severity } from "../../language/core/finding.ts";
import { wrap } from "../../language/view/wrap.ts";
import type { Arguments } from "./arguments.ts";
import { readArguments } from "./arguments.ts";
import { checkDocument } from "./check-document.ts";
import type { ExitCode } from "./exit-codes.ts";
import { exitCodes, graver } from "./exit-codes.ts";
import { harmless } from "./harmless.ts";
import { checkHelp } from "./help.ts";
import type { Io } from "./io.ts";
import type { Loaded } from "./load.ts";
import { load, namedFindings } from "./load.ts";
import { mend } from "./mend.ts";
import { findingText } from "./report.ts";
import { sarifLog } from "./sarif.ts";
import { createStyle } from "./style.ts";

/** How many findings of one file are printed for people: a file that is no build file has thousands. */
const mostShown = 50;

/** `scantling check FILE...`: what is wrong in them and in what they use. A file that cannot be read stops no other. */
export async function check(words: readonly string[], io: Io): Promise<ExitCode> {
  const flag = { type: "boolean" } as const;
  const read = readArguments(words, { json: flag, sarif: flag, fix: flag, help: { type: "boolean", short: "h" } });
  if ("fault" in read) return refuse(read.fault, io);
  if (read.options.has("help")) {
    io.out(checkHelp);
    return exitCodes.fine;
  }
  const fault = faultIn(read);
  if (fault !== undefined) return refuse(fault, io);

  const loaded: Loaded[] = [];
  let code: ExitCode = exitCodes.fine;
  for (const name of new Set(read.files)) {
    const file = await load(name, io);
    if ("failure" in file) {
      io.err(`scantling: ${file.failure}\n`);
      code = exitCodes.unusable;
    } else if (read.options.has("fix")) {
      const mended = await mend(name, file, io);
      code = graver(code, mended.code);
      loaded.push(mended.loaded);
    } else {
      loaded.push(file);
    }
  }
  const errors = print(read, loaded, io);
  return 0 < errors ? graver(code, exitCodes.errors) : code;
}

function faultIn({ options, files }: Arguments): string | undefined {
  if (files.length === 0) return "no file is named";
  if (options.has("json") && options.has("sarif")) return "--json and --sarif ask for different things";
  if (options.has("fix") && files.includes("-")) return "--fix writes files, and the standard input is none";
  return undefined;
}

function print({ options }: Arguments, loaded: readonly Loaded[], io: Io): number {
  if (options.has("json")) return printJson(loaded, io);
  return options.has("sarif") ? printSarif(loaded, io) : printText(loaded, io);
}

function refuse(fault: string, io: Io): ExitCode {
  io.err(`scantling check: ${fault}\nTry: scantling check --help\n`);
  return exitCodes.unusable;
}

/** Each prints the findings and returns the number of errors. */
function printJson(loaded: readonly Loaded[], io: Io): number {
  const seen = new Set<string>();
  const findings = loaded.flatMap(namedFindings).filter((finding) => isFirst(seen, JSON.stringify(finding)));
  const document = checkDocument(
    loaded.map((file) => file.label),
    findings,
  );
  io.out(`${JSON.stringify(document, undefined, 2)}\n`);
  return document.errors;
}

function printSarif(loaded: readonly Loaded[], io: Io): number {
  const log = sarifLog(loaded, io.version);
  io.out(`${JSON.stringify(log, undefined, 2)}\n`);
  return log.runs.flatMap((run) => run.results ?? []).filter((result) => result.level === "error").length;
}

function printText(loaded: readonly Loaded[], io: Io): number {
  if (loaded.length === 0) return 0;
  const style = createStyle(io.colour);
  const seen = new Set<string>();
  const counts: Record<Severity, number> = { error: 0, warning: 0, hint: 0 };
  for (const file of loaded) {
    const fresh = file.build.findings.filter((finding) => isFirst(seen, keyOf(finding)));
    for (const finding of fresh) counts[finding.severity] += 1;
    const shown = gravest(fresh, mostShown);
    for (const finding of shown) io.out(findingText(finding, file, style));
    if (shown.length < fresh.length) io.out(`${moreText(fresh.length - shown.length, file)}\n`);
  }
  io.out(`${summary(counts, loaded.length)}\n`);
  return counts.error;
}

/** So many of the findings, errors before warnings before hints, in the order of the text. */
function gravest(findings: readonly Finding[], most: number): readonly Finding[] {
  if (findings.length <= most) return findings;
  const order = (["error", "warning", "hint"] as const).flatMap((severity) =>
    findings.filter((finding) => finding.severity === severity),
  );
  const kept = new Set(order.slice(0, most));
  return findings.filter((finding) => kept.has(finding));
}

function moreText(more: number, { label }: Loaded): string {
  return wrap(harmless(`and ${more} more in ${label}: mend some of these first, or see all with --json`), 80).join(
    "\n",
  );
}

/** A file that two builds use is looked at twice; what is found is said once. */
function isFirst(seen: Set<string>, key: string): boolean {
  if (seen.has(key)) return false;
  seen.add(key);
  return true;
}

function keyOf({ code, span, message }: Finding): string {
  return `${code} ${span.uri} ${span.start} ${span.end} ${message}`;
}

function summary(counts: Readonly<Record<Severity, number>>, files: number): string {
  const said = (["error", "warning", "hint"] as const).flatMap((severity) =>
    counts[severity] === 0 ? [] : [counted(counts[severity], severity)],
  );
  const checked = `${counted(files, "file")} checked`;
  return said.length === 0 ? `${checked}: nothing is wrong` : `${checked}: ${said.join(", ")}`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}
