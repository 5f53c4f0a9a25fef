import PDFDocument from "pdfkit";
import type { Block, Page, Papers } from "../../../language/papers/page.ts";
import type { Watch } from "../../in-turns.ts";
import { aTurn } from "../../in-turns.ts";
import { fontBytes } from "./fonts.ts";
import type { Sheet } from "./paint.ts";
import { paint } from "./paint.ts";

export interface Progress extends Watch {
  /** Called before each page. */
  readonly onPage?: (done: number, of: number) => void;
}

/** Points in a millimetre. */
const perMillimetre = 72 / 25.4;

/** A file that says the same has the same bytes: no day is told. */
const noDay = new Date(0);

/**
 * Papers as a tagged PDF with its typeface embedded, without scripts, forms or links. The same papers give the same bytes.
 * `undefined` when it was cancelled.
 */
export async function writePdf(papers: Papers, progress: Progress = {}): Promise<Uint8Array | undefined> {
  const sheet = openSheet(papers);
  const chunks: Buffer[] = [];
  const ended = new Promise<void>((resolve, reject) => {
    sheet.on("data", (chunk: Buffer) => chunks.push(chunk));
    sheet.on("end", resolve);
    sheet.on("error", reject);
  });
  const root = sheet.struct("Document");
  sheet.addStructure(root);
  for (const [index, page] of papers.pages.entries()) {
    if (progress.isCancelled?.() === true) return undefined;
    progress.onPage?.(index, papers.pages.length);
    writePage(sheet, root, page());
    for (const entry of papers.outline) if (entry.page === index) sheet.outline.addItem(entry.title);
    // Whoever wants it stopped must get a word in.
    await new Promise((resolve) => setImmediate(resolve));
  }
  // What follows cannot be left half way.
  await aTurn();
  if (progress.isCancelled?.() === true) return undefined;
  root.end();
  sheet.end();
  await ended;
  return Buffer.concat(chunks);
}

function openSheet({ title, subject }: Papers): Sheet {
  const sheet = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: "1.7",
    tagged: true,
    lang: "en",
    displayTitle: true,
    // The default would be a face that is not embedded; and one given here has no name to be found by, so that it would
    // be read anew each time it is asked for.
    font: null as unknown as string,
    info: { Title: title, Subject: subject, Creator: "Scantling", Producer: "Scantling", CreationDate: noDay },
  });
  sheet.registerFont("regular", fontBytes("regular"));
  sheet.registerFont("bold", fontBytes("bold"));
  return sheet.font("regular");
}

type Element = PDFKit.PDFStructureElement;

function writePage(sheet: Sheet, root: Element, page: Page): void {
  sheet.addPage({ size: [page.wide * perMillimetre, page.high * perMillimetre], margin: 0 });
  const finish = gatherContent(sheet.page);
  sheet.scale(perMillimetre);
  sheet.markContent("Artifact", { type: "Layout" });
  paint(sheet, page.furniture);
  sheet.endMarkedContent();
  let open: { readonly within: string; readonly element: Element } | undefined;
  for (const block of page.blocks) {
    if (block.items.length === 0 && block.blocks.length === 0) continue;
    if (block.within !== open?.within) {
      open?.element.end();
      open = block.within === undefined ? undefined : { within: block.within, element: container(sheet, root, block) };
    }
    writeBlock(sheet, open?.element ?? root, block);
  }
  open?.element.end();
  finish();
}

/** What is drawn on a page becomes bytes once, when its end is told, and not stroke by stroke: there are millions. */
function gatherContent(page: PDFKit.PDFPage): () => void {
  const write = page.write;
  const drawn: string[] = [];
  page.write = (chunk: unknown): void => void drawn.push(String(chunk));
  return () => {
    page.write = write;
    if (0 < drawn.length) page.write(Buffer.from(`${drawn.join("\n")}\n`, "latin1"));
  };
}

/** The table or the list that a block begins. */
function container(sheet: Sheet, root: Element, block: Block): Element {
  const element = sheet.struct(block.role === "TR" ? "Table" : "L");
  root.add(element);
  return element;
}

function writeBlock(sheet: Sheet, parent: Element, block: Block): void {
  if (block.role === "TR") writeRow(sheet, parent, block);
  else if (block.role === "LI") writeListItem(sheet, parent, block);
  else writeContent(sheet, parent, block, block.role);
}

function writeListItem(sheet: Sheet, list: Element, block: Block): void {
  const item = sheet.struct("LI");
  list.add(item);
  writeContent(sheet, item, block, "LBody");
  item.end();
}

/** A row's lines are ornament; its cells are read. */
function writeRow(sheet: Sheet, table: Element, row: Block): void {
  sheet.markContent("Artifact", { type: "Layout" });
  paint(sheet, row.items);
  sheet.endMarkedContent();
  const element = sheet.struct("TR");
  table.add(element);
  for (const cell of row.blocks) writeContent(sheet, element, cell, cell.role);
  element.end();
}

function writeContent(sheet: Sheet, parent: Element, block: Block, role: string): void {
  const content = sheet.markStructureContent(role);
  paint(sheet, block.items);
  const element = sheet.struct(role, block.alt === undefined ? {} : { alt: block.alt }, [content]);
  parent.add(element);
  element.end();
}
