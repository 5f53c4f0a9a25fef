import type { BoxBlock, CornerKind, FillBlock, FrontBlock, ShelfBlock } from "../core/design.ts";
import { before } from "../core/span.ts";
import type { BlockWord } from "../core/vocabulary.ts";
import type * as ast from "../generated/ast.ts";
import type { Bag } from "./bag.ts";
import {
  allOf,
  angle,
  bagOf,
  choice,
  count,
  flag,
  given,
  givenList,
  joint,
  only,
  stockUse,
  stockUses,
  weight,
} from "./bag.ts";
import { lowerExpr, lowerMeasure } from "./lower-expr.ts";
import { blockOf } from "./lower-stock.ts";
import { lowerNames } from "./names.ts";
import type { Reader } from "./reader.ts";
import { maybe, report, spanOf, spanOfField, wordOf } from "./reader.ts";

function fillOf(reader: Reader, node: ast.FillBlock): FillBlock {
  checkJoiner(reader, node);
  return {
    ...blockOf(reader, node),
    openings: lowerNames(reader, maybe(node.names)),
    like: wordOf(reader, node, "like", node.like),
  };
}

/** What can be one thing over several openings. */
const spans: ReadonlySet<string> = new Set(["front", "door"]);

function checkJoiner(reader: Reader, node: ast.FillBlock): void {
  const wanted = node.kind === "shelf" ? "in" : "for";
  const said = node.joiner;
  if (maybe(node.names) === undefined || said === wanted || (said === "spanning" && spans.has(node.kind))) return;
  const names = spanOf(reader, node.names);
  report(reader, {
    code: "syntax/unreadable",
    severity: "error",
    span: said === undefined ? before(names) : spanOfField(reader, node, "joiner"),
    message:
      said === undefined
        ? `"${wanted}" is missing before the name`
        : `"${said}" was not expected here: it is "${wanted}"`,
    reason: "This part of the file cannot be read; all else is still worked out.",
    remedy: `Write ${node.kind} ${wanted} ${node.names.entries[0]?.first ?? "NAME"}.`,
    fix: {
      title: `Write ${wanted}`,
      edits: [
        said === undefined
          ? { span: before(names), text: `${wanted} ` }
          : { span: spanOfField(reader, node, "joiner"), text: wanted },
      ],
    },
  });
}

export function lowerBox(reader: Reader, node: ast.FillBlock): BoxBlock {
  const bag = bagOf(reader, "box", node.properties);
  return {
    ...fillOf(reader, node),
    kind: "box",
    sides: stockUse(bag, "sides"),
    front: stockUse(bag, "front"),
    back: stockUse(bag, "back"),
    bottom: stockUse(bag, "bottom"),
    packing: stockUse(bag, "packing"),
    corners: cornersOf(bag),
    slides: slidesOf(bag),
    wide: given(bag, "wide"),
    high: given(bag, "high"),
    deep: given(bag, "deep"),
    at: given(bag, "at"),
    lap: given(bag, "lap"),
    play: given(bag, "play"),
    holds: weight(bag, "holds"),
    dividers: dividersOf(bag),
  };
}

/** The parser joins the words of a joint without their space. */
const cornerKinds: Record<string, CornerKind> = {
  pocketscrews: "pocket screws",
  "half-blinddovetails": "half-blind dovetails",
};

function cornersOf(bag: Bag): BoxBlock["corners"] {
  const found = only(bag, "CornersProperty", "corners");
  const said = maybe(found?.node.joint);
  if (found === undefined || said === undefined) return undefined;
  return {
    key: found.key,
    kind: cornerKinds[said] ?? (said as CornerKind),
    depth: lowerMeasure(bag.reader, found.node.depth),
    endsOverSides: found.node.ends,
    span: spanOfField(bag.reader, found.node, "joint"),
  };
}

function slidesOf(bag: Bag): BoxBlock["slides"] {
  const found = only(bag, "SlidesProperty", "slides");
  if (found === undefined) return undefined;
  const name = wordOf(bag.reader, found.node, "name", maybe(found.node.name));
  if (name === undefined) return undefined;
  const length = found.node.length;
  return { key: found.key, name, length: length === undefined ? undefined : lowerExpr(bag.reader, length, name.span) };
}

