import type { Finding } from "../../core/finding.ts";
import type { Length } from "../../core/length.ts";
import type { Grain, Part } from "../../core/part.ts";
import { less } from "../../core/rational.ts";
import type { Context } from "../../derive/context.ts";
import { size } from "../../derive/context.ts";
import type { Model, SheetStock } from "../../derive/model.ts";
import type { Check } from "../check.ts";
import { finding, nameOf, placeOfLargest, say } from "../check.ts";

/** A part must come out of one sheet, its grain running as it should. */
export const partMustFitSheet: Check = {
  codes: ["part/larger-than-sheet"],
  run: (context, model) => model.parts.flatMap((part) => check(context, model, part)),
};

function check(context: Context, model: Model, part: Part): readonly Finding[] {
  const stock = model.stocks.get(part.stock);
  if (stock?.kind !== "sheet") return [];
  const sheet = sheetSize(context, stock);
  if (sheet === undefined || fits(part, sheet)) return [];
  const runsAlong = part.grain === "across" ? sheet.across : sheet.along;
  const tooMuch = less(runsAlong, part.length.value) ? part.length : part.width;
  const turned = part.grain !== "none" && fits({ ...part, grain: "none" }, sheet);
  const [first, second] = sheet.grain === "across" ? [sheet.along, sheet.across] : [sheet.across, sheet.along];
  return [
    finding({
      code: "part/larger-than-sheet",
      severity: "error",
      span: placeOfLargest(tooMuch, part.source),
      message: `${nameOf(part)} is ${say(context, part.length.value)} by ${say(context, part.width.value)}; a sheet of "${stock.name}" is ${say(context, first)} by ${say(context, second)}`,
      reason: turned
        ? "It would fit only with its grain running the other way."
        : "It cannot be cut in one piece from what can be bought.",
      remedy: turned
        ? "Make it smaller, use a larger sheet, or let its grain run the other way."
        : "Make it smaller, make it of two pieces, or use a larger sheet.",
      related: [
        { span: stock.block.size!.key.span, message: "the size of the sheet" },
        { span: part.source, message: "the part comes from here" },
      ],
    }),
  ];
}

interface SheetSize {
  readonly across: Length;
  readonly along: Length;
  /** As the sheet says it: long, its grain runs along the second figure of its size; across, along the first. */
  readonly grain: Grain;
}

function sheetSize(context: Context, { block }: SheetStock): SheetSize | undefined {
  const [first, second] = [size(context, block.size?.first)?.value, size(context, block.size?.second)?.value];
  if (first === undefined || second === undefined) return undefined;
  const grain = block.grain?.value ?? "long";
  const [across, along] = grain === "across" ? [second, first] : [first, second];
  return { across, along, grain };
}

function fits(part: Part, sheet: SheetSize): boolean {
  const { length, width, grain } = part;
  const lengthwise = !less(sheet.along, length.value) && !less(sheet.across, width.value);
  const crosswise = !less(sheet.across, length.value) && !less(sheet.along, width.value);
  const isFree = grain === "none" || sheet.grain === "none";
  return isFree ? lengthwise || crosswise : grain === "long" ? lengthwise : crosswise;
}
