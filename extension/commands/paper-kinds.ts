import type { PaperContent, PaperKind } from "../../server/protocol.ts";
import type { Translate } from "../translate.ts";
import type { NewFile } from "./write-files.ts";

/** Papers as they are offered. */
export interface PaperChoice {
  readonly kind: PaperKind;
  readonly label: string;
  readonly description: string;
  readonly pdf: boolean;
}

/** Everything that can be written for the bench, in the order in which it is offered. */
export function paperChoices(t: Translate): readonly PaperChoice[] {
  const pdf = (kind: PaperKind, label: string, description: string) => ({ kind, label, description, pdf: true });
  const text = (kind: PaperKind, label: string, description: string) => ({ kind, label, description, pdf: false });
  return [
    pdf("packet", t("Packet"), t("PDF: drawings, cut list, plans, settings, hardware, assembly, story sticks")),
    pdf("sticks-a4", t("Story Sticks, A4"), t("PDF at full size, with a scale check bar")),
    pdf("sticks-letter", t("Story Sticks, Letter"), t("PDF at full size, with a scale check bar")),
    pdf("labels-a4", t("Labels, A4"), t("PDF: a label for every piece")),
    pdf("labels-letter", t("Labels, Letter"), t("PDF: a label for every piece")),
    text("svg", t("Drawings"), t("SVG: every drawing, and every sheet of the plan")),
    text("dxf", t("Panels"), t("DXF: every panel with its grooves and holes")),
    text("csv", t("Cut List, CSV"), t("for a spreadsheet")),
    text("markdown", t("Cut List, Markdown"), t("for reading")),
    text("json", t("Parts and Findings, JSON"), t("for programs")),
  ];
}

/** The file as it is written; base64 that is none gives bytes that say so by their number. */
export function newFileOf(content: PaperContent): NewFile {
  if ("text" in content) return content;
  const letters = atob(content.base64);
  return { name: content.name, text: Uint8Array.from(letters, (letter) => letter.charCodeAt(0)) };
}

/** The folder beside the build file that its papers go into. */
export function papersFolder(name: string): string {
  return `${name.replace(/\.scant$/, "")}-papers`;
}
