import { boughtTogether, buyText } from "../../language/view/buying.ts";
import { ordersOf, rackText, savedText } from "../../language/view/jobs.ts";
import { readArguments } from "./arguments.ts";
import type { ExitCode } from "./exit-codes.ts";
import { exitCodes, graver } from "./exit-codes.ts";
import { buyHelp } from "./help.ts";
import type { Io } from "./io.ts";
import { load } from "./load.ts";
import { usualSteps } from "./search.ts";

/** `scantling buy FILE...`: what one job, or several together, want from the yard. */
export async function buy(words: readonly string[], io: Io): Promise<ExitCode> {
  const read = readArguments(words, { help: { type: "boolean", short: "h" } });
  if ("fault" in read) return refuse(read.fault, io);
  if (read.options.has("help")) {
    io.out(buyHelp);
    return exitCodes.fine;
  }
  if (read.files.length === 0) return refuse("no file is named", io);
  const builds = [];
  let code: ExitCode = exitCodes.fine;
  for (const name of read.files) {
    const loaded = await load(name, io);
    if ("failure" in loaded) {
      io.err(`scantling: ${loaded.failure}\n`);
      return exitCodes.unusable;
    }
    const { build } = loaded;
    builds.push(build);
    if (build.findings.some((finding) => finding.severity === "error")) {
      io.err(`scantling: errors stand in ${loaded.label}: its list is not complete or not right\n`);
      code = graver(code, exitCodes.errors);
    }
  }
  const orders = ordersOf(
    builds.map((build) => build.job()),
    { steps: usualSteps },
  );
  const title = `To buy: ${builds.map((build) => build.list().project).join("; ")}`;
  io.out(buyText(title, boughtTogether(orders.map(({ lines }) => lines))));
  io.out(rackText(orders));
  io.out(savedText(orders));
  return code;
}

function refuse(fault: string, io: Io): ExitCode {
  io.err(`scantling buy: ${fault}\nTry: scantling buy --help\n`);
  return exitCodes.unusable;
}
