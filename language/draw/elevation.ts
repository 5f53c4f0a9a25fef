import type { Length } from "../core/length.ts";
import { add, subtract, zero } from "../core/rational.ts";
import type { FrontModel, Opening, Rect } from "../derive/model.ts";
import { drawingOf } from "./bounds.ts";
import type { Desk } from "./desk.ts";
import { drawn, extentOf, millimetres, openingPlace, pageRoom, reductionFor, scaleText, sized } from "./desk.ts";
import type { Drawing, Equivalent, Item, Point } from "./display-list.ts";
import { corners, letterHeights, line, outline, text } from "./display-list.ts";
import { sizesAcross, sizesUp } from "./elevation-sizes.ts";
import { fitted, textWidth } from "./letters.ts";
import { leafRects } from "./place/front.ts";
import type { Scene } from "./place/scene.ts";
import type { Solid } from "./place/solid.ts";
import { longOf } from "./place/solid.ts";
import { sectionMarks } from "./section-marks.ts";
import type { Projection, View } from "./view.ts";
import { farthestFirst, fromFront, fromRear, point, seenItem } from "./view.ts";

export type Face = "front" | "rear";

/** The frame of a face with its openings, their names and sizes, and the outlines of what goes before them. */
export function elevation(desk: Desk, scene: Scene, face: Face, cuts: readonly Length[]): Drawing | undefined {
  const openings = scene.openings.filter((opening) => opening.face === face);
  const shell = scene.solids.filter((solid) => solid.role !== "slide" && isShell(solid));
  const projection = projectionOf(desk, scene, face, shell);
  const fronts = scene.fronts.filter((front) => front.openings[0]?.face === face);
  const items = [
    ...drawn(desk, projection, farthestFirst(projection.view, shell), seenItem),
    ...openings.map((opening) => openingItem(desk, scene, projection, opening)),
    ...fronts.flatMap((front) => frontOutlines(desk, scene, projection, front)),
    ...sectionMarks(projection, cuts, extentOf(shell, "y")),
    ...sizesUp(desk, scene, projection, openings, shell),
    ...sizesAcross(desk, scene, projection, openings, shell),
  ];
  const subject = scene.case === undefined ? `Opening ${scene.name}` : `Case ${scene.name}`;
  return drawingOf(
    {
      id: `${idOf(scene)}/${face}`,
      title: scene.case === undefined ? `${subject}, as measured` : `${subject}: ${face}, its openings`,
      scale: scaleText(projection.reduction),
      equivalent: openingRows(desk, scene, openings),
    },
    items,
  );
}

/** A face as it will be seen, with its fronts on. */
export function finishedFace(desk: Desk, scene: Scene, face: Face): Drawing | undefined {
  const fronts = scene.fronts.filter((front) => front.openings[0]?.face === face);
  if (fronts.length === 0 || scene.case === undefined) return undefined;
  const owners = new Set(fronts.map((front) => front.of));
  const solids = scene.solids.filter((solid) => isShell(solid) || owners.has(solid.of));
  const shell = solids.filter(isShell);
  const projection = projectionOf(desk, scene, face, shell);
  const items = [
    ...drawn(desk, projection, farthestFirst(projection.view, solids), seenItem),
    ...fronts.flatMap((front) => leafNames(scene, projection, front)),
    ...sizesAcross(desk, scene, projection, [], shell),
    ...sizesUp(desk, scene, projection, [], shell),
  ];
  return drawingOf(
    {
      id: `${idOf(scene)}/${face}-finished`,
      title: `Case ${scene.name}: ${face}, with its fronts`,
      scale: scaleText(projection.reduction),
      equivalent: frontRows(desk, fronts),
    },
    items,
  );
}

export function idOf(scene: Scene): string {
  return `${scene.case === undefined ? "opening" : "case"} ${scene.name}`;
}

function isShell(solid: Solid): boolean {
  return solid.role === "case" || solid.role === "frame" || solid.role === "existing";
}

function projectionOf(desk: Desk, scene: Scene, face: Face, shell: readonly Solid[]): Projection {
  const view: View = face === "front" ? fromFront : fromRear;
  const [wide, high] = [millimetres(longOf(extentOf(shell, "x"))), millimetres(longOf(extentOf(shell, "y")))];
  const room = scene.case === undefined ? { wide: 100, high: 70 } : pageRoom;
  return { view, reduction: reductionFor(desk, wide, high, room) };
}

function openingItem(desk: Desk, scene: Scene, projection: Projection, opening: Opening): Item {
  const { x, y } = openingPlace(scene, opening);
  const [a, b] = [point(projection, x[0], y[0]), point(projection, x[1], y[1])];
  const size = `${sized(desk, opening.wide.value)} × ${sized(desk, opening.high.value)}`;
  const deep = opening.deep === undefined ? "" : `, ${sized(desk, opening.deep.value)} deep`;
  return {
    kind: "group",
    id: `opening ${opening.name.text}`,
    name: `opening ${opening.name.text}, ${size}${deep}`,
    target: opening.span,
    items: [
      { kind: "area", points: corners(a, b), hatch: undefined, along: { x: 1, y: 0 }, weight: "medium" },
      ...captions(a, b, opening.name.text, size),
    ],
  };
}

