import { type Kind, type Sheet, valuesAround } from "./pattern-values.ts";
import { seededRandom } from "./random.ts";
import { ALONG_X, ALONG_Y, type Along, LEAF, leaf, type Node, split } from "./tree.ts";

/** A way to fill one sheet: its tree, with kinds in place of blanks, and the kinds in it, each as often as it is there. */
export type Filling = { readonly tree: () => Node; readonly kinds: readonly number[] };

/**
 * Fillings worth more than asked, the dearest first; `complete` when there are no others but poorer ones of their kind. Where
 * what was asked is more, none at all is worth more than `most`.
 */
export type Priced = { readonly patterns: readonly Filling[]; readonly complete: boolean; readonly most: number };

/** A box built so far: its size, what is in it, and of what two boxes it was made. */
type Box = {
  readonly w: number;
  readonly h: number;
  readonly worth: number;
  readonly kinds: readonly number[];
  /** A bit for each kind (some share one): boxes without a bit in common have no kind in common. */
  readonly bits: number;
  readonly along: Along;
  readonly a: Box | undefined;
  readonly b: Box | undefined;
};

/** Boxes joined before it is enough: where patterns were found, and where none were. */
const JOINED_IF_FOUND = 1_000;
const MOST_JOINED = 4_000;
const MANY_FOUND = 50;
const MOST_BOXES = 8_000;
const RANKS = 200;
/** How much the loss of a box so far counts against the loss that the whole sheet may have. */
const LOSS = 0.5;

/**
 * Finds the patterns whose kinds are worth more than `least` together, no kind more often than `demand`: boxes are joined
 * side by side and one above the other as long as the bound on what may come around them allows (Wang 1983; Viswanathan
 * and Bagchi 1993), those first that lose least for their area. Yields after each short piece of work.
 */
export function* pricePatterns(
  kinds: readonly Kind[],
  demand: readonly number[],
  worth: Float64Array,
  sheet: Sheet,
  least: number,
): Generator<undefined, Priced> {
  const around = yield* valuesAround(kinds, demand, worth, sheet);
  const highest = Math.max(around(0, 0), least + 1e-6);
  const area = sheet.w * sheet.h;
  const joined: Box[] = [];
  const ranks: Box[][] = Array.from({ length: RANKS }, () => []);
  const seen = new Map<number, Box[]>();
  const found: Box[] = [];
  const count = new Int32Array(kinds.length);
  const tally = new Int32Array(kinds.length);
  const random = seededRandom(1);
  const numbers = kinds.map(() => Math.floor(random.unit() * 2 ** 32));
  let top = RANKS - 1;
  let boxes = 0;
  kinds.forEach(({ w, h, turns }, kind) => {
    if (demand[kind]! < 1 || worth[kind]! <= 0) return;
    const single = {
      worth: worth[kind]!,
      kinds: [kind],
      bits: 1 << (kind % 31),
      along: LEAF as Along,
      a: undefined,
      b: undefined,
    };
    for (const lies of turns && w !== h
      ? [
          { w, h },
          { w: h, h: w },
        ]
      : [{ w, h }]) {
      if (lies.w <= sheet.w && lies.h <= sheet.h) offer({ ...single, ...lies });
    }
  });
  for (let turn = 0; turn < (found.length < MANY_FOUND ? MOST_JOINED : JOINED_IF_FOUND) && boxes < MOST_BOXES; turn++) {
    while (0 <= top && ranks[top]!.length === 0) top--;
    const box = ranks[top]?.pop();
    if (box === undefined) break;
    joined.push(box);
    joinToAll(box);
    yield;
  }
  while (0 <= top && ranks[top]!.length === 0) top--;
  found.sort((a, b) => b.worth - a.worth);
  return {
    patterns: found.map((box) => ({ tree: () => treeOf(box), kinds: box.kinds })),
    complete: top < 0,
    most: Math.max(0, found[0]?.worth ?? 0, ...ranks.flat().map((box) => box.worth + around(box.w, box.h))),
  };

  function joinToAll(box: Box): void {
    for (const kind of box.kinds) count[kind]!++;
    for (const other of joined) {
      const beside = box.w + other.w <= sheet.w;
      const above = box.h + other.h <= sheet.h;
      if ((!beside && !above) || ((box.bits & other.bits) !== 0 && tooMany(other))) continue;
      if (beside) join(box, other, ALONG_X, box.w + other.w, Math.max(box.h, other.h));
      if (above) join(box, other, ALONG_Y, Math.max(box.w, other.w), box.h + other.h);
    }
    for (const kind of box.kinds) count[kind]!--;
  }

  function tooMany(other: Box): boolean {
    let over = false;
    for (const kind of other.kinds) if (demand[kind]! < ++count[kind]!) over = true;
    for (const kind of other.kinds) count[kind]!--;
    return over;
  }

  function join(a: Box, b: Box, along: Along, w: number, h: number): void {
    const sum = a.worth + b.worth;
    if (sum + around(w, h) <= least) return;
    offer({ w, h, worth: sum, kinds: [...a.kinds, ...b.kinds], bits: a.bits | b.bits, along, a, b });
  }

  function offer(box: Box): void {
    const most = box.worth + around(box.w, box.h);
    if (most <= least || isKnown(box)) return;
    boxes++;
    if (least < box.worth) found.push(box);
    const loss = (highest - most) / (highest - least) / ((box.w * box.h) / area);
    const level = Math.floor(RANKS * (1 - LOSS * loss));
    const rank = box.along === LEAF ? RANKS - 1 : Math.max(0, Math.min(RANKS - 2, level));
    ranks[rank]!.push(box);
    top = Math.max(top, rank);
  }

  /** True when a box of the same kinds is no wider and no higher; else the box is kept for this question. */
  function isKnown(box: Box): boolean {
    let key = 0;
    for (const kind of box.kinds) key += numbers[kind]!;
    const alike = seen.get(key);
    if (alike === undefined) seen.set(key, [box]);
    else {
      if (alike.some((one) => one.w <= box.w && one.h <= box.h && sameKinds(one, box))) return true;
      alike.push(box);
    }
    return false;
  }

  function sameKinds(one: Box, other: Box): boolean {
    for (const kind of one.kinds) tally[kind]!++;
    for (const kind of other.kinds) tally[kind]!--;
    const same = one.kinds.every((kind) => tally[kind] === 0) && other.kinds.every((kind) => tally[kind] === 0);
    for (const kind of one.kinds) tally[kind] = 0;
    for (const kind of other.kinds) tally[kind] = 0;
    return same;
  }
}

function treeOf({ along, kinds, w, h, a, b }: Box): Node {
  if (a === undefined || b === undefined) return leaf(kinds[0]!, w, h);
  return split(along, [treeOf(a), treeOf(b)]);
}
