import type { CaseBlock } from "../core/design.ts";
import type * as ast from "../generated/ast.ts";
import type { Bag } from "./bag.ts";
import { allOf, bagOf, flag, givenList, joint, only, reportTwice, stockUse, stockUses } from "./bag.ts";
import { lowerMeasure } from "./lower-expr.ts";
import { lowerFaceFrame, lowerLayout } from "./lower-layout.ts";
import { blockOf } from "./lower-stock.ts";
import type { Reader } from "./reader.ts";
import { maybe, spanOf, wordOf } from "./reader.ts";

export function lowerCase(reader: Reader, node: ast.NamedBlock): readonly CaseBlock[] {
  const name = wordOf(reader, node, "name", maybe(node.name));
  if (name === undefined) return [];
  const bag = bagOf(reader, "case", node.properties);
  const frame = only(bag, "FrameProperty", "frame");
  return [
    {
      ...blockOf(reader, node),
      kind: "case",
      name,
      like: wordOf(reader, node, "like", node.like),
      wide: givenList(bag, "wide"),
      high: givenList(bag, "high"),
      deep: givenList(bag, "deep"),
      panels: stockUse(bag, "panels"),
      back: stockUse(bag, "back"),
      bottom: stockUse(bag, "bottom"),
      partitions: stockUse(bag, "partitions"),
      packing: stockUse(bag, "packing"),
      edging: stockUses(bag, "edging"),
      top: topOf(bag),
      kick: kickOf(bag),
      nailers: nailersOf(bag),
      joint: joint(bag),
      frame: frame === undefined ? undefined : lowerFaceFrame(reader, frame.node),
      layout: lowerLayout(reader, node.properties),
      rear: rearOf(reader, node),
      freestanding: flag(bag, "freestanding"),
      meets: meetsOf(bag),
      onWall: flag(bag, "on-wall"),
      walls: wallsOf(bag),
    },
  ];
}

function meetsOf(bag: Bag): CaseBlock["meets"] {
  return allOf(bag, "MeetsProperty", "corner").flatMap(({ node, key }) => {
    const other = wordOf(bag.reader, node, "with", maybe(node.with));
    return other === undefined || maybe(node.side) === undefined ? [] : [{ side: node.side, with: other, key }];
  });
}

/** One wall on each side. */
function wallsOf(bag: Bag): CaseBlock["walls"] {
  const walls = allOf(bag, "WallProperty", "wall").flatMap(({ node, key }): CaseBlock["walls"] => {
    const away = lowerMeasure(bag.reader, maybe(node.away));
    if (away === undefined || maybe(node.side) === undefined) return [];
    const { side } = node;
    return [{ key, side, away, trim: lowerMeasure(bag.reader, node.trim), past: lowerMeasure(bag.reader, node.past) }];
  });
  return walls.filter((wall, index) => {
    const first = walls.slice(0, index).find(({ side }) => side === wall.side);
    if (first !== undefined) reportTwice(bag.reader, wall.key, first.key.span);
    return first === undefined;
  });
}

function topOf(bag: Bag): CaseBlock["top"] {
  const found = only(bag, "TopProperty", "top");
  if (found === undefined || maybe(found.node.choice) === undefined) return undefined;
  return {
    key: found.key,
    choice: found.node.choice,
    stock: wordOf(bag.reader, found.node, "stock", found.node.stock),
    wide: lowerMeasure(bag.reader, found.node.wide),
  };
}

function kickOf(bag: Bag): CaseBlock["kick"] {
  const found = only(bag, "KickProperty", "kick");
  const high = lowerMeasure(bag.reader, maybe(found?.node.height));
  const deep = lowerMeasure(bag.reader, maybe(found?.node.depth));
  return found === undefined || high === undefined || deep === undefined ? undefined : { key: found.key, high, deep };
}

function nailersOf(bag: Bag): CaseBlock["nailers"] {
  const found = only(bag, "NailersProperty", "nailers");
  const wide = lowerMeasure(bag.reader, maybe(found?.node.wide));
  if (found === undefined || wide === undefined) return undefined;
  return { key: found.key, wide, from: wordOf(bag.reader, found.node, "stock", found.node.stock) };
}

function rearOf(reader: Reader, node: ast.NamedBlock): CaseBlock["rear"] {
  const rear = node.properties.find((property) => property.$type === "Rear");
  if (rear === undefined) return undefined;
  const bag = bagOf(reader, "rear", rear.properties);
  const frame = only(bag, "FrameProperty", "frame");
  return {
    frame: frame === undefined ? undefined : lowerFaceFrame(reader, frame.node),
    layout: lowerLayout(reader, rear.properties),
    span: spanOf(reader, rear),
  };
}
