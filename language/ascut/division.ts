import { gatheredBy } from "../core/gather.ts";
import type { Length } from "../core/length.ts";
import { compare, equal, largest, multiply, toText } from "../core/rational.ts";
import { kerfOf } from "../plan/problems.ts";
import { type Scale, scaleFor } from "../plan/scale.ts";
import type { Giver } from "./givers.ts";
import type { Spare } from "./spares.ts";
import { lyingOf, mayTurn, providedFor, suits, type Target } from "./suits.ts";

/** Spares of one stock and thickness and what is still to be cut of it, in whole numbers; kinds are targets that are alike. */
export interface Division {
  readonly spares: readonly Spare[];
  readonly kinds: readonly (readonly Target[])[];
  readonly givers: readonly Giver[];
  readonly areas: readonly number[];
  readonly scale: Scale;
  readonly kerf: number;
}

/** What is left over of a piece is its own, so that what is loose comes before what lies in the rack, and the small before the large. */
export function divisionOf(unsorted: readonly Spare[], targets: readonly Target[]): Division {
  const spares = [...unsorted].sort((a, b) => rankOf(a) - rankOf(b) || compare(areaOf(a), areaOf(b)));
  const kinds = [...gatheredBy(targets, keyOf).values()];
  const kerf = largestKerf(spares);
  const sizes = [...spares, ...targets.map(({ part }) => lyingOf(part))];
  const scale = scaleFor([kerf, ...sizes.flatMap(({ along, across }) => [along, across])]);
  const grown = scale.units(kerf);
  const own = kinds.map(([first]) => {
    const { along, across } = lyingOf(first!.part);
    return { w: scale.units(across), h: scale.units(along) };
  });
  const areas = own.map(({ w, h }) => w * h);
  const worths = worthsOf(spares, kinds, areas, scale);
  const giverOf = (spare: Spare): Giver => ({
    w: unitsIn(scale, spare.across) + grown,
    h: unitsIn(scale, spare.along) + grown,
    kinds: kinds.map(([first], kind) =>
      suits(spare, first!)
        ? { w: own[kind]!.w + grown, h: own[kind]!.h + grown, turns: mayTurn(spare, first!.part) }
        : undefined,
    ),
    isSure: spare.isSure,
    ...worths(spare),
  });
  const givers = new Map([...new Set(spares)].map((spare) => [spare, giverOf(spare)]));
  return { spares, kinds, givers: spares.map((spare) => givers.get(spare)!), areas, scale, kerf: grown };
}

function rankOf({ kind }: Spare): number {
  return kind === "offcut" ? 1 : 0;
}

function areaOf({ along, across }: Pick<Spare, "along" | "across">): Length {
  return multiply(along, across);
}

/** Alike in size, in how they may lie, and in what must not be left in them. */
function keyOf({ part }: Target): string {
  const { along, across } = lyingOf(part);
  const made = [...new Set(part.machining.map(({ kind }) => kind))].sort();
  const matched = part.matched === undefined ? "" : "matched";
  return [toText(along), toText(across), part.grain === "none" ? "free" : "", matched, ...made].join(" ");
}

/** Files that share a rack may be of shops with several saws: the widest blade is sure to suffice. */
function largestKerf(spares: readonly Spare[]): Length {
  const [first, ...others] = [...new Set(spares.map(({ job }) => job))].map(({ context }) => kerfOf(context));
  return largest(first!, ...others);
}

/** Down to whole units: a piece is never taken for larger than it is. */
function unitsIn(scale: Scale, length: Length): number {
  const units = scale.units(length);
  return equal(scale.length(units), length) ? units : units - 1;
}

/**
 * What must not be cut from stock comes first; then what need not be cut from the rack, the wood of the rack that is
 * touched, that of loose pieces, and doubts: none can outweigh the one before.
 */
function worthsOf(
  spares: readonly Spare[],
  kinds: Division["kinds"],
  areas: readonly number[],
  scale: Scale,
): (spare: Spare) => Pick<Giver, "gains" | "cost"> {
  const touched = (spare: Spare): bigint => BigInt(unitsIn(scale, spare.along)) * BigInt(unitsIn(scale, spare.across));
  const total = (some: readonly bigint[]): bigint => some.reduce((all, one) => all + one, 1n);
  const wood = (rank: number): bigint => total(spares.filter((one) => rankOf(one) === rank).map(touched));
  const loose = BigInt(kinds.reduce((all, { length }) => all + length, 1));
  const rack = wood(0) * loose;
  const fromLoose = wood(1) * rack;
  const all = total(kinds.map(({ length }, kind) => BigInt(areas[kind]!) * BigInt(length))) * fromLoose;
  return (spare) => {
    const isLoose = spare.kind !== "offcut";
    const gains = kinds.map(([first], kind) => {
      const doubt = providedFor(spare, first!.part).length === 0 ? 0n : 1n;
      return BigInt(areas[kind]!) * (all + (isLoose ? fromLoose : 0n)) - doubt;
    });
    return { gains, cost: touched(spare) * (isLoose ? loose : rack) };
  };
}
