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

const ink = "#111111";
const faint = "#6b6b6b";
const paper = "#ffffff";

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

function pen(sheet: Sheet, weight: Weight, stroke: Stroke, colour: string): void {
  sheet.lineWidth(lineWidths[weight]).lineCap("round").lineJoin("round").strokeColor(colour);
  const dash = dashes[stroke];
  if (dash.length === 0) sheet.undash();
  else sheet.lineCap("butt").dash([...dash] as unknown as number, {});
}

function colourOf(weight: Weight): string {
  return weight === "hair" ? faint : ink;
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
  const colour = fill === "ink" ? ink : paper;
  if (fill !== undefined && weight !== undefined) sheet.fillAndStroke(colour, colourOf(weight));
  else if (fill !== undefined) sheet.fill(colour);
  else if (weight !== undefined) sheet.stroke();
}

function paintArea(sheet: Sheet, area: Area): void {
  if (area.points.length === 0) return;
  trace(sheet, area.points, "closed");
  sheet.fill(paper);
  const { weight, stretches } = hatchLines(area);
  if (0 < stretches.length) {
    pen(sheet, weight, "solid", faint);
    for (const { from, to } of stretches) sheet.moveTo(from.x, from.y).lineTo(to.x, to.y);
    sheet.stroke();
  }
  pen(sheet, area.weight, "solid", ink);
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
  const wide = sheet.widthOfString(words);
  const before = anchor === "start" ? 0 : anchor === "middle" ? wide / 2 : wide;
  sheet.save();
  if (turn === "up") sheet.rotate(-90, { origin: [at.x, at.y] });
  if (ground === "clear") {
    sheet.rect(at.x - before - 0.4, at.y - size - 0.35, wide + 0.8, size + 0.7).fill(paper);
  }
  sheet.fillColor(ink).text(words, at.x - before, at.y, { lineBreak: false, baseline: "alphabetic" });
  sheet.restore();
}

/** Control characters have no letters. */
function printable(words: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
  return words.replace(/[\u0000-\u001f\u007f-\u009f\u2028\u2029]/g, " ");
}
