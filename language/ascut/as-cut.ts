import type { Finding } from "../core/finding.ts";
import type { Length } from "../core/length.ts";
import type { Part } from "../core/part.ts";
import { divide, less, subtract } from "../core/rational.ts";
import { derived, type Rule, type Sourced } from "../core/sourced.ts";
import type { Context } from "../derive/context.ts";
import type { Model } from "../derive/model.ts";
import type { DryFit } from "../solid/dry-fit.ts";
import { outsidesOf } from "./outside.ts";
import type { Piece } from "./pieces.ts";
import { resolveRecords } from "./records.ts";
import { derivedAgain, type Turned } from "./rederive.ts";
import { type Judged, judged, type Moves } from "./verdicts.ts";
import { type Wanted, wantedIn } from "./wanted.ts";

/** One line of the list with what exists of it. */
export interface Count {
  readonly wanted: Wanted;
  /** Pieces that exist and can be used, more than wanted not counted. */
  readonly made: number;
  readonly spoiled: number;
  /** Pieces that exist and cannot become what they were made as. */
  readonly lost: number;
  /** Pieces still to be cut. */
  readonly left: number;
  /** What a piece that is cut now must measure: as derived, or derived again from what is on the bench. */
  readonly length: Sourced<Length>;
  readonly width: Sourced<Length>;
}

/** Pieces that nothing wants: more than are needed, or of a part that is needed no more. */
export interface Surplus {
  readonly piece: Piece;
  readonly count: number;
}

/** What is on the bench, against what is wanted. */
export interface AsCut {
  /** Whether anything is recorded at all. */
  readonly isBegun: boolean;
  readonly counts: readonly Count[];
  readonly pieces: readonly Piece[];
  readonly judged: readonly Judged[];
  readonly surplus: readonly Surplus[];
  /** Findings of the records' own words; what is to be said of their pieces is said elsewhere. */
  readonly findings: readonly Finding[];
}

export function asCut(context: Context, model: Model, fit: DryFit | undefined): AsCut {
  const wanted = wantedIn(model);
  const { pieces, findings } = resolveRecords(context, wanted);
  const all = pieces.length === 0 ? [] : judged({ context, fit, outsides: outsidesOf(context, model), pieces });
  const turned = turnedBy(all);
  const counts = wanted.map((one) => countOf(one, pieces, all, turned.get(one.of) ?? new Map()));
  const { cuts, brokenDown, usedOffcuts } = context.design;
  return {
    isBegun: 0 < cuts.length + brokenDown.length + usedOffcuts.length,
    counts,
    pieces,
    judged: all,
    surplus: surplusOf(pieces, all),
    findings,
  };
}

const rule: Rule = {
  gives: "outside size as cut",
  formula: "{outside size} less what {as measured} is short of {as derived}",
  tag: "geometry",
};

/** The outside sizes that come out smaller, by owner: the smallest piece decides, and the others are cut to it. */
function turnedBy(all: readonly Judged[]): ReadonlyMap<string, Turned> {
  const byOwner = new Map<string, Map<Sourced<Length>, Sourced<Length>>>();
  for (const one of all) {
    if (!one.isGood) continue;
    for (const { moves, dimension } of one.joints) {
      const measured = one.piece[dimension];
      if (moves === undefined || measured === undefined) continue;
      const turned = byOwner.get(one.wanted.of) ?? new Map<Sourced<Length>, Sourced<Length>>();
      byOwner.set(one.wanted.of, turned);
      const before = turned.get(moves.outside.size);
      if (before !== undefined && !less(moves.to, before.value)) continue;
      turned.set(moves.outside.size, asItComes(moves, one.wanted.part[dimension], measured));
    }
  }
  return byOwner;
}

function asItComes({ outside, slope }: Moves, size: Sourced<Length>, measured: Sourced<Length>): Sourced<Length> {
  const inputs = { "outside size": outside.size, "as derived": size, "as measured": measured };
  return derived(rule, inputs, (of) => {
    const short = subtract(of["as derived"], of["as measured"]);
    return subtract(of["outside size"], divide(short, slope) ?? short);
  });
}

function countOf(wanted: Wanted, pieces: readonly Piece[], all: readonly Judged[], turned: Turned): Count {
  const own = pieces.filter((piece) => piece.wanted === wanted);
  const sumOf = (some: readonly { readonly count: number }[]): number =>
    some.reduce((sum, { count }) => sum + count, 0);
  const fates = all.filter((one) => one.wanted === wanted);
  const good = sumOf(fates.filter(({ isGood }) => isGood).map(({ piece }) => piece));
  return {
    wanted,
    made: Math.min(good, wanted.quantity),
    spoiled: sumOf(own.filter(({ spoiled }) => spoiled)),
    lost: sumOf(fates.filter(({ isGood }) => !isGood).map(({ piece }) => piece)),
    left: Math.max(0, wanted.quantity - good),
    length: derivedAgain(wanted.part.length, turned),
    width: derivedAgain(wanted.part.width, turned),
  };
}

/** The last recorded are the ones too many. */
function surplusOf(pieces: readonly Piece[], all: readonly Judged[]): readonly Surplus[] {
  const room = new Map<Wanted, number>();
  const good = new Set(all.filter(({ isGood }) => isGood).map(({ piece }) => piece));
  return pieces.flatMap((piece): readonly Surplus[] => {
    const { wanted } = piece;
    if (wanted === undefined) return [{ piece, count: piece.count }];
    if (!good.has(piece)) return [];
    const free = room.get(wanted) ?? wanted.quantity;
    room.set(wanted, Math.max(0, free - piece.count));
    return free < piece.count ? [{ piece, count: piece.count - free }] : [];
  });
}

/** What is left of one part of the model: as it was derived, and as it must be cut now. */
export interface LeftPart {
  readonly from: Part;
  readonly part: Part;
}

/** What is still to be cut, part by part, of the sizes that it must have now. */
export function leftOf({ counts }: AsCut): readonly LeftPart[] {
  return counts.flatMap(({ wanted, left, length, width }) => {
    let rest = left;
    // Parts of one strip are told apart by their place in it, so what is left is taken from the last of them.
    const taken = [...wanted.parts].reverse().map((from): LeftPart => {
      const quantity = Math.min(rest, from.quantity);
      rest -= quantity;
      return { from, part: { ...from, quantity, length, width } };
    });
    return taken.reverse().filter(({ part }) => 0 < part.quantity);
  });
}
