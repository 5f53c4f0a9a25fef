import type { Drawing, Equivalent, Item, Point, Text } from "./display-list.ts";
import { textWidth } from "./letters.ts";

export interface Bounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const nothing: Bounds = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };

/** The room that items take, letters included; `undefined` where there are nitem. */
export function boundsOf(items: readonly Item[]): Bounds | undefined {
  const all = items.map(itemBounds).reduce(joined, nothing);
  return all.left <= all.right ? all : undefined;
}

export function joined(a: Bounds, b: Bounds): Bounds {
  return {
    left: Math.min(a.left, b.left),
    top: Math.min(a.top, b.top),
    right: Math.max(a.right, b.right),
    bottom: Math.max(a.bottom, b.bottom),
  };
}

function itemBounds(item: Item): Bounds {
  switch (item.kind) {
    case "line":
      return ofPoints([item.from, item.to]);
    case "shape":
    case "area":
      return ofPoints(item.points);
    case "circle": {
      const { at, radius } = item;
      return { left: at.x - radius, top: at.y - radius, right: at.x + radius, bottom: at.y + radius };
    }
    case "text":
      return textBounds(item);
    case "group":
      return item.items.map(itemBounds).reduce(joined, nothing);
  }
}

/** Where drawings are shown in a reader's own typeface, letters may be wider than those laid out. */
const otherFaces = 1.15;

/** The room of one text: from a little below its base line to the height of its capitals. */
export function textBounds(item: Text): Bounds {
  const long = textWidth(item.text, item.size, item.face) * otherFaces;
  const before = item.anchor === "start" ? 0 : item.anchor === "middle" ? long / 2 : long;
  const [over, under] = [item.size * 1.1, item.size * 0.35];
  const { x, y } = item.at;
  return item.turn === "level"
    ? { left: x - before, right: x - before + long, top: y - over, bottom: y + under }
    : { left: x - over, right: x + under, top: y + before - long, bottom: y + before };
}

function ofPoints(points: readonly Point[]): Bounds {
  return points.map(({ x, y }) => ({ left: x, top: y, right: x, bottom: y })).reduce(joined, nothing);
}

/** The item moved. */
export function moved(item: Item, by: Point): Item {
  const shift = (point: Point): Point => ({ x: point.x + by.x, y: point.y + by.y });
  switch (item.kind) {
    case "line":
      return { ...item, from: shift(item.from), to: shift(item.to) };
    case "shape":
    case "area":
      return { ...item, points: item.points.map(shift) };
    case "circle":
    case "text":
      return { ...item, at: shift(item.at) };
    case "group":
      return { ...item, items: item.items.map((inner) => moved(inner, by)) };
  }
}

export interface Sheet {
  readonly id: string;
  readonly title: string;
  readonly scale: string;
  readonly equivalent: Equivalent;
}

const margin = 2;

/** A drawing just large enough for its items; `undefined` where there is nothing to draw. */
export function drawingOf(sheet: Sheet, items: readonly Item[]): Drawing | undefined {
  const bounds = boundsOf(items);
  if (bounds === undefined) return undefined;
  const by = { x: margin - bounds.left, y: margin - bounds.top };
  return {
    ...sheet,
    wide: bounds.right - bounds.left + 2 * margin,
    high: bounds.bottom - bounds.top + 2 * margin,
    items: items.map((item) => moved(item, by)),
  };
}
