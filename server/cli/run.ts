import { buy } from "./buy.ts";
import { check } from "./check.ts";
import { day } from "./day.ts";
import type { ExitCode } from "./exit-codes.ts";
import { exitCodes } from "./exit-codes.ts";
import { mainHelp } from "./help.ts";
import type { Io } from "./io.ts";
import { list } from "./list.ts";
import { papers } from "./papers.ts";
import { plan } from "./plan.ts";

/** A subcommand: the words behind its name in, an exit code out. */
export type Command = (words: readonly string[], io: Io) => Promise<ExitCode>;

const commands: ReadonlyMap<string, Command> = new Map([
  ["check", check],
  ["list", list],
  ["plan", plan],
  ["buy", buy],
  ["day", day],
  ["papers", papers],
]);

/** The whole program over an injected world: the words behind its name in, an exit code out. */
export async function run(words: readonly string[], io: Io): Promise<ExitCode> {
  const [first, ...rest] = words;
  if (first === undefined) {
    io.err(mainHelp);
    return exitCodes.unusable;
  }
  if (first === "--help" || first === "-h" || first === "help") {
    io.out(mainHelp);
    return exitCodes.fine;
  }
  if (first === "--version" || first === "-v") {
    io.out(`scantling ${io.version}\n`);
    return exitCodes.fine;
  }
  const command = commands.get(first);
  if (command !== undefined) return command(rest, io);
  const what = first.startsWith("-") ? "option" : "command";
  io.err(`scantling: there is no ${what} "${first}"; there are the commands ${[...commands.keys()].join(", ")}\n`);
  io.err("Try: scantling --help\n");
  return exitCodes.unusable;
}
