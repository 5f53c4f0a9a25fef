import type { Stepwise } from "../language/core/stepwise.ts";
import type { Drawing } from "../language/draw/display-list.ts";
import { drawingSteps } from "../language/draw/drawings.ts";
import { panelDxf } from "../language/draw/dxf.ts";
import { sheetPlanDrawing } from "../language/draw/sheet-plan.ts";
import { svgOf } from "../language/draw/svg.ts";
import type { PaperDesk } from "../language/papers/desk.ts";
import type { Build } from "../language/service.ts";
import { nameOf } from "../language/view/rod.ts";
import { cutListFiles } from "./cut-list-files.ts";
import type { Watch } from "./in-turns.ts";
import { inTurns } from "./in-turns.ts";
import type { PaperKind } from "./protocol.ts";

/** A file for the bench: a bare name, its text or bytes, and what it is one of. */
export interface PaperFile {
  readonly kind: PaperKind;
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** What papers are made from, and which. */
export interface TextOrder {
  readonly build: Build;
  readonly desk: PaperDesk;
  readonly kinds: readonly PaperKind[];
  /** What to call a file of the build in the papers, so that they do not depend on where its folder lies. */
  readonly labelOf: (uri: string) => string;
  readonly watch: Watch;
}

/** Kinds that are written as PDF, which takes Node. */
export const pdfKinds: readonly PaperKind[] = ["packet", "sticks-a4", "sticks-letter", "labels-a4", "labels-letter"];

/** Those of the kinds asked for that are text, file by file, each made only when it is asked for. Ends early when cancelled. */
export async function* textPapers({ build, desk, kinds, labelOf, watch }: TextOrder): AsyncGenerator<PaperFile> {
  const name = nameOf(build.uri);
  if (kinds.includes("svg")) {
    const drawings = await inTurns(drawingsWithPlan(desk), watch);
    if (drawings === undefined) return;
    yield* svgFiles(name, drawings);
  }
  if (kinds.includes("dxf")) yield* dxfFiles(name, desk);
  for (const kind of ["csv", "markdown"] as const) {
    if (!kinds.includes(kind)) continue;
    for (const file of cutListFiles(build, [kind])) yield { kind, name: file.name, content: file.text };
  }
  if (kinds.includes("json")) yield { kind: "json", name: `${name}.list.json`, content: listText(build, labelOf) };
}

function* drawingsWithPlan(desk: PaperDesk): Stepwise<readonly Drawing[]> {
  const drawings = [...(yield* drawingSteps(desk))];
  for (const sheet of desk.plan?.stocks.flatMap((stock) => stock.sheets) ?? []) {
    const drawing = sheetPlanDrawing(desk, sheet);
    if (drawing !== undefined) drawings.push(drawing);
    yield sheet.name;
  }
  return drawings;
}

function* svgFiles(name: string, drawings: readonly Drawing[]): Generator<PaperFile> {
  const names = fileNames(drawings.map((drawing) => drawing.id));
  for (const [index, drawing] of drawings.entries()) {
    yield { kind: "svg", name: `${name}.${names[index]}.svg`, content: svgOf(drawing, "file") };
  }
}

/** A panel of each mark; boards are not machined from a drawing. */
function* dxfFiles(name: string, desk: PaperDesk): Generator<PaperFile> {
  const rows = desk.batches.flatMap((batch) => batch.rows).filter((row) => row.parts[0]?.stockKind === "sheet");
  const names = fileNames(rows.map((row) => `${row.mark} ${row.parts[0]!.name}`));
  for (const [index, row] of rows.entries()) {
    yield { kind: "dxf", name: `${name}.${names[index]}.dxf`, content: panelDxf(row.parts[0]!, row.mark) };
  }
}

function listText(build: Build, labelOf: TextOrder["labelOf"]): string {
  const list = build.list();
  const named = {
    ...list,
    parts: list.parts.map((part) => ({ ...part, source: { ...part.source, file: labelOf(part.source.file) } })),
    findings: list.findings.map((finding) => ({ ...finding, file: labelOf(finding.file) })),
  };
  return `${JSON.stringify(named, undefined, 2)}\n`;
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