/** A name and a size in the middle of a space; the size is left out where there is no room for both. */
function captions(a: Point, b: Point, name: string, size: string): readonly Item[] {
  const [wide, high] = [Math.abs(b.x - a.x) - 2, Math.abs(b.y - a.y)];
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const both = letterHeights.name + letterHeights.size + 3.5 < high && textWidth(size, letterHeights.size) < wide;
  const capital = Math.min(letterHeights.name, Math.max(letterHeights.note, high - 2));
  const shown = fitted(name, wide, capital, "bold");
  const title = (y: number): Item => text({ x: middle.x, y }, shown, { size: capital, anchor: "middle", face: "bold" });
  if (!both) return [title(middle.y + capital / 2)];
  return [
    title(middle.y - 0.4),
    text({ x: middle.x, y: middle.y + letterHeights.size + 1.6 }, size, { anchor: "middle" }),
  ];
}

/** Leaves in chain lines, since they stand before the face; a door's lines meet where it is hinged. */
function frontOutlines(desk: Desk, scene: Scene, projection: Projection, front: FrontModel): readonly Item[] {
  const rects = leafRects(front);
  const items = rects.flatMap((rect, index): readonly Item[] => {
    const [a, b] = rectPoints(scene, projection, front, rect);
    const points = corners({ x: Math.min(a.x, b.x), y: b.y }, { x: Math.max(a.x, b.x), y: a.y });
    return [outline(points, "fine", "chain"), ...swing(front, points, index)];
  });
  const name = `${front.of}, ${sized(desk, front.wide.value)} × ${sized(desk, front.high.value)}`;
  return [{ kind: "group", id: front.of, name, target: front.block.head, items }];
}

function swing(
  front: FrontModel,
  [topLeft, topRight, bottomRight, bottomLeft]: readonly Point[],
  leaf: number,
): readonly Item[] {
  const hinged = front.whole.hinged?.value;
  if (front.block.kind !== "door" || hinged === undefined) return [];
  const side = leaf === 0 ? hinged : hinged === "left" ? "right" : hinged === "right" ? "left" : hinged;
  const mid = (p: Point, q: Point): Point => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
  const edges: Readonly<Record<typeof side, readonly [Point, Point, Point]>> = {
    left: [topRight!, mid(topLeft!, bottomLeft!), bottomRight!],
    right: [topLeft!, mid(topRight!, bottomRight!), bottomLeft!],
    top: [bottomLeft!, mid(topLeft!, topRight!), bottomRight!],
    bottom: [topLeft!, mid(bottomLeft!, bottomRight!), topRight!],
  };
  const [one, apex, other] = edges[side];
  return [line(one, apex, "hair", "dashed"), line(other, apex, "hair", "dashed")];
}

/** A leaf's lower left and upper right corner on the paper. */
function rectPoints(scene: Scene, projection: Projection, front: FrontModel, rect: Rect): readonly [Point, Point] {
  const turned = scene.case !== undefined && front.openings[0]?.face === "rear";
  const left = turned ? subtract(scene.case?.wide.value ?? zero, add(rect.x, rect.wide)) : rect.x;
  return [point(projection, left, rect.y), point(projection, add(left, rect.wide), add(rect.y, rect.high))];
}

function leafNames(scene: Scene, projection: Projection, front: FrontModel): readonly Item[] {
  const name = front.openings.map((opening) => opening.name.text).join(" + ");
  return leafRects(front).map((rect) => {
    const [a, b] = rectPoints(scene, projection, front, rect);
    const shown = fitted(name, Math.abs(b.x - a.x) - 2, letterHeights.name, "bold");
    const at = { x: (a.x + b.x) / 2, y: (a.y + b.y + letterHeights.name) / 2 };
    return text(at, shown, { size: letterHeights.name, face: "bold", anchor: "middle", ground: "clear" });
  });
}

function openingRows(desk: Desk, scene: Scene, openings: readonly Opening[]): Equivalent {
  return {
    columns: ["opening", "width", "height", "depth", "from the left", "from the floor"],
    rows: openings.map((opening) => [
      opening.name.text,
      sized(desk, opening.wide.value),
      sized(desk, opening.high.value),
      opening.deep === undefined ? "not given" : sized(desk, opening.deep.value),
      scene.case === undefined ? "" : sized(desk, opening.rect?.x ?? zero),
      scene.case === undefined ? "" : sized(desk, opening.rect?.y ?? zero),
    ]),
  };
}

function frontRows(desk: Desk, fronts: readonly FrontModel[]): Equivalent {
  return {
    columns: ["front", "width", "height", "leaves", "hinged"],
    rows: fronts.map((front) => [
      front.of,
      sized(desk, front.wide.value),
      sized(desk, front.high.value),
      String(front.leaves),
      front.whole.hinged?.value ?? "",
    ]),
  };
}
