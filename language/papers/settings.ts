import { gatheredBy } from "../core/gather.ts";
import type { Length } from "../core/length.ts";
import { exactText, showText } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import { compare, toText } from "../core/rational.ts";
import type { PaperDesk } from "./desk.ts";
import type { Section } from "./flow.ts";
import { heading, paragraph } from "./pieces.ts";
import type { Row } from "./table.ts";
import { column, tablePieces } from "./table.ts";

/** One setting of a fence, a stop or a cutter, and the parts that are made at it. */
export interface Setting {
  /** What is set: `fence`, `stop`, `groove`. */
  readonly what: string;
  readonly stock: string;
  readonly size: Length;
  readonly parts: readonly Part[];
}

/** Fence settings by width, widest first, then stop settings by length, longest first: each set once for all its parts. */
export function sawSettings(desk: PaperDesk): readonly Setting[] {
  return desk.batches.flatMap((batch) => {
    const parts = batch.rows.flatMap((row) => row.parts);
    const by = (what: string, sizeOf: (part: Part) => Length): readonly Setting[] => {
      return [...gatheredBy(parts, (part) => toText(sizeOf(part))).values()]
        .map((same) => ({ what, stock: batch.stock, size: sizeOf(same[0]!), parts: same }))
        .sort((a, b) => compare(b.size, a.size));
    };
    return [...by("fence", (part) => part.width.value), ...by("stop", (part) => part.length.value)];
  });
}

/** A cut that a cutter makes, in all parts that have it alike. */
export interface CutterSetting {
  readonly machining: Machining;
  readonly parts: readonly Part[];
}

const cutterKinds: ReadonlySet<Machining["kind"]> = new Set([
  "groove",
  "rabbet",
  "dado",
  "tongue",
  "tenon",
  "cup",
  "lap",
]);

export function cutterSettings(desk: PaperDesk): readonly CutterSetting[] {
  const groups = new Map<string, { machining: Machining; parts: Part[] }>();
  for (const part of desk.model.parts) {
    for (const machining of part.machining.filter((one) => cutterKinds.has(one.kind))) {
      const sizes = [machining.wide, machining.deep, machining.from].map((size) =>
        size === undefined ? "" : toText(size.value),
      );
      const key = [machining.kind, ...sizes, machining.where].join("|");
      const known = groups.get(key);
      if (known === undefined) groups.set(key, { machining, parts: [part] });
      else known.parts.push(part);
    }
  }
  const order = [...cutterKinds];
  return [...groups.values()].sort((a, b) => order.indexOf(a.machining.kind) - order.indexOf(b.machining.kind));
}

/** A line of a table of settings: its cells, and what stands under them. */
export interface SettingLine {
  readonly cells: readonly string[];
  readonly notes: readonly string[];
}

/** Stock, what is set, to what, how many pieces, and their letters. */
export function sawLines(desk: PaperDesk): readonly SettingLine[] {
  return sawSettings(desk).map(({ stock, what, size, parts }) => {
    const pieces = String(parts.reduce((sum, part) => sum + part.quantity, 0));
    return { cells: [stock, what, showText(size, desk.context.reading), pieces, marksOfAll(desk, parts)], notes: [] };
  });
}

/** The cut, wide, deep, from the edge, the letters of the parts, and where. */
export function cutterLines(desk: PaperDesk): readonly SettingLine[] {
  return cutterSettings(desk).map(({ machining, parts }) => {
    const sizes = [machining.wide, machining.deep, machining.from].map((size) => sized(desk, size?.value));
    return {
      cells: [machining.kind, ...sizes, marksOfAll(desk, parts), machining.where],
      notes: machining.note === undefined ? [] : [machining.note],
    };
  });
}

function marksOfAll(desk: PaperDesk, parts: readonly Part[]): string {
  return [...new Set(parts.flatMap((part) => desk.marks.get(part) ?? []))].join(", ");
}

/** Said over the table of saw settings. */
export const sawWords = "Finished sizes. Set once, cut all, and cut a spare before the setting is moved.";

/** Saw and cutter settings, and which face runs against what. */
export function settingsSection(desk: PaperDesk, wide: number): Section {
  const saw: readonly Row[] = sawLines(desk);
  const cutters: readonly Row[] = cutterLines(desk);
  const number = { anchor: "end", face: "bold" } as const;
  const sawColumns = [
    column("stock", 30),
    column("set", 14),
    column("to", 26, number),
    column("pieces", 12, { anchor: "end" }),
    column("parts", Math.max(40, wide - 94)),
  ];
  const cutterColumns = [
    column("cut", 16),
    column("wide", 20, number),
    column("deep", 20, number),
    column("from the edge", 20, number),
    column("parts", 30),
    column("where", Math.max(30, wide - 121)),
  ];
  return {
    title: "Settings",
    begins: "new page",
    pieces: [
      ...(saw.length === 0 ? [] : [heading("Saw: fence and stops", wide)]),
      ...(saw.length === 0 ? [] : [paragraph(sawWords, wide)]),
      ...(saw.length === 0 ? [] : tablePieces("saw", sawColumns, saw)),
      ...(cutters.length === 0
        ? []
        : [heading("Cutters", wide), ...cutterWords(desk).map((words) => paragraph(words, wide))]),
      ...(cutters.length === 0 ? [] : tablePieces("cutters", cutterColumns, cutters)),
    ],
  };
}

/** How to try a cutter's setting, and which face runs against what. */
export function cutterWords(desk: PaperDesk): readonly string[] {
  const marked = desk.model.parts.some((part) => part.machining.some((one) => one.where.includes("front face marked")));
  return [
    "Try every setting in scrap of the same thickness first: widths are those of the stock as measured, not of its label.",
    marked
      ? "Off-centre grooves: mark the front face of every piece, and run that same face against the fence or the table each time, tongues too."
      : "Mark the face of every piece, and run it the same way each time.",
  ];
}

function sized(desk: PaperDesk, size: Length | undefined): string {
  return size === undefined ? "" : exactText(size, desk.context.units);
}
