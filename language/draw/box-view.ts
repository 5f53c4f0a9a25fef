import type { Part } from "../core/part.ts";
import { add, equal, over, times } from "../core/rational.ts";
import type { Stepwise } from "../core/stepwise.ts";
import { boundsOf, drawingOf, moved } from "./bounds.ts";
import type { Desk } from "./desk.ts";
import { drawn, extentOf, millimetres, reductionFor, scaleText, sized } from "./desk.ts";
import { rowsBeside } from "./dimension-rows.ts";
import type { Drawing, Item } from "./display-list.ts";
import { letterHeights, text } from "./display-list.ts";
import type { Scene } from "./place/scene.ts";
import type { Solid } from "./place/solid.ts";
import { longOf } from "./place/solid.ts";
import type { Projection } from "./view.ts";
import {
  acrossPaper,
  cutItem,
  downPaper,
  farthestFirst,
  fromAbove,
  fromSide,
  outlineOf,
  parted,
  seenItem,
} from "./view.ts";

/** Each box that differs from those before it: from above with its joints, and cut from front to back. */
export function* boxViewSteps(desk: Desk, scenes: readonly Scene[]): Stepwise<readonly Drawing[]> {
  const known: { readonly solids: readonly Solid[]; readonly owners: string[] }[] = [];
  for (const scene of scenes) {
    for (const box of scene.boxes) {
      const solids = scene.solids.filter((solid) => solid.role === "box" && solid.of === box.of);
      if (solids.length === 0) continue;
      const same = known.find((one) => alike(one.solids, solids));
      if (same === undefined) known.push({ solids, owners: [box.opening.name.text] });
      else same.owners.push(box.opening.name.text);
    }
  }
  const views: Drawing[] = [];
  for (const { solids, owners } of known) {
    const view = boxView(desk, solids, owners);
    if (view !== undefined) views.push(view);
    yield `drawing of box ${owners[0]}`;
  }
  return views;
}

function alike(a: readonly Solid[], b: readonly Solid[]): boolean {
  return (
    a.length === b.length &&
    a.every((solid, index) => {
      const other = b[index]!;
      return (
        solid.name === other.name &&
        solid.part?.stock === other.part?.stock &&
        (["x", "y", "z"] as const).every((axis) => equal(longOf(solid.place[axis]), longOf(other.place[axis])))
      );
    })
  );
}

function boxView(desk: Desk, solids: readonly Solid[], owners: readonly string[]): Drawing | undefined {
  const [x, z, y] = [extentOf(solids, "x"), extentOf(solids, "z"), extentOf(solids, "y")];
  const deep = millimetres(longOf(z));
  const reduction = reductionFor(desk, millimetres(longOf(x)), deep, { wide: 70, high: 64 });
  const above: Projection = { view: fromAbove, reduction };
  const side: Projection = { view: fromSide, reduction };
  const plan = [
    ...drawn(desk, above, topOrder(solids), seenItem),
    ...markTexts(
      desk,
      above,
      solids.filter((solid) => solid.name !== "divider"),
    ),
    ...planSizes(desk, above, solids),
  ];
  // Clear of a divider in the middle.
  const at = add(x[0], times(over(longOf(x), 8), 3));
  // Each piece is drawn twice, and each time it is a thing of its own.
  const again = solids.map((solid) => ({ ...solid, id: `${solid.id}#cut` }));
  const { seen, cut } = parted(fromSide, again, at);
  const section = [
    ...drawn(desk, side, farthestFirst(fromSide, seen), seenItem),
    ...drawn(desk, side, cut, cutItem),
    ...rowsBeside(
      desk,
      { run: "across", edge: downPaper(side, y[0]), away: 1, paper: (one) => acrossPaper(side, one) },
      [z],
    ),
    ...rowsBeside(desk, { run: "up", edge: acrossPaper(side, z[1]), away: 1, paper: (one) => downPaper(side, one) }, [
      [...y, ...cut.filter((solid) => solid.name === "bottom").flatMap((solid) => solid.place.y)],
      y,
    ]),
  ];
  return drawingOf(
    {
      id: `box ${owners[0]}/views`,
      title: `Box for ${owners.join(", ")}: from above, and cut from front to back`,
      scale: scaleText(reduction),
      equivalent: partRows(desk, solids),
    },
    [...plan, ...under(plan, section)],
  );
}

/** From above the walls show over the bottom, and what is let in over what it is let into. */
function topOrder(solids: readonly Solid[]): readonly Solid[] {
  const bottoms = solids.filter((solid) => solid.name === "bottom");
  return [...bottoms, ...solids.filter((solid) => solid.name !== "bottom")];
}

/** The second view under the first. */
function under(first: readonly Item[], second: readonly Item[]): readonly Item[] {
  const [one, other] = [boundsOf(first), boundsOf(second)];
  if (one === undefined || other === undefined) return second;
  return second.map((item) => moved(item, { x: one.left - other.left, y: one.bottom + 6 - other.top }));
}

/** The letters of the cut list, each on its piece or, where that is thin, beside it. */
function markTexts(desk: Desk, projection: Projection, solids: readonly Solid[]): readonly Item[] {
  return solids.flatMap((solid): readonly Item[] => {
    const mark = solid.part === undefined ? undefined : desk.marks.get(solid.part);
    const points = outlineOf(projection, solid);
    const [a, b] = [points[0]!, points[2]!];
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    if (mark === undefined) return [];
    const inward = solid.name === "side" ? (solid.id.endsWith("#2") ? -4 : 4) : 0;
    const down = solid.name === "front" ? -4.5 : solid.name === "back" ? 4.5 : 0;
    const size = letterHeights.name;
    const place = { x: middle.x + inward, y: middle.y + down + size / 2 };
    return [text(place, mark, { size, face: "bold", anchor: "middle", ground: "clear" })];
  });
}

function planSizes(desk: Desk, projection: Projection, solids: readonly Solid[]): readonly Item[] {
  const [x, z] = [extentOf(solids, "x"), extentOf(solids, "z")];
  const walls = solids.filter((solid) => solid.name !== "bottom" && solid.name !== "divider");
  const along = walls.filter((solid) => solid.name === "side").flatMap((solid) => solid.place.x);
  const deep = walls.filter((solid) => solid.name !== "side").flatMap((solid) => solid.place.z);
  const right = (at: (typeof x)[0]): number => acrossPaper(projection, at);
  const up = (at: (typeof x)[0]): number => downPaper(projection, at);
  return [
    ...rowsBeside(desk, { run: "across", edge: up(z[0]), away: 1, paper: right }, [along, x]),
    ...rowsBeside(desk, { run: "up", edge: right(x[0]), away: -1, paper: up }, [deep, z]),
  ];
}

function partRows(desk: Desk, solids: readonly Solid[]): Drawing["equivalent"] {
  const parts = new Map<Part, number>();
  for (const { part } of solids) if (part !== undefined) parts.set(part, (parts.get(part) ?? 0) + 1);
  return {
    columns: ["mark", "part", "pieces", "length", "width", "thickness"],
    rows: [...parts].map(([part, count]) => [
      desk.marks.get(part) ?? "",
      part.name,
      String(count),
      sized(desk, part.length.value),
      sized(desk, part.width.value),
      sized(desk, part.thickness.value),
    ]),
  };
}
