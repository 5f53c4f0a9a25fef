import type { FaceFrame, LayoutItem, MemberItem, OpeningItem, Share } from "../core/design.ts";
import type { Span } from "../core/span.ts";
import type * as ast from "../generated/ast.ts";
import { type Bag, bagOf, given, givenList, joint } from "./bag.ts";
import { lowerMeasure } from "./lower-expr.ts";
import { lowerNames } from "./names.ts";
import type { Reader } from "./reader.ts";
import { maybe, report, spanOf, spanOfField, wordOf } from "./reader.ts";

/** Deeper than any frame is split; guards the derivation against text that only nests. */
const deepest = 24;

export function lowerLayout(reader: Reader, properties: readonly ast.Property[], depth = 0): readonly LayoutItem[] {
  return properties.flatMap((property): readonly LayoutItem[] => {
    switch (property.$type) {
      case "Split":
        return lowerSplit(reader, property, depth);
      case "Member":
        return [lowerMember(reader, property)];
      case "OpeningItem":
        return lowerOpening(reader, property);
      case "OpeningsItem":
        return lowerOpenings(reader, property);
      default:
        return [];
    }
  });
}

function lowerSplit(reader: Reader, node: ast.Split, depth: number): readonly LayoutItem[] {
  const word = { text: node.direction, span: spanOfField(reader, node, "direction") };
  if (deepest < depth) {
    report(reader, {
      code: "layout/too-deep",
      severity: "error",
      span: word.span,
      message: `this layout is split more than ${deepest} times over`,
      reason: "No frame is divided that often.",
      remedy: "Check the brackets.",
    });
    return [];
  }
  return [
    {
      kind: "split",
      direction: node.direction,
      share: lowerShare(reader, node.share),
      items: lowerLayout(reader, node.items, depth + 1),
      word,
      span: spanOf(reader, node),
    },
  ];
}

function lowerMember(reader: Reader, node: ast.Member): MemberItem {
  return {
    kind: node.kind,
    width: lowerMeasure(reader, node.width),
    word: { text: node.kind, span: spanOfField(reader, node, "kind") },
  };
}

function lowerOpening(reader: Reader, node: ast.OpeningItem): readonly OpeningItem[] {
  const name = wordOf(reader, node, "name", maybe(node.name));
  if (name === undefined) return [];
  const bag = bagOf(reader, "opening", node.properties);
  for (const key of ["wide", "high", "beside"]) notOfLayout(bag, key);
  return [
    {
      kind: "opening",
      name,
      share: lowerShare(reader, node.share),
      deep: givenList(bag, "deep"),
      span: spanOf(reader, node),
    },
  ];
}

/** In a layout the size of an opening follows from what stands round it. */
function notOfLayout(bag: Bag, key: string): void {
  const stated = givenList(bag, key);
  if (stated === undefined) return;
  report(bag.reader, {
    code: "statement/not-here",
    severity: "error",
    span: stated.key.span,
    message: `"${key}" is not said of an opening in a layout`,
    reason: "It follows from the division that the opening stands in, and from the members round it.",
    remedy: "Write its share of the division behind its name: opening NAME 6.",
  });
}

/** Several openings in one line, with the member said between each two of them. */
function lowerOpenings(reader: Reader, node: ast.OpeningsItem): readonly LayoutItem[] {
  const names = lowerNames(reader, maybe(node.names));
  const span = spanOf(reader, node);
  const share = lowerShare(reader, node.share) ?? { kind: "equal", span };
  const member = lowerBetween(reader, node, span);
  return names.flatMap((name, index): readonly LayoutItem[] => {
    const opening: OpeningItem = { kind: "opening", name, share, deep: undefined, span };
    return index === 0 || member === undefined ? [opening] : [member, opening];
  });
}

function lowerBetween(reader: Reader, node: ast.OpeningsItem, span: Span): MemberItem | undefined {
  if (node.between === undefined) return undefined;
  const kinds = { rails: "rail", stiles: "stile", partitions: "partition" } as const;
  const word = wordOf(reader, node, "between", node.between) ?? { text: node.between, span };
  return { kind: kinds[node.between], width: lowerMeasure(reader, node.width), word };
}

function lowerShare(reader: Reader, node: ast.Share | undefined): Share | undefined {
  if (node === undefined) return undefined;
  const span = spanOf(reader, node);
  if (node.rest) return { kind: "rest", span };
  if (node.equal) return { kind: "equal", span };
  const measure = lowerMeasure(reader, node.measure);
  return measure === undefined ? undefined : { kind: "size", measure, span };
}

export function lowerFaceFrame(reader: Reader, node: ast.FrameProperty): FaceFrame | undefined {
  const stock = wordOf(reader, node, "stock", maybe(node.stock));
  if (stock === undefined) return undefined;
  const bag = bagOf(reader, "face frame", node.properties);
  if (node.width !== undefined) {
    report(reader, {
      code: "statement/not-here",
      severity: "error",
      span: spanOf(reader, node.width),
      message: "a face frame has no one width here",
      reason: "This is how the frame of a door is written; a face frame has stiles, rails and openings.",
      remedy: `Write frame ${stock.text} { stiles LENGTH  rails LENGTH  across { ... } }.`,
    });
  }
  return {
    word: { text: "frame", span: spanOfField(reader, node, "key") },
    stock,
    stiles: given(bag, "stiles"),
    rails: given(bag, "rails"),
    joint: joint(bag),
    layout: lowerLayout(reader, node.properties),
    span: spanOf(reader, node),
  };
}
