import type { Length } from "../core/length.ts";
import { add, toNumber, zero } from "../core/rational.ts";
import type { CutNode, PlannedSheet } from "../plan/cut-plan.ts";
import { drawingOf } from "./bounds.ts";
import type { Desk } from "./desk.ts";
import { millimetres, reductionFor, scaleText, sized } from "./desk.ts";
import { rowsBeside } from "./dimension-rows.ts";
import type { Drawing, Item, Point } from "./display-list.ts";
import { corners, letterHeights, line, outline, text } from "./display-list.ts";
import { fitted, textWidth } from "./letters.ts";

/** Between the letter of a part and the size beside it, on paper; and the room for them where another typeface is wider than ours. */
const besideGap = 2;
const roomFor = 1.4;

/** A sheet, board or offcut as it is cut up: parts with letters and sizes, what is left crossed out, every cut a line. */
export function sheetPlanDrawing(desk: Desk, sheet: PlannedSheet): Drawing | undefined {
  const lying = toNumber(sheet.width) < toNumber(sheet.height);
  const [wide, high] = [millimetres(sheet.width), millimetres(sheet.height)];
  const reduction = reductionFor(desk, lying ? high : wide, lying ? wide : high, { wide: 150, high: 110 });
  // A long sheet is drawn lying, as it lies on the bench.
  const at = (x: Length, y: Length): Point => {
    const [right, up] = lying ? [y, x] : [x, y];
    return { x: millimetres(right) / reduction, y: -millimetres(up) / reduction };
  };
  // The grain is the sheet's, whichever way a part lies on it: along its second figure, or its first where that is said.
  const runsFlat = lying !== (sheet.stock.kind === "sheet" && sheet.stock.block.grain?.value === "across");
  const whole = corners(at(zero, zero), at(sheet.width, sheet.height));
  const parts = sheet.placed.map((placed, index): Item => {
    const far = at(add(placed.x, placed.width), add(placed.y, placed.height));
    const near = at(placed.x, placed.y);
    const size = `${sized(desk, placed.part.length.value)} × ${sized(desk, placed.part.width.value)}`;
    return {
      kind: "group",
      id: `${placed.part.id}#${index + 1}`,
      name: `${placed.mark} ${placed.part.name} of ${placed.part.of}, ${size}`,
      target: placed.part.source,
      items: [
        {
          kind: "area",
          points: corners(near, far),
          hatch: placed.part.grain === "none" ? undefined : "grain",
          along: runsFlat ? { x: 1, y: 0 } : { x: 0, y: 1 },
          weight: "medium",
        },
        ...labels(near, far, placed.mark, size),
      ],
    };
  });
  const [right, up] = lying ? [sheet.height, sheet.width] : [sheet.width, sheet.height];
  return drawingOf(
    {
      id: `plan ${sheet.name}`,
      title: `${sheet.name}, ${sized(desk, sheet.width)} × ${sized(desk, sheet.height)}${sheet.offcut ? ", from the rack" : ""}`,
      scale: scaleText(reduction),
      equivalent: {
        columns: ["mark", "part", "from the left", "from the lower edge", "length", "width"],
        rows: sheet.placed.map((placed) => [
          placed.mark,
          `${placed.part.name} of ${placed.part.of}`,
          sized(desk, lying ? placed.y : placed.x),
          sized(desk, lying ? placed.x : placed.y),
          sized(desk, placed.part.length.value),
          sized(desk, placed.part.width.value),
        ]),
      },
    },
    [
      outline(whole, "heavy"),
      ...leftOver(sheet.cuts, at),
      ...parts,
      ...rowsBeside(desk, { run: "across", edge: 0, away: 1, paper: (one) => millimetres(one) / reduction }, [
        [zero, right],
      ]),
      ...rowsBeside(desk, { run: "up", edge: 0, away: -1, paper: (one) => -millimetres(one) / reduction }, [
        [zero, up],
      ]),
    ],
  );
}

/** The letter large, the size under it where there is room, or beside it. */
function labels(a: Point, b: Point, mark: string, size: string): readonly Item[] {
  const [wide, high] = [Math.abs(b.x - a.x) - 1.5, Math.abs(b.y - a.y) - 1];
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const capital = Math.max(1.2, Math.min(letterHeights.name, high - 0.5, wide));
  const small = letterHeights.note;
  const under = capital + small + 2.4 < high && textWidth(size, small) < wide;
  const [nameWide, sizeWide] = [roomFor * textWidth(mark, capital, "bold"), roomFor * textWidth(size, small)];
  const beside = !under && small + 0.4 < high && nameWide + besideGap + sizeWide < wide;
  const name = text(
    {
      x: beside ? middle.x - (besideGap + sizeWide) / 2 : middle.x,
      y: under ? middle.y - 0.3 : middle.y + capital / 2,
    },
    fitted(mark, wide + 1, capital, "bold"),
    {
      size: capital,
      face: "bold",
      anchor: "middle",
      ground: "clear",
    },
  );
  if (!under && !beside) return [name];
  const at = under
    ? { x: middle.x, y: middle.y + small + 1.4 }
    : { x: middle.x + (besideGap + nameWide) / 2, y: middle.y + small / 2 };
  return [name, text(at, size, { size: small, anchor: "middle", ground: "clear" })];
}

/** What no part is cut from, with a line from corner to corner. */
function leftOver(node: CutNode, at: (x: Length, y: Length) => Point): readonly Item[] {
  if (node.content.kind === "cut") return node.content.pieces.flatMap((piece) => leftOver(piece, at));
  if (node.content.kind === "part") return [];
  const [near, far] = [at(node.x, node.y), at(add(node.x, node.width), add(node.y, node.height))];
  return [outline(corners(near, far), "fine"), line(near, far, "hair")];
}
