import { resolve } from "node:path";
import type { ListDocument } from "../../language/view/types.ts";
import type { CutListKind } from "../cut-list-files.ts";
import { cutListFiles } from "../cut-list-files.ts";
import { aTurn } from "../in-turns.ts";
import type { Arguments } from "./arguments.ts";
import { readArguments } from "./arguments.ts";
import type { ExitCode } from "./exit-codes.ts";
import { exitCodes, graver } from "./exit-codes.ts";
import { harmless } from "./harmless.ts";
import { listHelp } from "./help.ts";
import type { Io } from "./io.ts";
import type { Loaded } from "./load.ts";
import { load, namedFindings } from "./load.ts";
import { sayStopped } from "./stopped.ts";

/** `scantling list FILE`: its parts, printed or written as files. What has errors is listed as far as it goes. */
export async function list(words: readonly string[], io: Io): Promise<ExitCode> {
  const flag = { type: "boolean" } as const;
  const read = readArguments(words, {
    json: flag,
    csv: flag,
    markdown: flag,
    left: flag,
    output: { type: "string", short: "o" },
    help: { type: "boolean", short: "h" },
  });
  if ("fault" in read) return refuse(read.fault, io);
  if (read.options.has("help")) {
    io.out(listHelp);
    return exitCodes.fine;
  }
  const fault = faultIn(read);
  if (fault !== undefined) return refuse(fault, io);

  const loaded = await load(read.files[0]!, io);
  if ("failure" in loaded) {
    io.err(`scantling: ${loaded.failure}\n`);
    return exitCodes.unusable;
  }
  const done = await give(loaded, read, io);
  if (done === exitCodes.stopped) return done;
  const errors = loaded.build.findings.filter((finding) => finding.severity === "error").length;
  if (errors === 0) return done;
  if (!read.options.has("json")) io.err(errorNote(loaded, errors));
  return graver(done, exitCodes.errors);
}

function refuse(fault: string, io: Io): ExitCode {
  io.err(`scantling list: ${fault}\nTry: scantling list --help\n`);
  return exitCodes.unusable;
}

function faultIn({ options, files }: Arguments): string | undefined {
  if (files.length === 0) return "no file is named";
  if (1 < files.length) return `one file at a time, and ${files.length} are named`;
  const forms = ["json", "csv", "markdown"].filter((form) => options.has(form));
  if (1 < forms.length) return `--${forms.join(" and --")} ask for different things`;
  if (options.has("json") && options.has("output")) return "--json prints and -o writes; give one of them";
  if (options.has("left") && options.has("output"))
    return "-o writes the whole list and --left prints what is left; give one of them";
  if (options.get("output") === "") return "-o needs the name of a folder";
  return undefined;
}

async function give(loaded: Loaded, { options }: Arguments, io: Io): Promise<ExitCode> {
  const folder = options.get("output");
  if (typeof folder === "string") return writeInto(folder, loaded, kindsFor(options), io);
  const given = options.has("left") ? loaded.build.left() : loaded.build;
  if (options.has("json")) io.out(`${JSON.stringify(namedList(loaded, given.list()), undefined, 2)}\n`);
  else if (options.has("csv")) io.out(given.csv());
  else if (options.has("markdown")) io.out(given.markdown());
  else io.out(harmless(given.text()));
  return exitCodes.fine;
}

function kindsFor(options: Arguments["options"]): readonly CutListKind[] {
  if (options.has("csv")) return ["csv"];
  return options.has("markdown") ? ["markdown"] : ["csv", "markdown"];
}

async function writeInto(folder: string, { build }: Loaded, kinds: readonly CutListKind[], io: Io): Promise<ExitCode> {
  const isStopped = io.heedStop();
  let code: ExitCode = exitCodes.fine;
  const files = cutListFiles(build, kinds);
  for (const [index, { name, text }] of files.entries()) {
    await aTurn();
    if (isStopped()) {
      const others = files.slice(index).map((file) => file.name);
      return sayStopped(io, `${others.join(" and ")} ${others.length === 1 ? "was" : "were"} not written`);
    }
    const shown = folder === "." ? name : `${folder.replace(/[/\\]+$/, "")}/${name}`;
    const written = io.write(resolve(io.cwd, folder, name), text);
    if (written.outcome === "failed") {
      io.err(`scantling: ${shown} ${written.failure}\n`);
      code = exitCodes.unusable;
    } else {
      io.out(written.outcome === "written" ? `Wrote ${shown}\n` : `${shown} says the same already\n`);
    }
  }
  return code;
}

/** The list with its files called as a person would, so that it does not depend on where the folder lies. */
function namedList(loaded: Loaded, document: ListDocument): ListDocument {
  const parts = document.parts.map((part) => ({
    ...part,
    source: { ...part.source, file: loaded.labelOf(part.source.file) },
  }));
  return { ...document, parts, findings: namedFindings(loaded) };
}

function errorNote({ label }: Loaded, errors: number): string {
  const stand = errors === 1 ? "1 error stands" : `${errors} errors stand`;
  return `scantling: ${stand} in ${label}: look before you cut.\nTo see: scantling check ${label === "stdin" ? "-" : label}\n`;
}
