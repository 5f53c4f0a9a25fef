import type { CutUp, Purse, Wish } from "../plan/pack/fillings.ts";
import type { Kind } from "../plan/pack/pattern-values.ts";
import { leaf } from "../plan/pack/tree.ts";

/** A piece of wood that parts may be cut from. Sizes are whole numbers, each grown by one kerf. */
export interface Giver {
  readonly w: number;
  readonly h: number;
  /** How each kind of part lies in it; nothing where none may be cut from it. */
  readonly kinds: readonly (Kind | undefined)[];
  /** Whether it may become several parts; else one at most. */
  readonly isSure: boolean;
  /** What each kind is worth, cut from it, and what it costs that it is touched at all: more area is always worth more. */
  readonly gains: readonly bigint[];
  readonly cost: bigint;
}

export interface Task {
  readonly givers: readonly Giver[];
  readonly demand: readonly number[];
  readonly areas: readonly number[];
  readonly purse: Purse;
}

/** Fillings by giver, with what they are worth in all. */
export interface Way {
  readonly given: readonly (CutUp | undefined)[];
  readonly worth: bigint;
}

export function wayOf({ givers }: Task, given: readonly (CutUp | undefined)[]): Way {
  return { given, worth: givers.reduce((sum, giver, at) => sum + worthOf(giver, given[at]), 0n) };
}

export function worthOf({ gains, cost }: Giver, filling: CutUp | undefined): bigint {
  if (filling === undefined) return 0n;
  return filling.counts.reduce((sum, count, kind) => sum + BigInt(count) * gains[kind]!, -cost);
}

export function single({ demand, areas }: Task, giver: Giver, kind: number): CutUp {
  const { w, h } = lying(giver, kind)!;
  return { tree: leaf(kind, w, h), counts: demand.map((_, at) => (at === kind ? 1 : 0)), area: areas[kind]! };
}

/** A part's size as it can lie in a piece. */
export function lying(giver: Giver, kind: number): { readonly w: number; readonly h: number } | undefined {
  const own = giver.kinds[kind];
  if (own === undefined) return undefined;
  const { w, h, turns } = own;
  if (w <= giver.w && h <= giver.h) return { w, h };
  return turns && h <= giver.w && w <= giver.h ? { w: h, h: w } : undefined;
}

/** Whether any two parts go into a piece side by side or one above the other. */
export function holdsTwo(giver: Giver, demand: readonly number[]): boolean {
  if (!giver.isSure) return false;
  const fitting = giver.kinds.flatMap((own, kind) =>
    own !== undefined && 0 < demand[kind]! && lying(giver, kind) !== undefined
      ? [{ own, more: 1 < demand[kind]! }]
      : [],
  );
  const sides = ({ w, h, turns }: Kind, of: "w" | "h"): number => (turns ? Math.min(w, h) : of === "w" ? w : h);
  return (["w", "h"] as const).some((of) => {
    const least = fitting.flatMap(({ own, more }) => (more ? [sides(own, of), sides(own, of)] : [sides(own, of)]));
    const [first, second] = least.sort((a, b) => a - b);
    return first !== undefined && second !== undefined && first + second <= giver[of];
  });
}

export function wishOf({ areas }: Task, { w, h, kinds }: Giver, demand: readonly number[]): Wish {
  const none = { w: w + 1, h: h + 1, turns: false };
  return { kinds: kinds.map((kind) => kind ?? none), demand, areas, sheet: { w, h } };
}

export function isIn({ counts }: CutUp, demand: readonly number[]): boolean {
  return counts.every((count, kind) => count <= demand[kind]!);
}
