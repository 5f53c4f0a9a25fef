import type { Length } from "../core/length.ts";
import type { Machining, Part } from "../core/part.ts";
import { compare, equal } from "../core/rational.ts";
import { type Box, boxOf, mirrored, type Range } from "./box.ts";
import type { Draft, Turn } from "./solid.ts";

/** Where solids are gathered: the frame and the assembly that they belong to, and whether they are seen from behind. */
export interface Home {
  readonly frame: string;
  readonly assembly: string;
  /** What stands in the rear face is laid as seen from behind, and turned about with the size of its case. */
  readonly turn: Turn | undefined;
}

/** A place for one piece of a part: where it lies, from the part's own sizes. */
export interface Slot {
  readonly name: string;
  /** The sizes that it should have; the piece that has them is taken first. */
  readonly length?: Length;
  readonly width?: Length;
  readonly stock?: string;
}

/** Gives out the pieces of parts, each once: to each slot the one of its name and sizes, or else the next of its name. */
export function poolOf(parts: readonly Part[]) {
  const left = parts.flatMap((part) => Array.from({ length: part.quantity }, (_, index) => ({ part, index })));
  const take = (suits: (part: Part) => boolean): { readonly part: Part; readonly index: number } | undefined => {
    const at = left.findIndex(({ part }) => suits(part));
    return at < 0 ? undefined : left.splice(at, 1)[0];
  };
  return {
    take(slot: Slot): { readonly part: Part; readonly index: number } | undefined {
      const named = (part: Part): boolean =>
        part.name === slot.name && (slot.stock === undefined || part.stock === slot.stock);
      const sized = (part: Part): boolean =>
        named(part) &&
        (slot.length === undefined || equal(slot.length, part.length.value)) &&
        (slot.width === undefined || equal(slot.width, part.width.value));
      return take(sized) ?? take(nearest(left, named, slot));
    },
    /** What no slot took. */
    rest: (): readonly Part[] => left.map(({ part }) => part),
  };
}

export type Pool = ReturnType<typeof poolOf>;

/** Of several pieces of one name the one whose length comes nearest, so that one odd size does not shift all others. */
function nearest(
  left: readonly { readonly part: Part }[],
  named: (part: Part) => boolean,
  slot: Slot,
): (part: Part) => boolean {
  const { length } = slot;
  const of = left.map(({ part }) => part).filter(named);
  if (length === undefined || of.length === 0) return named;
  const off = (part: Part): Length => {
    const n = part.length.value;
    return compare(n, length) < 0
      ? { n: length.n * n.d - n.n * length.d, d: length.d * n.d }
      : { n: n.n * length.d - length.n * n.d, d: length.d * n.d };
  };
  const best = of.reduce((one, other) => (compare(off(other), off(one)) < 0 ? other : one));
  return (part) => part === best;
}

/** The piece as a box over three stretches; `undefined` where a stretch has no length. */
export function lay(
  home: Home,
  piece: { readonly part: Part; readonly index: number } | undefined,
  x: Range,
  y: Range,
  z: Range,
): Draft | undefined {
  const outline = piece === undefined ? undefined : turned(home.turn, x, y, z);
  return piece === undefined || outline === undefined ? undefined : { ...home, ...piece, outline, added: [], cuts: [] };
}

/** Cuts a box out of a piece; nothing where either is missing. */
export function cut(from: Draft | undefined, x: Range, y: Range, z: Range): void {
  const hole = from === undefined ? undefined : turned(from.turn, x, y, z);
  if (hole !== undefined) from?.cuts.push(hole);
}

/** Adds a box to a piece: a tongue, a tenon, a band. */
export function grow(to: Draft | undefined, x: Range, y: Range, z: Range): Box | undefined {
  const more = to === undefined ? undefined : turned(to.turn, x, y, z);
  if (more !== undefined) to?.added.push(more);
  return more;
}

function turned(turn: Turn | undefined, x: Range, y: Range, z: Range): Box | undefined {
  return turn === undefined ? boxOf(x, y, z) : boxOf(mirrored(x, turn.wide), y, mirrored(z, turn.deep));
}

/** The first machining of one kind, by its place or its note where it is told apart by one. */
export function machined(part: Part | undefined, kind: Machining["kind"], word?: string): Machining | undefined {
  return part?.machining.find(
    (made) =>
      made.kind === kind && (word === undefined || made.where.includes(word) || made.note?.includes(word) === true),
  );
}

export function present(drafts: readonly (Draft | undefined)[]): readonly Draft[] {
  return drafts.filter((draft) => draft !== undefined);
}
