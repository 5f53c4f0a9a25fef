import type { Length } from "../core/length.ts";
import { toMillimetres } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { over, toNumber } from "../core/rational.ts";
import { panelCuts } from "./panel-cuts.ts";

type Pair = readonly [code: number, value: string | number];

/**
 * A panel as DXF of release 12 (AC1009), in millimetres, its length along x: the outline, what is cut into its face and
 * bored, each depth on a layer of its own. ASCII with CRLF; other letters as \U+XXXX.
 */
export function panelDxf(part: Part, mark: string): string {
  const { outline, cuts, bores, unplaced } = panelCuts(part);
  const entities: Pair[][] = [
    polyline(
      "OUTLINE",
      outline.map(([x, y]) => [mm(x), mm(y)] as const),
    ),
    ...cuts.map(({ kind, x, y, deep }) =>
      polyline(layer(kind, deep), [
        [mm(x[0]), mm(y[0])],
        [mm(x[1]), mm(y[0])],
        [mm(x[1]), mm(y[1])],
        [mm(x[0]), mm(y[1])],
      ]),
    ),
    ...bores.map(({ x, y, wide, deep }) => circle(layer("bore", deep), mm(x), mm(y), mm(over(wide, 2)))),
    words(mm(part.length.value) / 2, mm(part.width.value) / 2, `${mark} ${part.name}`),
    ...unplaced.map((one, index) => words(0, -12 - 10 * index, `${one.kind}: ${one.where}`)),
  ];
  const pairs: Pair[] = [
    ...header(mm(part.length.value), mm(part.width.value)),
    ...tables([...new Set(entities.map((entity) => String(entity.find(([code]) => code === 8)![1])))]),
    [0, "SECTION"],
    [2, "ENTITIES"],
    ...entities.flat(),
    [0, "ENDSEC"],
    [0, "EOF"],
  ];
  return pairs.map(([code, value]) => `${String(code).padStart(3)}\r\n${shown(value)}\r\n`).join("");
}

function mm(length: Length): number {
  return toNumber(toMillimetres(length));
}

function shown(value: string | number): string {
  if (typeof value === "string") return value;
  return Number.isInteger(value) ? String(value) : String(Number(value.toFixed(6)));
}

/** Layer names hold capitals, figures and underscores only: `GROOVE_6_35` for one 6.35 mm deep. */
function layer(kind: string, deep: Length | undefined): string {
  const depth = deep === undefined ? "THROUGH_OR_UNKNOWN" : String(Number(mm(deep).toFixed(2))).replace(".", "_");
  return `${kind.toUpperCase()}_${depth}`;
}

function header(long: number, wide: number): readonly Pair[] {
  return [
    [999, "Scantling: millimetres, length along x. Check against the cut list before machining."],
    [0, "SECTION"],
    [2, "HEADER"],
    [9, "$ACADVER"],
    [1, "AC1009"],
    [9, "$EXTMIN"],
    [10, 0],
    [20, 0],
    [9, "$EXTMAX"],
    [10, long],
    [20, wide],
    [0, "ENDSEC"],
  ];
}

function tables(layers: readonly string[]): readonly Pair[] {
  return [
    [0, "SECTION"],
    [2, "TABLES"],
    [0, "TABLE"],
    [2, "LTYPE"],
    [70, 1],
    [0, "LTYPE"],
    [2, "CONTINUOUS"],
    [70, 0],
    [3, "Solid line"],
    [72, 65],
    [73, 0],
    [40, 0],
    [0, "ENDTAB"],
    [0, "TABLE"],
    [2, "LAYER"],
    [70, layers.length],
    ...layers.flatMap((name): readonly Pair[] => [
      [0, "LAYER"],
      [2, name],
      [70, 0],
      [62, 7],
      [6, "CONTINUOUS"],
    ]),
    [0, "ENDTAB"],
    [0, "ENDSEC"],
  ];
}

function polyline(on: string, points: readonly (readonly [number, number])[]): Pair[] {
  return [
    [0, "POLYLINE"],
    [8, on],
    [66, 1],
    [70, 1],
    [10, 0],
    [20, 0],
    [30, 0],
    ...points.flatMap(([x, y]): Pair[] => [
      [0, "VERTEX"],
      [8, on],
      [10, x],
      [20, y],
      [30, 0],
    ]),
    [0, "SEQEND"],
    [8, on],
  ];
}

function circle(on: string, x: number, y: number, radius: number): Pair[] {
  return [
    [0, "CIRCLE"],
    [8, on],
    [10, x],
    [20, y],
    [30, 0],
    [40, radius],
  ];
}

function words(x: number, y: number, text: string): Pair[] {
  return [
    [0, "TEXT"],
    [8, "TEXT"],
    [10, x],
    [20, y],
    [30, 0],
    [40, 8],
    [1, ascii(text)],
  ];
}

/** Line breaks would end the value, so control characters become spaces; what lies outside ASCII is written by its number. */
function ascii(text: string): string {
  return Array.from({ length: text.length }, (_, index) => {
    const code = text.charCodeAt(index);
    if (code < 0x20 || code === 0x7f) return " ";
    return code < 0x7f ? text[index]! : `\\U+${code.toString(16).toUpperCase().padStart(4, "0")}`;
  }).join("");
}
