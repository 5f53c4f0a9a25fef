import { type Cited, isQuantity, type Source } from "./cited.ts";
import { inches, type ShopLength } from "./lengths.ts";

const kcma: Source = { tag: "as transcribed", source: "ANSI/KCMA A161.1, from a reproduction and a summary" };
const kcmaDrawer: Source = { tag: "as transcribed", source: "ANSI/KCMA A161.1 cl. 7.1, from a reproduction" };
const aws: Source = { tag: "published", source: "Architectural Woodwork Standards, 1st ed. (2009), pp. 373-374" };
const awsB: Source = {
  tag: "published",
  source: "Architectural Woodwork Standards, 1st ed. (2009), App. B (informative), p. 584",
};
const bhma: Source = {
  tag: "published",
  source: "Architectural Woodwork Standards, 1st ed. (2009), cl. 4.1.8.1, p. 259",
};

/** Load on shelves, bottoms and drawers in KCMA's tests, in pounds per square foot. */
export const testLoadPsf: Cited<number> = { value: 15, ...kcma };

/** KCMA's drawer test: load in pounds per square foot, cycles, and the share of the depth it is opened. */
export const drawerTest = {
  psf: { value: 15, ...kcmaDrawer },
  cycles: { value: 25_000, ...kcmaDrawer },
  opened: { value: 2 / 3, ...kcmaDrawer },
} as const satisfies Record<string, Cited<number>>;

/** KCMA's other loads: pounds, inches and days as named; the wall cabinet's 500 is 600 in another summary, so the lower is kept. */
export const kcmaTests = {
  shelfDays: { value: 7, ...kcma },
  impactPounds: { value: 3, ...kcma },
  drawerImpactInches: { value: 8, ...kcma },
  drawerImpactDrops: { value: 10, ...kcma },
  shelfImpactInches: { value: 6, ...kcma },
  wallCabinetPounds: {
    value: 500,
    tag: "as transcribed",
    source: "ANSI/KCMA A161.1 cl. 5.2; a reproduction says 500, a summary 600: unresolved",
  },
  frontJointWithRailPounds: { value: 250, ...kcma },
  frontJointPounds: { value: 200, ...kcma },
  doorImpactPounds: { value: 10, ...kcma },
  doorRackingPounds: { value: 65, tag: "from memory", source: "from memory of ANSI/KCMA A161.1 cl. 6.1" },
} as const satisfies Record<string, Cited<number>>;

/** Least toe space by KCMA. */
export const toeSpace: Cited<{ readonly deep: ShopLength; readonly high: ShopLength }> = {
  value: { deep: inches("2"), high: inches("3") },
  tag: "as transcribed",
  source: "ANSI/KCMA A161.1, from an association's copy",
};

/** AWS's drawer loads by use: what it must carry standing still and moving in pounds, and for how many cycles. */
export const drawerClasses = [
  { use: "residential", still: 50, moving: 30, cycles: 35_000, ...awsB },
  { use: "commercial", still: 75, moving: 50, cycles: 50_000, ...awsB },
  { use: "heavy", still: 100, moving: 75, cycles: 100_000, ...awsB },
] as const;

/** AWS's casework loads in pounds, and inches where named. */
export const awsTests = {
  doorPounds: { value: 200, ...aws },
  doorPoundsAtInches: { value: 12, ...aws },
  doorImpactInchPounds: { value: 240, ...aws },
  doorImpactBagPounds: { value: 20, ...aws },
  pullPounds: { value: 50, ...aws },
  rollingRodPounds: { value: 10, ...aws },
  rollingInches: { value: 13, ...aws },
  rollingImpacts: { value: 3, ...aws },
  hingeCycles: { value: 100_000, ...aws },
} as const satisfies Record<string, Cited<number>>;

/** Hardware grades that AWS asks of BHMA A156.9. */
export const hardwareGrades = {
  hardware: { value: 2, ...bhma },
  shelfSupports: { value: 1, ...bhma },
} as const satisfies Record<string, Cited<number>>;

/** The slide test drawer: its depth, and its least width below and from a 125 lb rating. */
export const slideTestDrawer: Cited<{
  readonly deep: ShopLength;
  readonly wide: ShopLength;
  readonly wideFrom125: ShopLength;
}> = {
  value: { deep: inches("22"), wide: inches("18"), wideFrom125: inches("24") },
  ...bhma,
};

/** KCMA's test load on a drawer or shelf of that inside width and depth in inches, in pounds; undefined for bad input. */
export function testLoad(width: number, depth: number): number | undefined {
  if (!isQuantity(width) || !isQuantity(depth)) return undefined;
  return (width * depth * testLoadPsf.value) / 144;
}
