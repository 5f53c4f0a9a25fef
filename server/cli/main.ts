import manifest from "../../package.json" with { type: "json" };
import { exitCodes } from "./exit-codes.ts";
import { harmless } from "./harmless.ts";
import type { ReadText } from "./read-files.ts";
import { mostBytes, readInside, readText, rootFor, textFrom } from "./read-files.ts";
import { run } from "./run.ts";
import { progressLine } from "./terminal.ts";
import { makeFolder, writeWhole } from "./write-files.ts";

// A reader that has seen enough, as `head` does, closes the pipe: that is no failure of ours.
for (const stream of [process.stdout, process.stderr]) {
  stream.on("error", (error: NodeJS.ErrnoException) => {
    if (error.code === "EPIPE") return;
    if (stream === process.stdout && process.exitCode !== exitCodes.unusable)
      process.stderr.write(`scantling: what it printed could not be written: ${error.message}\n`);
    process.exitCode = exitCodes.unusable;
  });
}

const cwd = process.cwd();
const line = progressLine(process.stderr, process.env);
let isStopped = false;
run(process.argv.slice(2), {
  cwd,
  colour: process.stdout.isTTY === true && !process.env["NO_COLOR"] && process.env["TERM"] !== "dumb",
  version: manifest.version,
  out: (text) => {
    line.clear();
    process.stdout.write(text);
  },
  err: (text) => {
    line.clear();
    process.stderr.write(harmless(text));
  },
  progress: line.show,
  heedStop,
  read: readText,
  readStdin,
  readUsed: readInside,
  rootFor: (path) => rootFor(path, cwd),
  makeFolder,
  write: writeWhole,
}).then(
  // Not process.exit: what is still on its way down a pipe would be lost.
  (code) => {
    line.clear();
    // What is still being printed need not be waited for.
    process.off("SIGINT", onStop);
    // Unless printing has failed meanwhile.
    process.exitCode ??= code;
  },
  (error: unknown) => {
    line.clear();
    process.stderr.write(`scantling: this should not have happened: ${error instanceof Error ? error.stack : error}\n`);
    process.exitCode = exitCodes.unusable;
  },
);

function heedStop(): () => boolean {
  process.on("SIGINT", onStop);
  return () => isStopped;
}

/** What is being written is written whole before a signal is seen, so that the second may end the program where it stands. */
function onStop(): void {
  if (isStopped) {
    line.clear();
    process.exit(exitCodes.stopped);
  }
  isStopped = true;
}

async function readStdin(): Promise<ReadText> {
  const chunks: Buffer[] = [];
  let size = 0;
  try {
    for await (const chunk of process.stdin) {
      chunks.push(chunk as Buffer);
      size += (chunk as Buffer).length;
      // More than is let through anyway need not be held.
      if (mostBytes < size) break;
    }
  } catch (error) {
    return { failure: `could not be read: ${error instanceof Error ? error.message : String(error)}` };
  }
  return textFrom(Buffer.concat(chunks));
}
