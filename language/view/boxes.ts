import type { Length } from "../core/length.ts";
import { decimalText, showText, toMillimetres } from "../core/length.ts";
import { largest, multiply, smallest, subtract, toNumber, zero } from "../core/rational.ts";
import type { Context } from "../derive/context.ts";
import type { BoxModel, Model } from "../derive/model.ts";
import { ownersText } from "./owners.ts";
import { targetOf } from "./rod.ts";
import type { RodTable } from "./types.ts";

const left = "left" as const;
const right = "right" as const;

/** Every box with its slide, its size outside and inside, its volume, and how much of it comes clear when pulled out. */
export function boxesTable(context: Context, model: Model): RodTable {
  const boxes = model.boxes.filter((box) => 0 < box.parts.length);
  return {
    id: "boxes",
    title: "Boxes",
    columns: [
      { title: "box", align: left },
      { title: "slide", align: left },
      { title: "outside w × h × d", align: left },
      { title: "inside w × h × d", align: left },
      { title: "holds", align: right },
      { title: "clear", align: right },
    ],
    rows: alike(boxes.map((box) => ({ box, cells: cellsOf(context, box, model) }))),
    note: "Clear: how much of the inside comes past the front of the case at full travel.",
  };
}

/** Boxes that are alike in everything but their opening share a row. */
function alike(rows: readonly { readonly box: BoxModel; readonly cells: readonly string[] }[]): RodTable["rows"] {
  const byCells = new Map<string, { names: string[]; cells: readonly string[]; box: BoxModel }>();
  for (const { box, cells } of rows) {
    const key = cells.join("|");
    const same = byCells.get(key);
    if (same === undefined) byCells.set(key, { names: [box.of], cells, box });
    else same.names.push(box.of);
  }
  return [...byCells.values()].map(({ names, cells, box }) => ({
    cells: [ownersText(names).replace(/^box /, ""), ...cells],
    target: targetOf(box.block.head),
  }));
}

function cellsOf(context: Context, box: BoxModel, model: Model): readonly string[] {
  const text = (length: Length): string => showText(length, context.reading);
  const three = (wide: Length, high: Length, deep: Length): string => `${text(wide)} × ${text(high)} × ${text(deep)}`;
  const { inside } = box;
  return [
    box.slides.length === undefined ? "none fits" : `${box.slides.name} ${text(box.slides.length.value)}`,
    three(box.wide.value, box.high.value, box.deep.value),
    inside === undefined ? "" : three(inside.wide.value, inside.high.value, inside.deep.value),
    inside === undefined ? "" : volumeText(context, inside.wide.value, inside.high.value, inside.deep.value),
    clearText(context, box, model),
  ];
}

function volumeText(context: Context, wide: Length, high: Length, deep: Length): string {
  const cubicInches = multiply(multiply(wide, high), deep);
  if (context.units === "inches") return `${decimalText({ n: cubicInches.n, d: cubicInches.d * 1728n }, 2)} ft³`;
  const litres = toNumber(toMillimetres(toMillimetres(toMillimetres(cubicInches)))) / 1e6;
  return `${litres.toFixed(1)} l`;
}

/** The lesser of the inside depth and what the travel brings past the box's own front. */
function clearText(context: Context, box: BoxModel, model: Model): string {
  const travel = box.slides.travel?.value;
  if (travel === undefined || box.inside === undefined) return "";
  const front = model.parts.find((part) => part.id === `${box.of}/front`)?.thickness.value ?? zero;
  return showText(largest(zero, smallest(box.inside.deep.value, subtract(travel, front))), context.reading);
}
