import { construct, KEYS } from "./construct.ts";
import { usedSheet } from "./cut-tree.ts";
import { layOut } from "./layout.ts";
import { type Priced, pricePatterns } from "./pattern-price.ts";
import type { Kind, Sheet } from "./pattern-values.ts";
import { type Panel, prepare } from "./prepare.ts";
import type { CutPiece, SheetPart } from "./problem.ts";
import type { Blanks } from "./search.ts";
import { collectItems, LEAF, type Node, split } from "./tree.ts";

/** What one piece of wood can be cut into: the tree of its cuts, with kinds in place of blanks, and how many it gives of each. */
export type CutUp = { readonly tree: Node; readonly counts: readonly number[]; readonly area: number };

/** What may be cut from a piece, of each kind so many at most. All sizes are grown by one kerf, the piece's own too; areas are not. */
export type Wish = {
  readonly kinds: readonly Kind[];
  readonly demand: readonly number[];
  readonly areas: readonly number[];
  readonly sheet: Sheet;
};

/** Turns of the search that may still be spent. Shared by several questions, so that many of them take no more time than few. */
export type Purse = { left: number };

/** Turns for one question: the later ones are the dearer. */
const MOST_TURNS = 2000;

/** All fillings with more area than asked, the fullest first; nothing where the purse does not last to the end of the search. */
export function fillingsOver(wish: Wish, least: number, purse: Purse): readonly CutUp[] | undefined {
  const { kinds, demand, areas, sheet } = wish;
  const pricing = pricePatterns(kinds, demand, Float64Array.from(areas), sheet, least);
  for (let turn = 0; turn < MOST_TURNS && 0 < purse.left; turn++) {
    purse.left--;
    const step = pricing.next();
    if (step.done === true) return step.value.complete ? once(step.value, areas) : undefined;
  }
  return undefined;
}

/** Each set of kinds once. */
function once({ patterns }: Priced, areas: readonly number[]): readonly CutUp[] {
  const seen = new Set<string>();
  return patterns.flatMap((pattern): readonly CutUp[] => {
    const counts = countsOf(pattern, areas.length);
    const key = counts.join();
    if (seen.has(key)) return [];
    seen.add(key);
    return [{ tree: pattern.tree(), counts, area: areaOf(counts, areas) }];
  });
}

function countsOf({ kinds }: Pick<Priced["patterns"][number], "kinds">, length: number): readonly number[] {
  const counts = Array.from({ length }, () => 0);
  for (const kind of kinds) counts[kind]!++;
  return counts;
}

function areaOf(counts: readonly number[], areas: readonly number[]): number {
  return counts.reduce((sum, count, kind) => sum + count * areas[kind]!, 0);
}

/** A good filling at once: the best of the first layouts of a plan. Nothing where no blank fits. */
export function quickFilling({ kinds, demand, areas, sheet }: Wish): CutUp | undefined {
  const most = sheet.w * sheet.h;
  const items = kinds.flatMap(({ w, h }, kind) =>
    Array.from({ length: Math.min(demand[kind]!, Math.floor(most / (w * h))) }, () => kind),
  );
  const blanks = blanksOf(kinds, items);
  const stock = { id: "", width: sheet.w, height: sheet.h, cost: 0 };
  const panels: readonly Panel[] = [{ stock, ...sheet, have: 1, offcut: true, cost: 0 }];
  const found = KEYS.flatMap((key): readonly CutUp[] => {
    const root = construct(blanks, panels, key, 0).layouts[0]?.root;
    if (root === undefined) return [];
    const tree = exchanged(root, (item) => items[item]!);
    const inside: number[] = [];
    collectItems(tree, inside);
    const counts = countsOf({ kinds: inside }, kinds.length);
    return [{ tree, counts, area: areaOf(counts, areas) }];
  });
  const [first, ...others] = found;
  return first === undefined ? undefined : others.reduce((best, one) => (best.area < one.area ? one : best), first);
}

function blanksOf(kinds: readonly Kind[], items: readonly number[]): Blanks {
  const column = (of: (kind: Kind) => number): Float64Array => Float64Array.from(items, (kind) => of(kinds[kind]!));
  return {
    count: items.length,
    w: column(({ w }) => w),
    h: column(({ h }) => h),
    area: column(({ w, h }) => w * h),
    turns: Uint8Array.from(items, (kind) => (kinds[kind]!.turns ? 1 : 0)),
    kind: Int32Array.from(items),
  };
}

/** The tree with another number in each of its leaves. */
function exchanged(node: Node, numberOf: (item: number) => number): Node {
  if (node.along === LEAF) return { ...node, item: numberOf(node.item) };
  return split(
    node.along,
    node.kids.map((kid) => exchanged(kid, numberOf)),
  );
}

/** The cuts of a filling on its piece, in real sizes. The parts are those of its kinds, by their number, each as often as it is in it. */
export function cutsOf(
  piece: { readonly width: number; readonly height: number },
  kerf: number,
  partOf: (kind: number) => Omit<SheetPart, "quantity">,
  { tree, counts }: Pick<CutUp, "tree" | "counts">,
): CutPiece | undefined {
  const kinds = counts.flatMap((count, kind) => (count === 0 ? [] : [{ kind, count }]));
  const parts = kinds.map(({ kind, count }): SheetPart => ({ ...partOf(kind), quantity: count }));
  const sheet = { id: "", ...piece, cost: 0, have: 1, offcut: true };
  const prepared = prepare({ sheets: [sheet], kerf, trim: 0, parts });
  const [panel] = prepared.panels;
  if (panel === undefined) return undefined;
  // Blanks stand in the order of the parts, those of one part behind each other.
  const next = new Map<number, number>();
  kinds.reduce((first, { kind, count }) => {
    next.set(kind, first);
    return first + count;
  }, 0);
  const root = exchanged(tree, (kind) => {
    const item = next.get(kind)!;
    next.set(kind, item + 1);
    return item;
  });
  return usedSheet(layOut(0, panel.w, panel.h, root, 0), panel, prepared).cuts;
}
