import type { Stepwise } from "../../../language/core/stepwise.ts";
import { sticksFor } from "../../../language/draw/drawings.ts";
import type { PaperDesk } from "../../../language/papers/desk.ts";
import { labelPapers } from "../../../language/papers/labels.ts";
import { packetSteps } from "../../../language/papers/packet.ts";
import type { PaperSize, Papers } from "../../../language/papers/page.ts";
import { paperSizes } from "../../../language/papers/page.ts";
import { stickPapers } from "../../../language/papers/stick-pages.ts";
import { nameOf } from "../../../language/view/rod.ts";
import { inTurns } from "../../in-turns.ts";
import type { PaperFile } from "../../paper-files.ts";
import type { PaperKind } from "../../protocol.ts";
import type { Progress } from "./write-pdf.ts";
import { writePdf } from "./write-pdf.ts";

export interface PdfOrder {
  readonly kinds: readonly PaperKind[];
  /** What the packet is printed on; missing: Letter for inches, A4 for millimetres. */
  readonly size: PaperSize["name"] | undefined;
  readonly progress: Progress;
}

/**
 * Those of the kinds asked for that are PDF, one by one, each made only when it is asked for; the same desk gives the
 * same bytes. Ends early when cancelled.
 */
export async function* pdfPapers(desk: PaperDesk, order: PdfOrder): AsyncGenerator<PaperFile> {
  const name = nameOf(desk.context.design.uri);
  for (const { kind, file, papers } of pdfsOf(desk, order.size)) {
    if (!order.kinds.includes(kind)) continue;
    const made = await inTurns(papers(), order.progress);
    if (made === undefined) return;
    if (made.pages.length === 0) continue;
    const content = await writePdf(made, order.progress);
    if (content === undefined) return;
    yield { kind, name: `${name}.${file}.pdf`, content };
  }
}

interface Pdf {
  readonly kind: PaperKind;
  readonly file: string;
  readonly papers: () => Stepwise<Papers>;
}

function pdfsOf(desk: PaperDesk, size: PaperSize["name"] | undefined): readonly Pdf[] {
  const usual = desk.context.units === "inches" ? "Letter" : "A4";
  const { A4, Letter } = paperSizes;
  const sticks = (one: PaperSize) =>
    function* (): Stepwise<Papers> {
      const all = sticksFor(desk);
      yield "story sticks";
      return stickPapers(desk, all, one);
    };
  const labels = (one: PaperSize) =>
    // biome-ignore lint/correctness/useYield: the one step of it is short
    function* (): Stepwise<Papers> {
      return labelPapers(desk, one);
    };
  return [
    { kind: "packet", file: "papers", papers: () => packetSteps(desk, paperSizes[size ?? usual]) },
    { kind: "sticks-a4", file: "sticks-a4", papers: sticks(A4) },
    { kind: "sticks-letter", file: "sticks-letter", papers: sticks(Letter) },
    { kind: "labels-a4", file: "labels-a4", papers: labels(A4) },
    { kind: "labels-letter", file: "labels-letter", papers: labels(Letter) },
  ];
}
