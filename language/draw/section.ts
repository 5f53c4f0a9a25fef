import type { Length } from "../core/length.ts";
import { add, compare, equal, less, over, times } from "../core/rational.ts";
import type { BoxModel, Opening } from "../derive/model.ts";
import { drawingOf } from "./bounds.ts";
import type { Desk } from "./desk.ts";
import { drawn, extentOf, millimetres, openingPlace, reductionFor, scaleText, sized } from "./desk.ts";
import type { Drawing, Equivalent, Item } from "./display-list.ts";
import { letterHeights, text } from "./display-list.ts";
import { idOf } from "./elevation.ts";
import { fitted, textWidth } from "./letters.ts";
import type { Scene } from "./place/scene.ts";
import { slideMiddle } from "./place/slide.ts";
import type { Range, Solid } from "./place/solid.ts";
import { longOf } from "./place/solid.ts";
import { sectionLetter } from "./section-marks.ts";
import { planSizes, sideSizes } from "./section-sizes.ts";
import type { Projection, View } from "./view.ts";
import { cutItem, farthestFirst, fromAbove, fromSide, hiddenItem, parted, point, seenItem } from "./view.ts";

/** Openings one above the other, and where they are cut from top to bottom. */
export interface Column {
  readonly x: Range;
  readonly openings: readonly Opening[];
  readonly at: Length;
}

/** The columns of a scene from left to right; openings of both faces that share a place share a column. */
export function columnsOf(scene: Scene): readonly Column[] {
  const columns: { x: Range; openings: Opening[] }[] = [];
  for (const opening of scene.openings) {
    const { x } = openingPlace(scene, opening);
    const same = columns.find((column) => equal(column.x[0], x[0]) && equal(column.x[1], x[1]));
    if (same === undefined) columns.push({ x, openings: [opening] });
    else same.openings.push(opening);
  }
  return columns.sort((a, b) => compare(a.x[0], b.x[0])).map(({ x, openings }) => ({ x, openings, at: cutPlace(x) }));
}

/** Three eighths along: clear of a middle stile and of the gap of a pair. */
function cutPlace(range: Range): Length {
  return add(range[0], times(over(longOf(range), 8), 3));
}

/** A cut from front to back through one column, the front on the left. */
export function sideSection(desk: Desk, scene: Scene, column: Column, index: number): Drawing | undefined {
  const letter = sectionLetter(index);
  const solids = scene.solids.filter((solid) => isShell(solid) || belongs(solid, column.openings));
  const { items, projection } = sectionItems(desk, fromSide, solids, column.at, { wide: 110, high: 95 });
  const boxes = scene.boxes.filter((box) => column.openings.includes(box.opening));
  return drawingOf(
    {
      id: `${idOf(scene)}/section ${letter}`,
      title: `Section ${letter}–${letter} through ${column.openings.map((opening) => opening.name.text).join(", ")}`,
      scale: scaleText(projection.reduction),
      equivalent: depthRows(desk, boxes),
    },
    [...items, ...sideNames(projection, scene, boxes), ...sideSizes(desk, scene, projection, column, boxes)],
  );
}

/** A level cut seen from above, the front below, at the height where it meets the most boxes. */
export function planSection(desk: Desk, scene: Scene): Drawing | undefined {
  const at = planHeight(desk, scene);
  if (at === undefined) return undefined;
  const openings = scene.openings.filter((opening) => holdsIt(openingPlace(scene, opening).y, at));
  const solids = scene.solids.filter((solid) => isShell(solid) || belongs(solid, openings));
  const { items, projection } = sectionItems(desk, fromAbove, solids, at, { wide: 142, high: 95 });
  const boxes = scene.boxes.filter((box) => openings.includes(box.opening));
  return drawingOf(
    {
      id: `${idOf(scene)}/plan`,
      title: `Plan section through ${openings.map((opening) => opening.name.text).join(", ")}, ${sized(desk, at)} up`,
      scale: scaleText(projection.reduction),
      equivalent: widthRows(desk, boxes),
    },
    [
      ...items,
      ...planNames(desk, projection, scene, boxes),
      ...planSizes(desk, scene, projection, openings, parted(fromAbove, solids, at).cut),
    ],
  );
}

function planHeight(desk: Desk, scene: Scene): Length | undefined {
  const tables = { context: desk.context, model: desk.model, stocks: desk.model.stocks };
  const heights = [
    ...scene.boxes.map((box) => add(openingPlace(scene, box.opening).y[0], slideMiddle(tables, box))),
    ...scene.openings.map((opening) => cutPlace(openingPlace(scene, opening).y)),
  ];
  const met = (at: Length): number =>
    scene.solids.filter((solid) => solid.role === "box" && holdsIt(solid.place.y, at)).length;
  return heights.reduce<Length | undefined>(
    (best, at) => (best === undefined || met(best) < met(at) ? at : best),
    undefined,
  );
}

