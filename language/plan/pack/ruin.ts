import { type Layout, layOut } from "./layout.ts";
import type { Random } from "./random.ts";
import type { Blanks } from "./search.ts";
import { collectItems, type Node, without } from "./tree.ts";

/** Layouts of some sheets, and the blanks that have no place on them. */
export type Loose = { readonly layouts: Layout[]; readonly out: number[] };

/** How much is taken out in a round: the mean number of blanks, and the share of rounds that empty whole sheets. */
export type Extent = { readonly removed: number; readonly whole: number };

/** So many whole sheets at most are emptied in one round. */
const SHEETS_AT_ONCE = 4;

/** Makes the move that takes blanks out: small groups of them from many sheets, or all from a few sheets. */
export function ruinOf(blanks: Blanks, random: Random, { removed, whole }: Extent): (from: Loose) => void {
  const gone = new Uint8Array(blanks.count);
  const taken: number[] = [];
  const touched: number[] = [];

  function ruin(from: Loose): void {
    const first = from.out.length;
    touched.length = 0;
    const count = 1 + random.below(2 * removed - 1);
    if (random.unit() < whole) emptySheets(from, count);
    else takeGroups(from, count);
    for (const at of touched) from.layouts[at] = layoutWithout(blanks, from.layouts[at]!, gone);
    for (let index = first; index < from.out.length; index++) gone[from.out[index]!] = 0;
  }

  function takeGroups(from: Loose, count: number): void {
    let toGo = count;
    for (let tries = 0; 0 < toGo && tries < 4 * removed; tries++) {
      const at = random.below(from.layouts.length);
      const root = from.layouts[at]?.root;
      if (root === undefined) continue;
      taken.length = 0;
      collectItems(randomNode(root, random), taken);
      if (taken.length <= toGo + 2) toGo -= mark(from, at);
    }
  }

  function emptySheets(from: Loose, count: number): void {
    let toGo = count;
    for (let tries = 1 + random.below(SHEETS_AT_ONCE); 0 < tries && 0 < toGo; tries--) {
      const at = random.below(from.layouts.length);
      const root = from.layouts[at]?.root;
      if (root === undefined) continue;
      taken.length = 0;
      collectItems(root, taken);
      if (taken.length <= toGo + 4) toGo -= mark(from, at);
    }
  }

  /** Marks the blanks taken as gone from a layout that will be laid out anew; answers how many were still there. */
  function mark(from: Loose, at: number): number {
    let marked = 0;
    for (const item of taken) {
      if (gone[item] === 1) continue;
      gone[item] = 1;
      from.out.push(item);
      marked++;
    }
    if (!touched.includes(at)) touched.push(at);
    return marked;
  }

  return ruin;
}

/** The layout without the blanks marked in `gone`. */
export function layoutWithout(blanks: Blanks, layout: Layout, gone: Uint8Array): Layout {
  const rest = layout.root === undefined ? undefined : without(layout.root, gone);
  const kept: number[] = [];
  if (rest !== undefined) collectItems(rest, kept);
  const used = kept.reduce((sum, item) => sum + blanks.area[item]!, 0);
  return layOut(layout.bin, layout.w, layout.h, rest, used);
}

/** A node below the root, the deeper the likelier. */
function randomNode(root: Node, random: Random): Node {
  let node = root;
  while (node.kids.length !== 0) {
    if (node !== root && random.unit() < 0.2) return node;
    node = node.kids[random.below(node.kids.length)]!;
  }
  return node;
}
