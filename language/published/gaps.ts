import type { Cited } from "./cited.ts";
import { inches, millimetres, type ShopLength } from "./lengths.ts";

/** Gaps and reveals round doors and drawer fronts, each exact in the unit it is given in. */
export const gaps = {
  inset: {
    value: inches("1/16"),
    tag: "published",
    source: "Navy Builder manual NAVEDTRA 14045 ch. 5: flush doors clear by 1/16 in on all four edges",
  },
  insetRoomy: { value: inches("3/32"), tag: "from memory", source: "from memory: a roomier inset gap" },
  framelessBetween: {
    value: millimetres("3"),
    tag: "common practice",
    source: "common practice, no source: 3 mm between frameless faces",
  },
  framelessSide: {
    value: millimetres("1.5"),
    tag: "common practice",
    source: "common practice, no source: half the 3 mm gap",
  },
  fullOverlayBetween: { value: inches("1/8"), tag: "from memory", source: "from memory: between full overlay doors" },
  frameOverlay: { value: inches("1/2"), tag: "from memory", source: "from memory: half-inch overlay on face frames" },
} as const satisfies Record<string, Cited<ShopLength>>;

/** Float of a panel in its groove, each side, and the depths grooves are usually cut to. */
export const panelPractice = {
  solidFloat: {
    value: inches("1/8"),
    tag: "common practice",
    source: "common practice, no source: 1/8 in a side for solid panels",
  },
  plywoodPlay: { value: inches("1/16"), tag: "from memory", source: "from memory: 1/16 in or less for plywood panels" },
  grooveDepth: { value: inches("3/8"), tag: "common practice", source: "common practice, no source: 3/8 in deep" },
  cutterGrooveDepth: {
    value: inches("7/16"),
    tag: "common practice",
    source: "common practice, no source: 7/16 in cope and groove cutters",
  },
} as const satisfies Record<string, Cited<ShopLength>>;

/** How far solid panels are said to grow: inches for each 12 in of width. */
export const panelGrowthPerFoot: Cited<ShopLength> = {
  value: inches("1/8"),
  tag: "common practice",
  source: "common practice, no source: as much as 1/8 in for every 12 in of width",
};
