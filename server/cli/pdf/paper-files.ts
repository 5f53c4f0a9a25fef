import { drawingsOf } from "../../../language/draw/drawings.ts";
import { panelDxf } from "../../../language/draw/dxf.ts";
import { sheetPlanDrawing } from "../../../language/draw/sheet-plan.ts";
import { svgOf } from "../../../language/draw/svg.ts";
import type { PaperDesk } from "../../../language/papers/desk.ts";
import { paperDesk } from "../../../language/papers/desk.ts";
import { labelPapers } from "../../../language/papers/labels.ts";
import { packetPapers, paperSticks } from "../../../language/papers/packet.ts";
import type { PaperSize, Papers } from "../../../language/papers/page.ts";
import { paperSizes } from "../../../language/papers/page.ts";
import { stickPapers } from "../../../language/papers/stick-pages.ts";
import type { Build } from "../../../language/service.ts";
import { nameOf } from "../../../language/view/rod.ts";
import { cutListFiles } from "../../cut-list-files.ts";
import type { Progress } from "./write-pdf.ts";
import { writePdf } from "./write-pdf.ts";

export const paperKinds = ["packet", "sticks", "labels", "svg", "dxf", "lists"] as const;

export type PaperKind = (typeof paperKinds)[number];

export interface PaperFile {
  readonly name: string;
  readonly content: string | Uint8Array;
}

export interface PaperOrder {
  readonly kinds: readonly PaperKind[];
  /** What the packet is printed on; missing: Letter for inches, A4 for millimetres. Sticks and labels come in both. */
  readonly size: PaperSize["name"] | undefined;
  /** What to call a file of the build in the papers, so that they do not depend on where its folder lies. */
  readonly labelOf: (uri: string) => string;
  /** Rounds of search for the cutting plan. */
  readonly steps: number;
  readonly progress: Progress;
}

/** The files of an order one by one, each made only when it is asked for; the same build gives the same bytes. Ends early when cancelled. */
export async function* paperFiles(build: Build, order: PaperOrder): AsyncGenerator<PaperFile> {
  const name = nameOf(build.uri);
  const wanted = (kind: PaperKind): boolean => order.kinds.includes(kind);
  const plan = wanted("packet") || wanted("svg") ? build.plan({ steps: order.steps }) : undefined;
  const desk = paperDesk(build.derivation, build.findings, plan);
  for (const { file, papers } of pdfsOf(desk, order)) {
    const made = papers();
    if (made.pages.length === 0) continue;
    const content = await writePdf(made, order.progress);
    if (content === undefined) return;
    yield { name: `${name}.${file}.pdf`, content };
  }
  if (wanted("svg")) yield* svgFiles(name, desk);
  if (wanted("dxf")) yield* dxfFiles(name, desk);
  if (wanted("lists")) yield* listFiles(name, build, order.labelOf);
}

interface Pdf {
  readonly file: string;
  readonly papers: () => Papers;
}

function pdfsOf(desk: PaperDesk, { kinds, size }: PaperOrder): readonly Pdf[] {
  const usual = desk.context.units === "inches" ? "Letter" : "A4";
  const both = Object.values(paperSizes);
  const packet: Pdf = { file: "papers", papers: () => packetPapers(desk, paperSizes[size ?? usual]) };
  const sticks = both.map(
    (one): Pdf => ({
      file: `sticks-${one.name.toLowerCase()}`,
      papers: () => stickPapers(desk, paperSticks(desk), one),
    }),
  );
  const labels = both.map(
    (one): Pdf => ({ file: `labels-${one.name.toLowerCase()}`, papers: () => labelPapers(desk, one) }),
  );
  return [
    ...(kinds.includes("packet") ? [packet] : []),
    ...(kinds.includes("sticks") ? sticks : []),
    ...(kinds.includes("labels") ? labels : []),
  ];
}

function* svgFiles(name: string, desk: PaperDesk): Generator<PaperFile> {
  const sheets = desk.plan?.stocks.flatMap((stock) => stock.sheets) ?? [];
  const drawings = [...drawingsOf(desk), ...sheets.flatMap((sheet) => sheetPlanDrawing(desk, sheet) ?? [])];
  const names = fileNames(drawings.map((drawing) => drawing.id));
  for (const [index, drawing] of drawings.entries()) {
    yield { name: `${name}.${names[index]}.svg`, content: svgOf(drawing, "file") };
  }
}

/** A panel of each mark; boards are not machined from a drawing. */
function* dxfFiles(name: string, desk: PaperDesk): Generator<PaperFile> {
  const rows = desk.batches.flatMap((batch) => batch.rows).filter((row) => row.parts[0]?.stockKind === "sheet");
  const names = fileNames(rows.map((row) => `${row.mark} ${row.parts[0]!.name}`));
  for (const [index, row] of rows.entries()) {
    yield { name: `${name}.${names[index]}.dxf`, content: panelDxf(row.parts[0]!, row.mark) };
  }
}

function* listFiles(name: string, build: Build, labelOf: PaperOrder["labelOf"]): Generator<PaperFile> {
  for (const file of cutListFiles(build, ["csv", "markdown"])) yield { name: file.name, content: file.text };
  const list = build.list();
  const named = {
    ...list,
    parts: list.parts.map((part) => ({ ...part, source: { ...part.source, file: labelOf(part.source.file) } })),
    findings: list.findings.map((finding) => ({ ...finding, file: labelOf(finding.file) })),
  };
  yield { name: `${name}.list.json`, content: `${JSON.stringify(named, undefined, 2)}\n` };
}

/** Names that any file system takes, each once whatever letters it counts as equal. */
function fileNames(ids: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return ids.map((id) => {
    const plain =
      id
        .replace(/[^\p{L}\p{N}_]+/gu, "-")
        .replace(/^-+|-+$/g, "")
        .slice(0, 80) || "drawing";
    let name = plain;
    for (let number = 2; taken.has(name.toLowerCase()); number++) name = `${plain}-${number}`;
    taken.add(name.toLowerCase());
    return name;
  });
}
