import { resolve } from "node:path";
import { URI } from "vscode-uri";
import { type Keeping, keptOffcutsIn } from "../../language/edit/kept-offcuts.ts";
import type { Build } from "../../language/service.ts";
import { readArguments } from "./arguments.ts";
import type { ExitCode } from "./exit-codes.ts";
import { exitCodes, graver } from "./exit-codes.ts";
import { planHelp } from "./help.ts";
import type { Io } from "./io.ts";
import { load } from "./load.ts";
import { searched } from "./search.ts";
import { sayStopped } from "./stopped.ts";

/** Seconds that may be asked for. */
const mostSeconds = 3600;

/** `scantling plan FILE`: how its parts are cut from sheets and boards, and in what order. */
export async function plan(words: readonly string[], io: Io): Promise<ExitCode> {
  const flag = { type: "boolean" } as const;
  const read = readArguments(words, {
    json: flag,
    seconds: { type: "string" },
    keep: { type: "string" },
    left: flag,
    help: { type: "boolean", short: "h" },
  });
  if ("fault" in read) return refuse(read.fault, io);
  if (read.options.has("help")) {
    io.out(planHelp);
    return exitCodes.fine;
  }
  if (read.files.length !== 1) return refuse(read.files.length === 0 ? "no file is named" : "one file at a time", io);
  const seconds = secondsOf(read.options.get("seconds"));
  if (seconds === "none") return refuse(`--seconds takes a number from 0 to ${mostSeconds}`, io);

  const loaded = await load(read.files[0]!, io);
  if ("failure" in loaded) {
    io.err(`scantling: ${loaded.failure}\n`);
    return exitCodes.unusable;
  }
  const { build } = loaded;
  const planned = read.options.has("left") ? build.left() : build;
  const made = await searched(planned.startPlan(), seconds, { io, isStopped: io.heedStop() });
  if (made === undefined) return sayStopped(io, "no plan was printed, and nothing was written");
  io.out(
    read.options.has("json") ? `${JSON.stringify(planned.planDocument(made), undefined, 2)}\n` : planned.planText(made),
  );
  const keep = read.options.get("keep");
  const kept =
    typeof keep === "string" ? keepOffcuts(keep, build, planned.planDocument(made).keep, io) : exitCodes.fine;
  const errors = build.findings.some((finding) => finding.severity === "error");
  const unplaced = made.stocks.some((stock) => 0 < stock.unplaced.length);
  return graver(kept, errors || unplaced ? exitCodes.errors : exitCodes.fine);
}

/**
 * Writes the lines of offcuts worth keeping into a build file, such as the rack's, in place of those that an earlier plan of
 * the same job left there; the file is made where there is none.
 */
function keepOffcuts(name: string, build: Build, lines: readonly string[], io: Io): ExitCode {
  const path = resolve(io.cwd, name);
  const read = io.read(path);
  const missing = "failure" in read && read.missing === true;
  if ("failure" in read && !missing) {
    io.err(`scantling: ${name} ${read.failure}\n`);
    return exitCodes.unusable;
  }
  const before = "failure" in read ? "" : read.text;
  const kept = keptOffcutsIn(before, URI.file(path).toString(), build.leavesAs, lines, build.brokenDown);
  if (kept.text !== before) {
    const written = io.write(path, kept.text);
    if (written.outcome === "failed") {
      io.err(`scantling: ${name} ${written.failure}\n`);
      return exitCodes.unusable;
    }
  }
  for (const sentence of keptWords(name, lines, kept)) io.err(`scantling: ${sentence}\n`);
  return exitCodes.fine;
}

function keptWords(
  name: string,
  lines: readonly string[],
  { added, takenOut, held, stay }: Keeping,
): readonly string[] {
  const offcuts = (count: number): string => `${count} ${count === 1 ? "offcut" : "offcuts"}`;
  return [
    ...(lines.length === 0 ? ["no offcut of a new sheet or board is worth keeping"] : []),
    ...(added === 0 ? [] : [`wrote ${offcuts(added)} into ${name}`]),
    ...(held === 0 ? [] : [`${offcuts(held)} of this plan ${held === 1 ? "stands" : "stand"} in ${name} already`]),
    ...(takenOut === 0 ? [] : [`took ${offcuts(takenOut)} of an earlier plan of this job out of ${name}`]),
    ...(stay === 0
      ? []
      : [
          `left ${offcuts(stay)} of an earlier plan in ${name}, since that stock is broken down: take from away behind what lies in the rack, and the line of what does not`,
        ]),
  ];
}

function refuse(fault: string, io: Io): ExitCode {
  io.err(`scantling plan: ${fault}\nTry: scantling plan --help\n`);
  return exitCodes.unusable;
}

function secondsOf(text: string | true | undefined): number | "none" | undefined {
  if (text === undefined) return undefined;
  const seconds = Number(text);
  return text !== true && text.trim() !== "" && 0 <= seconds && seconds <= mostSeconds ? seconds : "none";
}
