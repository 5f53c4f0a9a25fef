import { resolve } from "node:path";
import { paperDesk } from "../../language/papers/desk.ts";
import { aTurn } from "../in-turns.ts";
import type { PaperFile } from "../paper-files.ts";
import { pdfKinds, textPapers } from "../paper-files.ts";
import type { PaperKind } from "../protocol.ts";
import type { Arguments } from "./arguments.ts";
import { readArguments } from "./arguments.ts";
import type { ExitCode } from "./exit-codes.ts";
import { exitCodes, graver } from "./exit-codes.ts";
import type { Io } from "./io.ts";
import type { Loaded } from "./load.ts";
import { load } from "./load.ts";
import type { PdfOrder } from "./pdf/paper-files.ts";
import { searched } from "./search.ts";
import { sayStopped } from "./stopped.ts";

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

  -o, --output DIR    the folder they are written into, which must be named;
                      it is made where it is not there yet
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
  if (done === exitCodes.stopped) return done;
  const errors = loaded.build.findings.some((finding) => finding.severity === "error");
  if (!errors) return done;
  io.err(`scantling: errors stand in ${loaded.label}, and the papers say so: look before you cut.\n`);
  return graver(done, exitCodes.errors);
}

function refuse(fault: string, io: Io): ExitCode {
  io.err(`scantling papers: ${fault}\nTry: scantling papers --help\n`);
  return exitCodes.unusable;
}

type Order = Omit<PdfOrder, "progress">;

interface Asked {
  readonly folder: string;
  readonly order: Order;
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
  const order: Order = {
    kinds: kinds.filter((kind) => named.includes(kind)).flatMap((kind) => words[kind] ?? []),
    size,
  };
  return { folder, order };
}

async function writeAll(loaded: Loaded, folder: string, order: Order, io: Io): Promise<ExitCode> {
  const isStopped = io.heedStop();
  const failure = io.makeFolder(resolve(io.cwd, folder));
  if (failure !== undefined) {
    io.err(`scantling: ${folder} ${failure}\n`);
    return exitCodes.unusable;
  }
  const far: Far = { written: 0, last: undefined, isWhole: false };
  for await (const { kind, name, content } of filesOf(loaded, order, far, { io, isStopped })) {
    await aTurn();
    if (isStopped()) break;
    const shown = folder === "." ? name : `${folder.replace(/[/\\]+$/, "")}/${name}`;
    const written = io.write(resolve(io.cwd, folder, name), content);
    if (written.outcome === "failed") {
      io.err(`scantling: ${shown} ${written.failure}\n`);
      // Where one cannot be written the others cannot either, and one sentence says it.
      return exitCodes.unusable;
    }
    io.out(written.outcome === "written" ? `Wrote ${shown}\n` : `${shown} says the same already\n`);
    far.written += 1;
    far.last = kind;
  }
  return far.isWhole ? exitCodes.fine : sayStopped(io, farText(order, far));
}

/** How far the writing has come. */
interface Far {
  /** Files that stand there as they are wanted. */
  written: number;
  /** What the last of them was one of. */
  last: PaperKind | undefined;
  isWhole: boolean;
}

/** Kinds that are more than one file. */
const many: ReadonlySet<PaperKind> = new Set(["svg", "dxf"]);

function farText({ kinds: asked }: Order, { written, last }: Far): string {
  if (last === undefined) return "nothing was written";
  const missing = asked.slice(asked.indexOf(last) + (many.has(last) ? 0 : 1));
  const left = kinds.filter((word) => words[word]!.some((kind) => missing.includes(kind)));
  const isBegun = (word: string): boolean => words[word]!.some((kind) => kind === last || !missing.includes(kind));
  const said = left.map((word) => (isBegun(word) ? `the rest of ${word}` : word));
  const stand = written === 1 ? "1 file stands there whole" : `${written} files stand there whole`;
  return `${stand}; not written: ${said.join(", ")}`;
}

interface Stoppable {
  readonly io: Io;
  readonly isStopped: () => boolean;
}

/** File by file, as they are made; ends early once stopped, and says so in `far`. */
async function* filesOf(
  { build, labelOf }: Loaded,
  order: Order,
  far: Far,
  { io, isStopped }: Stoppable,
): AsyncGenerator<PaperFile> {
  const wantsPlan = order.kinds.includes("packet") || order.kinds.includes("svg");
  const plan = wantsPlan ? await searched(build.startPlan(), undefined, { io, isStopped }) : undefined;
  if (isStopped()) return;
  const desk = paperDesk(build, plan);
  const watch = { onStep: (what: string) => io.progress(what), isCancelled: isStopped };
  if (order.kinds.some((kind) => pdfKinds.includes(kind))) {
    // A PDF writer is no small thing to read in for those who only list.
    const { pdfPapers } = await import("./pdf/paper-files.ts");
    const onPage = (done: number, of: number): void => io.progress(`page ${done + 1} of ${of}`);
    yield* pdfPapers(desk, { ...order, progress: { ...watch, onPage } });
  }
  if (isStopped()) return;
  yield* textPapers({ build, desk, kinds: order.kinds, labelOf, watch });
  far.isWhole = !isStopped();
}
