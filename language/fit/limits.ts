import type { Length } from "../core/length.ts";
import { inUnit } from "../core/length.ts";
import { ratio } from "../core/rational.ts";
import type { Tag } from "../core/sourced.ts";

/** Where a finding begins: a bound with its standing, its reason and, where it was read, its source. */
export interface Limit<T> {
  readonly value: T;
  readonly tag: Tag;
  readonly because: string;
  readonly source?: string;
}

const inch = (n: number, d = 1): Length => ratio(n, d);

/** The bounds of the checks that are lengths and stand in no published table of their own. */
export const limits = {
  offLabel: {
    value: inch(1, 8),
    tag: "common practice",
    because: "no standard for panels lets a sheet be so far from its label",
  },
  unevenStock: {
    value: inch(1, 32),
    tag: "as transcribed",
    because: "a sheet may be as far from its category over and under",
    source: "PS 1, thickness tolerance of panels up to 13/16 in: plus or minus 1/32 in",
  },
  slideForgives: {
    value: inch(1, 32),
    tag: "from memory",
    because: "what an ordinary side-mounted slide takes up on each side",
  },
  widestBox: {
    value: inch(24),
    tag: "from memory",
    because: "wider boxes rack on ordinary slides unless they are deeper still",
  },
  recess: { value: inch(1, 2), tag: "from memory", because: "an under-mounted slide stands under the bottom" },
  depthUnused: { value: inch(4), tag: "common practice", because: "two sizes of slide" },
  shim: { value: inch(1, 4), tag: "from memory", because: "more than that is a layer of packing, not a shim" },
  leastLeft: { value: inch(3, 16), tag: "from memory", because: "thinner wood beside a groove or rabbet breaks" },
  belowGroove: {
    value: inch(1, 4),
    tag: "from memory",
    because: "less wood under a bottom's groove breaks out under load",
  },
  besideScrew: { value: inch(1, 8), tag: "common practice", because: "half of a slide screw and a little wood" },
  besideGroove: { value: inch(1, 2), tag: "from memory", because: "what a frame member keeps beside its groove" },
  doorStock: {
    value: inch(23, 32),
    tag: "published",
    because: "stiles and rails are at least 3/4 in thick, give or take 1/32",
    source: "Architectural Woodwork Standards, 1st ed. (2009), cl. 4.4.6.10.1.3 and 4.4.25.4",
  },
  midRailOver: {
    value: inch(60),
    tag: "published",
    because: "a higher door wants a rail in the middle",
    source: "Architectural Woodwork Standards, 1st ed. (2009), cl. 4.4.6.10.1.5",
  },
  frontGap: { value: inch(1, 16), tag: "from memory", because: "fronts closer than that rub when the case racks" },
  insetGap: {
    value: inch(1, 16),
    tag: "published",
    because: "the clearance of a flush door",
    source: "NAVEDTRA 14045 (Builder 3 & 2), ch. 5: within 1/16 in around all four edges",
  },
  hingeAdjusts: {
    value: inch(1, 16),
    tag: "from memory",
    because: "what a cup hinge is turned in or out by its side screw",
  },
  cupDeep: {
    value: inUnit(ratio(13), "mm"),
    tag: "common practice",
    because: "how deep a cup is bored where its depth is not written",
    source: "common practice, no source: cup hinge drawings",
  },
  leastBore: {
    value: inUnit(ratio(3), "mm"),
    tag: "common practice",
    because: "nearer to the edge the wood beside the cup breaks",
    source: "common practice, no source: boring distances of 3 to 8 mm",
  },
  mostBore: {
    value: inUnit(ratio(8), "mm"),
    tag: "common practice",
    because: "farther from the edge the arm does not reach",
    source: "common practice, no source: boring distances of 3 to 8 mm",
  },
  shelfSpacing: {
    value: inch(3),
    tag: "published",
    because: "shelves stand 3 to 12 in apart",
    source: "NAVEDTRA 14045 (Builder 3 & 2), ch. 5",
  },
  toeHigh: {
    value: inch(3),
    tag: "as transcribed",
    because: "room for a foot",
    source: "ANSI/KCMA A161.1: toe space at least 3 in high and 2 in deep",
  },
  toeDeep: {
    value: inch(2),
    tag: "as transcribed",
    because: "room for a foot",
    source: "ANSI/KCMA A161.1: toe space at least 3 in high and 2 in deep",
  },
  planedThin: {
    value: inch(1, 4),
    tag: "common practice",
    because: "thinner stock lifts into the cutter",
    source: "common practice: a shop audit sheet; the planer's own manual goes before it",
  },
  smallestCase: { value: inch(4), tag: "common practice", because: "no case is smaller" },
  smallestSheet: { value: inch(12), tag: "common practice", because: "no sheet is sold smaller" },
  smallestSlide: { value: inch(4), tag: "common practice", because: "no drawer slide is shorter" },
  largestSlide: { value: inch(72), tag: "common practice", because: "no drawer slide is longer" },
  largest: { value: inch(240), tag: "common practice", because: "nothing made in one piece is twenty feet long" },
} as const satisfies Record<string, Limit<Length>>;

/** The bounds that are plain numbers. */
export const shares = {
  comesClear: {
    value: 2 / 3,
    tag: "as transcribed",
    because: "a drawer is tested opened two thirds of its depth",
    source: "ANSI/KCMA A161.1 cl. 7.1",
  },
  grainAcross: { value: 2, tag: "from memory", because: "a piece this much longer across its grain snaps in the hand" },
  boardDensity: {
    value: 44,
    tag: "from memory",
    because: "pounds per cubic foot of a dense hardwood, where the wood is not known",
  },
} as const satisfies Record<string, Limit<number>>;
