import type {
  Area,
  Circle,
  Item,
  Line,
  Point,
  Shape,
  Stroke,
  Text,
  Weight,
} from "../../../language/draw/display-list.ts";
import { capitalShare, dashes, lineWidths } from "../../../language/draw/display-list.ts";
import { hatchLines } from "../../../language/draw/hatch.ts";

/** A PDF document that is being written. */
export type Sheet = PDFKit.PDFDocument;

type Colour = "ink" | "faint" | "paper";

/** As PDF takes them, shares of red, green and blue from 0 to 1. */
const shares: Readonly<Record<Colour, string>> = {
  ink: sharesOf(0x11),
  faint: sharesOf(0x6b),
  paper: sharesOf(0xff),
};

function sharesOf(grey: number): string {
  const share = grey / 255;
  return `${share} ${share} ${share}`;
}

function strokeColour(colour: Colour): string {
  return `/DeviceRGB CS\n${shares[colour]} SCN`;
}

function fillColour(colour: Colour): string {
  return `/DeviceRGB cs\n${shares[colour]} scn`;
}

/** Draws a display list where the page counts in millimetres from its left upper corner. */
export function paint(sheet: Sheet, items: readonly Item[]): void {
  for (const item of items) paintItem(sheet, item);
}

function paintItem(sheet: Sheet, item: Item): void {
  switch (item.kind) {
    case "line":
      paintLine(sheet, item);
      break;
    case "shape":
      paintShape(sheet, item);
      break;
    case "area":
      paintArea(sheet, item);
      break;
    case "circle":
      paintCircle(sheet, item);
      break;
    case "text":
      paintText(sheet, item);
      break;
    case "group":
      paint(sheet, item.items);
      break;
  }
}

/** What pens are set to, each written once: there are a few of them, and millions of strokes. */
const pens = new Map<string, string>();

function pen(sheet: Sheet, weight: Weight, stroke: Stroke, colour: Colour): void {
  const key = `${weight} ${stroke} ${colour}`;
  const known = pens.get(key) ?? penOf(weight, stroke, colour);
  pens.set(key, known);
  sheet.addContent(known);
}

/** Round ends and corners; ends cut off square where the line is dashed. */
function penOf(weight: Weight, stroke: Stroke, colour: Colour): string {
  const dash = dashes[stroke];
  return [
    `${lineWidths[weight]} w`,
    "1 J",
    "1 j",
    strokeColour(colour),
    ...(dash.length === 0 ? [] : ["0 J"]),
    `[${dash.join(" ")}] 0 d`,
  ].join("\n");
}

function colourOf(weight: Weight): Colour {
  return weight === "hair" ? "faint" : "ink";
}

function trace(sheet: Sheet, points: readonly Point[], end: "closed" | "open"): void {
  points.forEach(({ x, y }, index) => {
    if (index === 0) sheet.moveTo(x, y);
    else sheet.lineTo(x, y);
  });
  if (end === "closed") sheet.closePath();
}

function paintLine(sheet: Sheet, { from, to, weight, stroke }: Line): void {
  pen(sheet, weight, stroke, colourOf(weight));
  sheet.moveTo(from.x, from.y).lineTo(to.x, to.y).stroke();
}

function paintShape(sheet: Sheet, { points, closed, weight, stroke, fill }: Shape): void {
  if (points.length === 0) return;
  if (weight !== undefined) pen(sheet, weight, stroke, colourOf(weight));
  trace(sheet, points, closed ? "closed" : "open");
  finish(sheet, weight, fill);
}

function finish(sheet: Sheet, weight: Weight | undefined, fill: "paper" | "ink" | undefined): void {
  if (fill !== undefined && weight !== undefined)
    sheet
      .addContent(fillColour(fill))
      .addContent(strokeColour(colourOf(weight)))
      .addContent("B");
  else if (fill !== undefined) sheet.addContent(fillColour(fill)).addContent("f");
  else if (weight !== undefined) sheet.stroke();
}

function paintArea(sheet: Sheet, area: Area): void {
  if (area.points.length === 0) return;
  trace(sheet, area.points, "closed");
  finish(sheet, undefined, "paper");
  const { weight, stretches } = hatchLines(area);
  if (0 < stretches.length) {
    pen(sheet, weight, "solid", "faint");
    for (const { from, to } of stretches) sheet.moveTo(from.x, from.y).lineTo(to.x, to.y);
    sheet.stroke();
  }
  pen(sheet, area.weight, "solid", "ink");
  trace(sheet, area.points, "closed");
  sheet.stroke();
}

function paintCircle(sheet: Sheet, { at, radius, weight, stroke, fill }: Circle): void {
  pen(sheet, weight, stroke, colourOf(weight));
  sheet.circle(at.x, at.y, radius);
  finish(sheet, weight, fill);
}

function paintText(sheet: Sheet, item: Text): void {
  const { at, size, anchor, face, turn, ground } = item;
  const words = printable(item.text);
  if (words === "") return;
  sheet.font(face).fontSize(size / capitalShare);
  const wide = anchor === "start" && ground !== "clear" ? 0 : sheet.widthOfString(words);
  const before = anchor === "start" ? 0 : anchor === "middle" ? wide / 2 : wide;
  sheet.save();
  if (turn === "up") sheet.rotate(-90, { origin: [at.x, at.y] });
  if (ground === "clear") {
    sheet.rect(at.x - before - 0.4, at.y - size - 0.35, wide + 0.8, size + 0.7);
    finish(sheet, undefined, "paper");
  }
  sheet.addContent(fillColour("ink"));
  sheet.text(words, at.x - before, at.y, asItStands);
  sheet.restore();
}

/** On one line from its lower left corner. How wide it is and of how many words is not asked: nothing is led from it. */
const asItStands = { lineBreak: false, baseline: "alphabetic", textWidth: 0, wordCount: 1 } as const;

/** Control characters have no letters. */
function printable(words: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
  return words.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]/g, " ");
}
