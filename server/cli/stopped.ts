import type { ExitCode } from "./exit-codes.ts";
import { exitCodes } from "./exit-codes.ts";
import type { Io } from "./io.ts";

/** Says that it was stopped, as by Ctrl+C, and what became of the files that it was to write. */
export function sayStopped(io: Io, files: string): ExitCode {
  io.err(`scantling: stopped; ${files}\n`);
  return exitCodes.stopped;
}