function holdsIt([start, end]: Range, at: Length): boolean {
  return less(start, at) && less(at, end);
}

function isShell(solid: Solid): boolean {
  return solid.role === "case" || solid.role === "frame" || solid.role === "existing";
}

function belongs(solid: Solid, openings: readonly Opening[]): boolean {
  const owner = solid.of.slice(solid.of.indexOf(" ") + 1);
  return openings.some((opening) => owner.split("+").includes(opening.name.text));
}

interface Drawn {
  readonly items: readonly Item[];
  readonly projection: Projection;
}

/** What is seen beyond the cut, what is hidden there, then what is cut. */
function sectionItems(
  desk: Desk,
  view: View,
  solids: readonly Solid[],
  at: Length,
  room: { readonly wide: number; readonly high: number },
): Drawn {
  const wide = millimetres(longOf(extentOf(solids, view.right)));
  const high = millimetres(longOf(extentOf(solids, view.up)));
  const projection: Projection = { view, reduction: reductionFor(desk, wide, high, room) };
  const { seen, cut } = parted(view, solids, at);
  const isHidden = (solid: Solid): boolean => view === fromSide && (solid.role === "slide" || solid.role === "mount");
  const items = [
    ...drawn(
      desk,
      projection,
      farthestFirst(
        view,
        seen.filter((solid) => !isHidden(solid)),
      ),
      seenItem,
    ),
    ...drawn(desk, projection, seen.filter(isHidden), hiddenItem),
    ...drawn(desk, projection, cut, cutItem),
  ];
  return { items, projection };
}

/** The name of each box over its side. */
function sideNames(projection: Projection, scene: Scene, boxes: readonly BoxModel[]): readonly Item[] {
  return boxes.flatMap((box) => {
    const solids = scene.solids.filter((solid) => solid.of === box.of && solid.role === "box");
    if (solids.length === 0) return [];
    const [z, y] = [extentOf(solids, "z"), extentOf(solids, "y")];
    const at = point(projection, over(add(z[0], z[1]), 2), over(add(y[0], y[1]), 2));
    return [nameText(at, box.opening.name.text, 60)];
  });
}

function nameText(at: { readonly x: number; readonly y: number }, name: string, wide: number): Item {
  const size = letterHeights.name;
  return text({ x: at.x, y: at.y + size / 2 }, fitted(name, wide, size, "bold"), {
    size,
    face: "bold",
    anchor: "middle",
    ground: "clear",
  });
}

function planNames(desk: Desk, projection: Projection, scene: Scene, boxes: readonly BoxModel[]): readonly Item[] {
  return boxes.flatMap((box) => {
    const solids = scene.solids.filter((solid) => solid.of === box.of && solid.role === "box");
    if (solids.length === 0) return [];
    const [x, z] = [extentOf(solids, "x"), extentOf(solids, "z")];
    const at = point(projection, over(add(x[0], x[1]), 2), over(add(z[0], z[1]), 2));
    const inside = box.inside;
    const sizes = inside === undefined ? "" : `${sized(desk, inside.wide.value)} × ${sized(desk, inside.deep.value)}`;
    const room = millimetres(longOf(x)) / projection.reduction - 8;
    const size = textWidth(`inside ${sizes}`, letterHeights.size) < room ? `inside ${sizes}` : sizes;
    return [
      nameText({ x: at.x, y: at.y - 3 }, box.opening.name.text, 50),
      text({ x: at.x, y: at.y + 3.4 }, size, { anchor: "middle", ground: "clear" }),
    ];
  });
}

function depthRows(desk: Desk, boxes: readonly BoxModel[]): Equivalent {
  return {
    columns: ["box", "depth", "slide", "depth of the opening", "height", "below", "above"],
    rows: boxes.map((box) => [
      box.opening.name.text,
      sized(desk, box.deep.value),
      box.slides.length === undefined ? "none fits" : sized(desk, box.slides.length.value),
      box.opening.deep === undefined ? "not given" : sized(desk, box.opening.deep.value),
      sized(desk, box.high.value),
      sized(desk, box.slides.below.value),
      sized(desk, box.slides.above.value),
    ]),
  };
}

function widthRows(desk: Desk, boxes: readonly BoxModel[]): Equivalent {
  return {
    columns: ["box", "width", "opening", "inside width", "inside depth"],
    rows: boxes.map((box) => [
      box.opening.name.text,
      sized(desk, box.wide.value),
      sized(desk, box.opening.wide.value),
      box.inside === undefined ? "" : sized(desk, box.inside.wide.value),
      box.inside === undefined ? "" : sized(desk, box.inside.deep.value),
    ]),
  };
}