function dividersOf(bag: Bag): BoxBlock["dividers"] {
  const found = only(bag, "DividersProperty", "dividers");
  if (found === undefined || maybe(found.node.count) === undefined) return undefined;
  return {
    key: found.key,
    count: countExpr(bag, found.node, found.node.count),
    direction: found.node.direction ?? "along",
    from: wordOf(bag.reader, found.node, "stock", found.node.stock),
  };
}

/** A bare count of the grammar as an expression, so that one evaluator reads every number. */
function countExpr(bag: Bag, node: ast.DividersProperty | ast.MidProperty | ast.HingesProperty, text: string) {
  const span = spanOfField(bag.reader, node, "count");
  const quantity = { $type: "Quantity", $container: node, count: text, $cstNode: undefined } as unknown as ast.Quantity;
  const expr = lowerExpr(bag.reader, quantity, span);
  return { ...expr, span };
}

export function lowerFront(reader: Reader, node: ast.FillBlock): FrontBlock {
  const kind = node.kind === "false" ? "false front" : node.kind === "door" ? "door" : "front";
  const word: BlockWord = kind === "door" ? "door" : "front";
  const bag = bagOf(reader, word, node.properties);
  return {
    ...fillOf(reader, node),
    kind,
    spanning: node.joiner === "spanning" && spans.has(kind),
    overlay: givenList(bag, "overlay"),
    fullOverlay: flag(bag, "full-overlay"),
    inset: flag(bag, "inset"),
    reveal: given(bag, "reveal"),
    gap: givenList(bag, "gap"),
    pair: flag(bag, "pair"),
    slab: stockUse(bag, "slab"),
    frame: doorFrameOf(bag),
    panel: stockUse(bag, "panel"),
    stiles: given(bag, "stiles"),
    rails: givenList(bag, "rails"),
    joint: joint(bag),
    mitred: flag(bag, "mitred"),
    float: given(bag, "float"),
    mid: midOf(bag),
    edging: stockUses(bag, "edging"),
    grain: choice(bag, "grain"),
    matched: flag(bag, "matched"),
    hinged: choice(bag, "hinged"),
    hinges: hingesOf(bag),
    opens: angle(bag, "opens"),
    pulls: count(bag, "pulls"),
    wide: given(bag, "wide"),
    high: given(bag, "high"),
  };
}

function doorFrameOf(bag: Bag): FrontBlock["frame"] {
  const found = only(bag, "FrameProperty", "frame");
  if (found === undefined) return undefined;
  const stock = wordOf(bag.reader, found.node, "stock", maybe(found.node.stock));
  if (stock === undefined) return undefined;
  for (const property of found.node.properties) {
    report(bag.reader, {
      code: "statement/not-here",
      severity: "error",
      span: spanOf(bag.reader, property),
      message: "this is said of a face frame, not of the frame of a door or front",
      reason: "The frame of a door is written in one line; what else it has stands beside it.",
      remedy: `Write frame ${stock.text} LENGTH wide, and stiles, rails or joint in the block itself.`,
    });
  }
  return {
    key: found.key,
    stock,
    width: lowerMeasure(bag.reader, found.node.width),
    span: spanOf(bag.reader, found.node),
  };
}

function midOf(bag: Bag): FrontBlock["mid"] {
  return allOf(bag, "MidProperty", "mid").flatMap(({ node, key }) => {
    if (maybe(node.which) === undefined || maybe(node.count) === undefined) return [];
    return [{ key, which: node.which, count: countExpr(bag, node, node.count) }];
  });
}

function hingesOf(bag: Bag): FrontBlock["hinges"] {
  const found = only(bag, "HingesProperty", "hinges");
  if (found === undefined) return undefined;
  const name = wordOf(bag.reader, found.node, "name", maybe(found.node.name));
  if (name === undefined) return undefined;
  const written = found.node.count;
  return { key: found.key, name, count: written === undefined ? undefined : countExpr(bag, found.node, written) };
}

export function lowerShelf(reader: Reader, node: ast.FillBlock): ShelfBlock {
  const bag = bagOf(reader, "shelf", node.properties);
  return {
    ...fillOf(reader, node),
    kind: "shelf",
    from: stockUse(bag, "from"),
    adjustable: flag(bag, "adjustable"),
    fixed: flag(bag, "fixed"),
    holds: weight(bag, "holds"),
    count: count(bag, "count"),
    edging: stockUses(bag, "edging"),
    at: givenList(bag, "at"),
    rows: given(bag, "rows"),
    set: given(bag, "set"),
    gap: given(bag, "gap"),
  };
}
