import type { Cited, Source } from "./cited.ts";
import { inches, type ShopLength } from "./lengths.ts";

const aws = (clause: string): Source => ({
  tag: "published",
  source: `Architectural Woodwork Standards, 1st ed. (2009), cl. ${clause}`,
});
const navy: Source = { tag: "published", source: "Navy Builder manual NAVEDTRA 14045 ch. 5" };

/** Sizes the Architectural Woodwork Standards ask of doors, frames and casework. */
export const awsSizes = {
  doorFrameThickness: { value: inches("3/4"), ...aws("4.4.6.10.1.3") },
  doorFrameTolerance: { value: inches("1/32"), ...aws("4.4.6.10.1.3") },
  midRailOver: { value: inches("60"), ...aws("4.4.6.10.1.5") },
  overlaidFrameWidth: { value: inches("3-1/2"), ...aws("4.4.6.10.1.4") },
  hardwareToGlass: { value: inches("3/8"), ...aws("4.4.6.10.1.8") },
  faceFrameThickness: { value: inches("3/4"), ...aws("4.4.25.4") },
  pullOutBoard: { value: inches("3/4"), ...aws("4.4.15") },
  writingShelfOut: { value: inches("15"), ...aws("4.4.15") },
  backWithoutStrip: { value: inches("1/2"), ...aws("4.4.18") },
  anchorStripThickness: { value: inches("1/2"), ...aws("4.4.18") },
  anchorStripWidth: { value: inches("2-1/2"), ...aws("4.4.18") },
  thirdStripOver: { value: inches("60"), ...aws("4.4.18") },
  toeShim: { value: inches("1/2"), ...aws("1.2.9") },
} as const satisfies Record<string, Cited<ShopLength>>;

/** How frames are made: what runs through and which way the grain lies. */
export const frameRules = {
  stilesRunThrough: {
    value: "stiles run the full height; rails stand between them, and mullions between rails",
    ...aws("4.4.6.10.1.6"),
  },
  grain: { value: "grain runs up the stiles and along the rails", ...aws("4.4.6.10.1.7") },
  joint: { value: "stiles are mortised and rails tenoned", ...navy },
} as const satisfies Record<string, Cited<string>>;

/** Usual casework sizes of the Navy Builder manual. */
export const navySizes = {
  wallUnitDepth: { value: inches("12"), ...navy },
  wallUnitHeight: { value: inches("30"), ...navy },
  wallUnitOverRange: { value: inches("18"), ...navy },
  wallUnitOverSink: { value: inches("22"), ...navy },
  wallUnitOverRefrigerator: { value: inches("15"), ...navy },
  faceFrameThickness: { value: inches("3/4"), ...navy },
  faceFrameWidth: { value: inches("1-1/2"), ...navy },
  leastShelfSpacing: { value: inches("3"), ...navy },
  mostShelfSpacing: { value: inches("12"), ...navy },
  drawerFront: { value: inches("3/4"), ...navy },
  drawerSide: { value: inches("1/2"), ...navy },
  drawerBottom: { value: inches("1/4"), ...navy },
  smallDrawerBottom: { value: inches("1/8"), ...navy },
} as const satisfies Record<string, Cited<ShopLength>>;

/** Parts of a frame-and-panel door, all in one unit: door, stile and rail widths, groove and tongue depth, float each side. */
export type FrameSizes = {
  readonly width: number;
  readonly height: number;
  readonly stile: number;
  readonly rail: number;
  readonly groove: number;
  readonly float: number;
};

/** Rail length and panel size of a frame-and-panel door by geometry, in the unit given; undefined when any comes out at zero or less. */
export function frameAndPanel(
  sizes: FrameSizes,
): { readonly rail: number; readonly panelWidth: number; readonly panelHeight: number } | undefined {
  const rail = sizes.width - 2 * sizes.stile + 2 * sizes.groove;
  const panelWidth = rail - 2 * sizes.float;
  const panelHeight = sizes.height - 2 * sizes.rail + 2 * sizes.groove - 2 * sizes.float;
  return 0 < rail && 0 < panelWidth && 0 < panelHeight ? { rail, panelWidth, panelHeight } : undefined;
}
