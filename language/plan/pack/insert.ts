import { type Layout, layOut, worthOf, worthOfLayout } from "./layout.ts";
import { ALONG_X, ALONG_Y, type Along, exchange, LEAF, leaf, type Node, split } from "./tree.ts";

/** Where a blank could go: joined to `node` along `along`, in the layout number `at`. */
export type Place = { at: number; node: Node | undefined; along: Along; w: number; h: number; gain: number };

/** The layout with a blank put at the place found by `bestGap`. */
export function insertAt(layout: Layout, place: Place, item: number): Layout {
  const blank = leaf(item, place.w, place.h);
  const used = layout.w * layout.h - layout.free + place.w * place.h;
  return layOut(layout.bin, layout.w, layout.h, joined(layout.root, place.node, place.along, blank), used);
}

function joined(root: Node | undefined, node: Node | undefined, along: Along, blank: Node): Node {
  if (root === undefined || node === undefined) return blank;
  return exchange(root, node, split(along, [node, blank]));
}

/** Tries a blank of w by h in every gap of a layout and keeps the place in `best` when it gains more than what is there. */
export function bestGap(layout: Layout, at: number, w: number, h: number, best: Place): void {
  if (layout.widest < w || layout.highest < h) return;
  const { gapW, gapH, gapWorth } = layout;
  for (let gap = 0; gap < gapW.length; gap++) {
    const fw = gapW[gap]!;
    const fh = gapH[gap]!;
    if (fw < w || fh < h) continue;
    const upright = worthOf((fw - w) * fh) + worthOf(w * (fh - h));
    const flat = worthOf(fw * (fh - h)) + worthOf((fw - w) * h);
    const gain = Math.max(upright, flat) - gapWorth[gap]!;
    if (best.gain < gain) {
      best.gain = gain;
      best.at = at;
      best.node = layout.gapNode[gap];
      best.along = layout.gapAlong[gap]!;
      best.w = w;
      best.h = h;
    }
  }
}

/**
 * Puts a blank in a layout by letting boxes grow into slack they share with the pieces around them, or by gathering
 * pieces of one row under it. Answers the best such layout, or undefined when the blank cannot go in.
 */
export function squeezeIn(layout: Layout, item: number, w: number, h: number): Layout | undefined {
  const { root } = layout;
  if (root === undefined) return undefined;
  const used = layout.w * layout.h - layout.free + w * h;
  const blank = leaf(item, w, h);
  let best: Node | undefined;
  let mostWorth = 0;
  const consider = (target: Node, replacement: Node): void => {
    const tree = exchange(root, target, replacement);
    const worth = worthOfLayout(layout.w, layout.h, tree);
    if (best !== undefined && worth <= mostWorth) return;
    best = tree;
    mostWorth = worth;
  };
  const visit = (node: Node, roomW: number, roomH: number): void => {
    const sideways = node.along === ALONG_X;
    if (node.along === LEAF) return;
    const across = sideways ? roomH : roomW;
    const slack = sideways ? roomW - node.w : roomH - node.h;
    const length = sideways ? w : h;
    const breadth = sideways ? h : w;
    if (length <= slack && breadth <= across) consider(node, split(node.along, [...node.kids, blank]));
    const other = sideways ? ALONG_Y : ALONG_X;
    for (const kid of node.kids) {
      const kidLength = sideways ? kid.w : kid.h;
      const kidBreadth = sideways ? kid.h : kid.w;
      if (kid.along !== LEAF) {
        if (sideways) visit(kid, kid.w + slack, roomH);
        else visit(kid, roomW, kid.h + slack);
      } else if (kidBreadth + breadth <= across && length <= kidLength + slack) {
        consider(kid, split(other, [kid, blank]));
      }
    }
    const group = gatherUnder(node, sideways, across - breadth, length - slack);
    if (group !== undefined) {
      const rest = node.kids.filter((kid) => !group.includes(kid));
      consider(node, split(node.along, [...rest, split(other, [split(node.along, group), blank])]));
    }
  };
  visit(root, layout.w, layout.h);
  if (root.along !== ALONG_Y && root.h + h <= layout.h && w <= layout.w) consider(root, split(ALONG_Y, [root, blank]));
  if (root.along !== ALONG_X && root.w + w <= layout.w && h <= layout.h) consider(root, split(ALONG_X, [root, blank]));
  return best === undefined ? undefined : layOut(layout.bin, layout.w, layout.h, best, used);
}

/** Two or more, not all, of a node's pieces that are low enough for a blank to lie across them, or undefined. */
function gatherUnder(node: Node, sideways: boolean, highest: number, length: number): Node[] | undefined {
  const low = node.kids.filter((kid) => (sideways ? kid.h : kid.w) <= highest);
  if (low.length < 2 || low.length === node.kids.length) {
    if (low.length < 3) return undefined;
  }
  low.sort((a, b) => (sideways ? b.h - a.h : b.w - a.w));
  const group: Node[] = [];
  let sum = 0;
  for (const kid of low) {
    group.push(kid);
    sum += sideways ? kid.w : kid.h;
    if (length <= sum) break;
  }
  if (sum < length || group.length < 2 || group.length === node.kids.length) return undefined;
  return group;
}
