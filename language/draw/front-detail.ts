import type { Length } from "../core/length.ts";
import { inUnit } from "../core/length.ts";
import { add, equal, isPositive, ratio, subtract, zero } from "../core/rational.ts";
import type { FrontModel } from "../derive/model.ts";
import { boundsOf, drawingOf, moved } from "./bounds.ts";
import type { Desk } from "./desk.ts";
import { millimetres, sized } from "./desk.ts";
import { rowsBeside } from "./dimension-rows.ts";
import type { Area, Drawing, Item, Point } from "./display-list.ts";
import { letterHeights, line, text } from "./display-list.ts";
import type { Edge } from "./front-edge.ts";
import { edgeOf, sameEdge } from "./front-edge.ts";

/** Sections through the frames of fronts at full size, one for each that differs: groove, panel's edge, rail's tongue. */
export function frontDetails(desk: Desk): readonly Drawing[] {
  const known: { readonly edge: Edge; readonly fronts: FrontModel[] }[] = [];
  for (const front of desk.model.fronts) {
    const edge = edgeOf(desk, front);
    if (edge === undefined) continue;
    const same = known.find((one) => sameEdge(one.edge, edge));
    if (same === undefined) known.push({ edge, fronts: [front] });
    else same.fronts.push(front);
  }
  return known.flatMap(({ edge, fronts }) => detail(desk, edge, fronts) ?? []);
}

/** How much of a panel or rail is shown beside its joint. */
const stub = inUnit(ratio(22), "mm");

function detail(desk: Desk, edge: Edge, fronts: readonly FrontModel[]): Drawing | undefined {
  const owners = fronts.map((front) => front.of).join(", ");
  const first = edge.panel === undefined ? [] : panelSection(desk, edge);
  const items = [...first, ...(edge.tongue === undefined ? [] : under(first, railSection(desk, edge, edge.tongue)))];
  if (items.length === 0) return undefined;
  const behind = subtract(edge.thick, edge.groove.to);
  return drawingOf(
    {
      id: `${fronts[0]!.of}/frame`,
      title: `Frame of ${owners}: sections, front face down`,
      scale: "1 : 1",
      equivalent: {
        columns: ["what", "size"],
        rows: [
          ["stile wide", sized(desk, edge.stile)],
          ["stock thick", sized(desk, edge.thick)],
          ["in front of the groove", sized(desk, edge.groove.from)],
          ["groove wide", sized(desk, subtract(edge.groove.to, edge.groove.from))],
          ["behind the groove", sized(desk, behind)],
          ["groove deep", sized(desk, edge.groove.deep)],
          ...(edge.panel === undefined ? [] : [["float at each side", sized(desk, edge.panel.float)]]),
          ...(edge.tongue === undefined ? [] : [["tongue long", sized(desk, edge.tongue)]]),
        ],
      },
    },
    items,
  );
}

function at(right: Length, back: Length): Point {
  return { x: millimetres(right), y: -millimetres(back) };
}

/** The stile, cut across, with its groove to the right. */
function stileArea(edge: Edge): Area {
  const { stile, thick, groove } = edge;
  const inner = subtract(stile, groove.deep);
  return {
    kind: "area",
    points: [
      at(zero, zero),
      at(stile, zero),
      at(stile, groove.from),
      at(inner, groove.from),
      at(inner, groove.to),
      at(stile, groove.to),
      at(stile, thick),
      at(zero, thick),
    ],
    hatch: "solid",
    along: { x: 1, y: 0 },
    weight: "heavy",
  };
}

function panelSection(desk: Desk, edge: Edge): readonly Item[] {
  const { stile, groove } = edge;
  const panel = edge.panel!;
  const [end, tip] = [add(stile, stub), add(subtract(stile, groove.deep), panel.float)];
  const points = [
    at(tip, panel.from),
    ...brokenEnd(end, panel.from, panel.to),
    ...(equal(panel.tongueTo, panel.to)
      ? [at(tip, panel.to)]
      : [at(stile, panel.to), at(stile, panel.tongueTo), at(tip, panel.tongueTo)]),
  ];
  const area: Area = { kind: "area", points, hatch: panel.hatch, along: { x: 1, y: 0 }, weight: "heavy" };
  return [
    stileArea(edge),
    area,
    ...edgeSizes(desk, edge),
    ...rowsBeside(desk, { run: "up", edge: millimetres(end), away: 1, paper: (back) => -millimetres(back) }, [
      [panel.from, panel.tongueTo, panel.to],
    ]),
    caption({ x: millimetres(end) / 2, y: 20 }, "panel in stile"),
  ];
}

function railSection(desk: Desk, edge: Edge, tongue: Length): readonly Item[] {
  const { stile, thick, groove } = edge;
  const end = add(stile, stub);
  const tip = subtract(stile, tongue);
  const points = [
    at(stile, zero),
    ...brokenEnd(end, zero, thick),
    at(stile, thick),
    at(stile, groove.to),
    at(tip, groove.to),
    at(tip, groove.from),
    at(stile, groove.from),
  ];
  return [
    stileArea(edge),
    { kind: "area", points, hatch: "grain", along: { x: 1, y: 0 }, weight: "heavy" },
    ...rowsBeside(desk, { run: "across", edge: -millimetres(thick), away: -1, paper: millimetres }, [[tip, stile]]),
    ...rowsBeside(desk, { run: "up", edge: millimetres(end), away: 1, paper: (back) => -millimetres(back) }, [
      [zero, groove.from, groove.to, thick],
    ]),
    caption({ x: millimetres(end) / 2, y: 7 }, "rail in stile"),
  ];
}

/** Left: thickness and where the groove lies in it. Above: the groove's depth. Below: the stile. */
function edgeSizes(desk: Desk, edge: Edge): readonly Item[] {
  const { stile, thick, groove, panel } = edge;
  const inner = subtract(stile, groove.deep);
  const tip = panel !== undefined && isPositive(panel.float) ? [add(inner, panel.float)] : [];
  const back = (length: Length): number => -millimetres(length);
  return [
    ...rowsBeside(desk, { run: "up", edge: 0, away: -1, paper: back }, [
      [zero, groove.from, groove.to, thick],
      [zero, thick],
    ]),
    ...rowsBeside(desk, { run: "across", edge: back(thick), away: -1, paper: millimetres }, [[inner, ...tip, stile]]),
    ...rowsBeside(desk, { run: "across", edge: 0, away: 1, paper: millimetres }, [
      [zero, inner, stile],
      [zero, stile],
    ]),
    line(at(zero, zero), at(stile, zero), "heavy"),
  ];
}

/** Where something is broken off because it goes on. */
function brokenEnd(right: Length, front: Length, back: Length): readonly Point[] {
  const [a, b] = [at(right, front), at(right, back)];
  const step = (b.y - a.y) / 4;
  return [a, { x: a.x - 1.6, y: a.y + step }, { x: a.x + 1.6, y: a.y + 3 * step }, b];
}

function under(first: readonly Item[], second: readonly Item[]): readonly Item[] {
  const [one, other] = [boundsOf(first), boundsOf(second)];
  if (one === undefined || other === undefined) return second;
  return second.map((item) => moved(item, { x: 0, y: one.bottom + 5 - other.top }));
}

function caption(place: Point, words: string): Item {
  return text(place, words, { size: letterHeights.size, anchor: "middle", face: "bold" });
}
