import { resolve } from "node:path";
import { paperDesk } from "../../language/papers/desk.ts";
import type { PaperFile } from "../paper-files.ts";
import { textPapers } from "../paper-files.ts";
import type { PaperKind } from "../protocol.ts";
import type { Arguments } from "./arguments.ts";
import { readArguments } from "./arguments.ts";
import type { ExitCode } from "./exit-codes.ts";
import { exitCodes, graver } from "./exit-codes.ts";
import type { Io } from "./io.ts";
import type { Loaded } from "./load.ts";
import { load } from "./load.ts";
import type { PdfOrder } from "./pdf/paper-files.ts";
import { usualSteps } from "./plan.ts";

/** The words for what is written, each for one or more kinds. */
const words: Readonly<Record<string, readonly PaperKind[]>> = {
  packet: ["packet"],
  sticks: ["sticks-a4", "sticks-letter"],
  labels: ["labels-a4", "labels-letter"],
  svg: ["svg"],
  dxf: ["dxf"],
  lists: ["csv", "markdown", "json"],
};
const kinds = Object.keys(words);

export const papersHelp = `scantling papers FILE -o DIR    what lies on the bench, as files

  -o, --output DIR    the folder they are written into; it must be there
  --only KINDS        some of ${kinds.join(",")}
                      (with commas between them; without it, all)
  --paper SIZE        a4 or letter, for the packet; without it, letter for a
                      file in inches and a4 for one in millimetres
  -h, --help          this text

NAME.papers.pdf     title, cautions, drawings, cut list, cutting plan, settings,
                    hardware, assembly order, story sticks
NAME.sticks-*.pdf   story sticks at full size; print without fitting to the
                    page, and lay a rule against the bar
NAME.labels-*.pdf   a label for every piece, on plain label sheets
and each drawing as SVG, each panel as DXF, the cut list as CSV, Markdown and
JSON. A file that says the same already is not touched. The exit code is 1 if
the build file has errors.
`;

/** `scantling papers FILE -o DIR`: everything for the bench, written into a folder file by file. */
export async function papers(args: readonly string[], io: Io): Promise<ExitCode> {
  const read = readArguments(args, {
    output: { type: "string", short: "o" },
    only: { type: "string" },
    paper: { type: "string" },
    help: { type: "boolean", short: "h" },
  });
  if ("fault" in read) return refuse(read.fault, io);
  if (read.options.has("help")) {
    io.out(papersHelp);
    return exitCodes.fine;
  }
  const asked = orderIn(read);
  if ("fault" in asked) return refuse(asked.fault, io);

  const loaded = await load(read.files[0]!, io);
  if ("failure" in loaded) {
    io.err(`scantling: ${loaded.failure}\n`);
    return exitCodes.unusable;
  }
  const done = await writeAll(loaded, asked.folder, asked.order, io);
  const errors = loaded.build.findings.some((finding) => finding.severity === "error");
  if (!errors) return done;
  io.err(`scantling: errors stand in ${loaded.label}, and the papers say so: look before you cut.\n`);
  return graver(done, exitCodes.errors);
}

function refuse(fault: string, io: Io): ExitCode {
  io.err(`scantling papers: ${fault}\nTry: scantling papers --help\n`);
  return exitCodes.unusable;
}

interface Asked {
  readonly folder: string;
  readonly order: PdfOrder;
}

function orderIn({ options, files }: Arguments): Asked | { readonly fault: string } {
  if (files.length !== 1) return { fault: files.length === 0 ? "no file is named" : "one file at a time" };
  const folder = options.get("output");
  if (typeof folder !== "string" || folder === "") return { fault: "-o needs the name of a folder" };
  const only = options.get("only");
  const named = typeof only === "string" ? only.split(",").map((word) => word.trim()) : kinds;
  const strange = named.find((word) => !kinds.some((kind) => kind === word));
  if (strange !== undefined) return { fault: `there is no kind "${strange}"; there are ${kinds.join(", ")}` };
  const paper = options.get("paper");
  const size = paper === "a4" ? "A4" : paper === "letter" ? "Letter" : undefined;
  if (paper !== undefined && size === undefined) return { fault: "--paper takes a4 or letter" };
  const order: Asked["order"] = {
    kinds: kinds.filter((kind) => named.includes(kind)).flatMap((kind) => words[kind] ?? []),
    size,
    progress: {},
  };
  return { folder, order };
}

async function writeAll(loaded: Loaded, folder: string, asked: Asked["order"], io: Io): Promise<ExitCode> {
  const failure = io.makeFolder(resolve(io.cwd, folder));
  if (failure !== undefined) {
    io.err(`scantling: ${folder} ${failure}\n`);
    return exitCodes.unusable;
  }
  for await (const { name, content } of filesOf(loaded, asked)) {
    const shown = folder === "." ? name : `${folder.replace(/[/\\]+$/, "")}/${name}`;
    const written = io.write(resolve(io.cwd, folder, name), content);
    if (written.outcome === "failed") {
      io.err(`scantling: ${shown} ${written.failure}\n`);
      // Where one cannot be written the others cannot either, and one sentence says it.
      return exitCodes.unusable;
    } else {
      io.out(written.outcome === "written" ? `Wrote ${shown}\n` : `${shown} says the same already\n`);
    }
  }
  return exitCodes.fine;
}

async function* filesOf({ build, labelOf }: Loaded, order: PdfOrder): AsyncGenerator<PaperFile> {
  const wantsPlan = order.kinds.includes("packet") || order.kinds.includes("svg");
  const plan = wantsPlan ? build.plan({ steps: usualSteps }) : undefined;
  const desk = paperDesk(build, plan);
  // A PDF writer is no small thing to read in for those who only list.
  const { pdfPapers } = await import("./pdf/paper-files.ts");
  yield* pdfPapers(desk, order);
  yield* textPapers({ build, desk, kinds: order.kinds, labelOf });
}
