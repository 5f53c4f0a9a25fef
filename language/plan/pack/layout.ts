import { ALONG_X, ALONG_Y, type Along, LEAF, type Node } from "./tree.ts";

/**
 * The layout of one sheet: its tree, and the gaps in it. Gap g is gapW[g] by gapH[g], is filled by joining a blank to
 * gapNode[g] along gapAlong[g], and never makes any box outside itself larger.
 */
export type Layout = {
  readonly bin: number;
  readonly w: number;
  readonly h: number;
  readonly root: Node | undefined;
  readonly free: number;
  readonly gapW: readonly number[];
  readonly gapH: readonly number[];
  readonly gapNode: readonly (Node | undefined)[];
  readonly gapAlong: readonly Along[];
  readonly gapWorth: readonly number[];
  readonly widest: number;
  readonly highest: number;
  /** Sum of the worth of all gaps: larger when the free area lies in few large gaps. */
  readonly worth: number;
  /**
   * What squeezing in a blank would gain, by its kind and how it lies, as far as that was tried; minus infinity where it
   * cannot go in. Most sheets stay as they are from round to round, and blanks of one kind fare alike on them.
   */
  readonly squeezed: Map<number, number>;
};

type Gaps = {
  gapW: number[];
  gapH: number[];
  gapNode: (Node | undefined)[];
  gapAlong: Along[];
  gapWorth: number[];
  worth: number;
};

/** What a gap of this area counts for: more than in proportion, so that one large gap beats two small ones. */
export function worthOf(area: number): number {
  return area * Math.sqrt(Math.sqrt(area));
}

/** The layout of a tree on a sheet of w by h; `used` is the area of its blanks. The tree must fit. */
export function layOut(bin: number, w: number, h: number, root: Node | undefined, used: number): Layout {
  const gaps: Gaps = { gapW: [], gapH: [], gapNode: [], gapAlong: [], gapWorth: [], worth: 0 };
  if (root === undefined) addGap(gaps, w, h, undefined, LEAF, true);
  else if (root.along === LEAF) {
    const right = worthOf((w - root.w) * h) + worthOf(root.w * (h - root.h));
    const above = worthOf(w * (h - root.h)) + worthOf((w - root.w) * root.h);
    gaps.worth = Math.max(right, above);
    addGap(gaps, w - root.w, h, root, ALONG_X, false);
    addGap(gaps, w, h - root.h, root, ALONG_Y, false);
  } else {
    listGaps(gaps, root, w, h);
    if (root.along === ALONG_X) addGap(gaps, w, h - root.h, root, ALONG_Y, false);
    else addGap(gaps, w - root.w, h, root, ALONG_X, false);
  }
  let widest = 0;
  let highest = 0;
  for (const gap of gaps.gapW) if (widest < gap) widest = gap;
  for (const gap of gaps.gapH) if (highest < gap) highest = gap;
  return { bin, w, h, root, free: w * h - used, ...gaps, widest, highest, squeezed: new Map() };
}

/** The worth of the layout that `layOut` would give, without listing its gaps. */
export function worthOfLayout(w: number, h: number, root: Node): number {
  if (root.along === LEAF) {
    const right = worthOf((w - root.w) * h) + worthOf(root.w * (h - root.h));
    return Math.max(right, worthOf(w * (h - root.h)) + worthOf((w - root.w) * root.h));
  }
  return worthBelow(root, w, h);
}

function worthBelow(node: Node, w: number, h: number): number {
  const sideways = node.along === ALONG_X;
  let worth = sideways ? worthOf((w - node.w) * h) : worthOf(w * (h - node.h));
  for (const kid of node.kids) {
    if (kid.along !== LEAF) worth += worthBelow(kid, sideways ? kid.w : w, sideways ? h : kid.h);
    else worth += sideways ? worthOf(kid.w * (h - kid.h)) : worthOf((w - kid.w) * kid.h);
  }
  return worth;
}

function listGaps(gaps: Gaps, node: Node, w: number, h: number): void {
  const sideways = node.along === ALONG_X;
  if (sideways) addGap(gaps, w - node.w, h, node, ALONG_X, true);
  else addGap(gaps, w, h - node.h, node, ALONG_Y, true);
  const kids = node.kids;
  for (let index = 0; index < kids.length; index++) {
    const kid = kids[index]!;
    if (kid.along !== LEAF) listGaps(gaps, kid, sideways ? kid.w : w, sideways ? h : kid.h);
    else if (sideways) addGap(gaps, kid.w, h - kid.h, kid, ALONG_Y, true);
    else addGap(gaps, w - kid.w, kid.h, kid, ALONG_X, true);
  }
}

function addGap(gaps: Gaps, w: number, h: number, node: Node | undefined, along: Along, counts: boolean): void {
  if (w <= 0 || h <= 0) return;
  gaps.gapW.push(w);
  gaps.gapH.push(h);
  gaps.gapNode.push(node);
  gaps.gapAlong.push(along);
  const worth = worthOf(w * h);
  gaps.gapWorth.push(worth);
  if (counts) gaps.worth += worth;
}
