import { readArguments } from "./arguments.ts";
import type { ExitCode } from "./exit-codes.ts";
import { exitCodes, graver } from "./exit-codes.ts";
import { harmless } from "./harmless.ts";
import { dayHelp } from "./help.ts";
import type { Io } from "./io.ts";
import { load } from "./load.ts";
import { usualSteps } from "./plan.ts";

/** `scantling day FILE...`: what is left of one job, or of several that share a rack, at the end of a day. */
export async function day(words: readonly string[], io: Io): Promise<ExitCode> {
  const read = readArguments(words, { help: { type: "boolean", short: "h" } });
  if ("fault" in read) return refuse(read.fault, io);
  if (read.options.has("help")) {
    io.out(dayHelp);
    return exitCodes.fine;
  }
  const builds = [];
  let code: ExitCode = exitCodes.fine;
  for (const name of read.files) {
    const loaded = await load(name, io);
    if ("failure" in loaded) {
      io.err(`scantling: ${loaded.failure}\n`);
      return exitCodes.unusable;
    }
    builds.push(loaded.build);
    if (loaded.build.findings.some((finding) => finding.severity === "error")) {
      io.err(`scantling: errors stand in ${name}: what is left of it is not complete or not right\n`);
      code = graver(code, exitCodes.errors);
    }
  }
  const [first, ...others] = builds;
  if (first === undefined) return refuse("no file is named", io);
  io.out(harmless(first.dayText(first.day({ steps: usualSteps }, others))));
  return code;
}

function refuse(fault: string, io: Io): ExitCode {
  io.err(`scantling day: ${fault}\nTry: scantling day --help\n`);
  return exitCodes.unusable;
}
