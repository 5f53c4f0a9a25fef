import { resolve } from "node:path";
import type { DayDocument } from "../../language/view/day-document.ts";
import { readArguments } from "./arguments.ts";
import type { ExitCode } from "./exit-codes.ts";
import { exitCodes, graver } from "./exit-codes.ts";
import { harmless } from "./harmless.ts";
import { dayHelp } from "./help.ts";
import type { Io } from "./io.ts";
import type { Loaded } from "./load.ts";
import { load } from "./load.ts";
import { usualSteps } from "./search.ts";

/** `scantling day FILE...`: what is left of one job, or of several that share a rack, at the end of a day. */
export async function day(words: readonly string[], io: Io): Promise<ExitCode> {
  const read = readArguments(words, { json: { type: "boolean" }, help: { type: "boolean", short: "h" } });
  if ("fault" in read) return refuse(read.fault, io);
  if (read.options.has("help")) {
    io.out(dayHelp);
    return exitCodes.fine;
  }
  const twice = read.files.find((name, at) =>
    read.files.some((other, before) => before < at && isSame(io, name, other)),
  );
  if (twice !== undefined) return refuse(`${twice} is named twice`, io);
  const files: Loaded[] = [];
  let code: ExitCode = exitCodes.fine;
  for (const name of read.files) {
    const loaded = await load(name, io);
    if ("failure" in loaded) {
      io.err(`scantling: ${loaded.failure}\n`);
      return exitCodes.unusable;
    }
    files.push(loaded);
    if (loaded.build.findings.some((finding) => finding.severity === "error")) {
      io.err(`scantling: errors stand in ${loaded.label}: what is left of it is not complete or not right\n`);
      code = graver(code, exitCodes.errors);
    }
  }
  const [first, ...others] = files;
  if (first === undefined) return refuse("no file is named", io);
  const { build } = first;
  const report = build.day(
    { steps: usualSteps },
    others.map((one) => one.build),
  );
  io.out(
    read.options.has("json")
      ? `${JSON.stringify(named(build.dayDocument(report), files), undefined, 2)}\n`
      : harmless(build.dayText(report)),
  );
  return code;
}

/** The report with its files called as a person would, so that it does not depend on where the folder lies. */
function named(document: DayDocument, files: readonly Loaded[]): DayDocument {
  const call = <T extends { readonly file: string }>(one: T): T => {
    const own = files.find(({ build }) => build.uri === one.file) ?? files[0]!;
    return { ...one, file: own.labelOf(one.file) };
  };
  return {
    ...document,
    jobs: document.jobs.map((job) => ({ ...call(job), findings: job.findings.map(call) })),
    saved: document.saved.map((one) => ({ ...call(one), becomes: call(one.becomes) })),
    waste: document.waste.map(call),
    recut: document.recut.map(call),
  };
}

/** Its records would be counted twice. */
function isSame({ cwd }: Io, a: string, b: string): boolean {
  return resolve(cwd, a) === resolve(cwd, b);
}

function refuse(fault: string, io: Io): ExitCode {
  io.err(`scantling day: ${fault}\nTry: scantling day --help\n`);
  return exitCodes.unusable;
}
