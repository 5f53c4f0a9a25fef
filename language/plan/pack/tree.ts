/**
 * Guillotine layouts as slicing trees. A tree states which blanks lie beside each other, not where: every node knows the
 * smallest box it needs, and the slack of a sheet is dealt out only when gaps are listed. Nodes are never changed, so
 * that a search can keep any earlier layout for nothing.
 */

/** How a node is divided: a single blank, pieces side by side along x, or pieces stacked along y. */
export type Along = 0 | 1 | 2;
export const LEAF = 0;
export const ALONG_X = 1;
export const ALONG_Y = 2;

/** One node of a slicing tree with the smallest box that holds it. */
export type Node = {
  readonly along: Along;
  readonly item: number;
  readonly kids: readonly Node[];
  readonly w: number;
  readonly h: number;
};

const NO_KIDS: readonly Node[] = [];

/** A blank of the given size, as it lies (already turned where it is turned). */
export function leaf(item: number, w: number, h: number): Node {
  return { along: LEAF, item, kids: NO_KIDS, w, h };
}

/** Pieces side by side (`ALONG_X`) or stacked (`ALONG_Y`); a piece divided the same way is taken apart into its own. */
export function split(along: Along, pieces: readonly Node[]): Node {
  const kids = pieces.some((kid) => kid.along === along)
    ? pieces.flatMap((kid) => (kid.along === along ? kid.kids : kid))
    : pieces;
  let w = 0;
  let h = 0;
  for (let index = 0; index < kids.length; index++) {
    const kid = kids[index]!;
    if (along === ALONG_X) {
      w += kid.w;
      if (h < kid.h) h = kid.h;
    } else {
      h += kid.h;
      if (w < kid.w) w = kid.w;
    }
  }
  return { along, item: -1, kids, w, h };
}

/** The tree with one node, found by identity, exchanged for another. */
export function exchange(node: Node, target: Node, replacement: Node): Node {
  if (node === target) return replacement;
  const kids = node.kids;
  for (let index = 0; index < kids.length; index++) {
    const kid = kids[index]!;
    const changed = exchange(kid, target, replacement);
    if (changed !== kid) {
      const copy = kids.slice();
      copy[index] = changed;
      return split(node.along, copy);
    }
  }
  return node;
}

/** The tree without the items marked in `gone`, or undefined when nothing is left. */
export function without(node: Node, gone: Uint8Array): Node | undefined {
  if (node.along === LEAF) return gone[node.item] === 1 ? undefined : node;
  const kept: Node[] = [];
  let same = true;
  for (const kid of node.kids) {
    const rest = without(kid, gone);
    if (rest !== kid) same = false;
    if (rest !== undefined) kept.push(rest);
  }
  if (same) return node;
  if (kept.length === 0) return undefined;
  return kept.length === 1 ? kept[0] : split(node.along, kept);
}

/** Adds the numbers of all items in the tree to a list. */
export function collectItems(node: Node, into: number[]): void {
  if (node.along === LEAF) into.push(node.item);
  else for (const kid of node.kids) collectItems(kid, into);
}
