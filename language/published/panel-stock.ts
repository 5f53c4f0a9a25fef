import { type Cited, isQuantity, type Source } from "./cited.ts";

/** What a panel is made of, as far as weight and stiffness go. */
export type PanelMaterial = "softwood plywood" | "hardwood plywood" | "MDF" | "particleboard";

/** Density in pounds per cubic foot and stiffness in psi of a panel material; both are defaults that a measured figure should replace. */
export type PanelStock = { readonly density: Cited<number>; readonly modulus: Cited<number> };

const trade = (what: string): Source => ({ tag: "common practice", source: `common practice, no source: ${what}` });
const memory = (what: string): Source => ({ tag: "from memory", source: `from memory: ${what}` });
const formwork: Source = trade(
  "formwork plywood weights from a concrete text, table by courtesy of the plywood association",
);

/** Panel materials with their usual density and stiffness. */
export const panelStock: Readonly<Record<PanelMaterial, PanelStock>> = {
  "softwood plywood": {
    density: { value: 36, ...trade("3 lb per square foot for each inch of thickness") },
    modulus: {
      value: 950_000,
      tag: "published",
      source: "Architectural Woodwork Standards, 1st ed. (2009), p. 279, veneer-core Douglas-fir plywood",
    },
  },
  "hardwood plywood": {
    density: { value: 33.75, ...trade("45 lb for a 1/2 in sheet of 4 x 8 ft, a low-quality source") },
    modulus: { value: 950_000, ...memory("taken as veneer-core Douglas-fir plywood; hardwood-faced panels vary") },
  },
  MDF: {
    density: { value: 48, ...memory("about 96 lb for a 3/4 in sheet of 4 x 8 ft") },
    modulus: { value: 313_000, ...memory("grade 130, about 2160 MPa") },
  },
  particleboard: {
    density: { value: 45, ...memory("about 90 lb for a 3/4 in sheet of 4 x 8 ft") },
    modulus: { value: 326_000, ...memory("ANSI A208.1-1999 grade M-2; later editions are lower") },
  },
};

/** Plywood weights by thickness in inches, in pounds per square foot, as printed for formwork panels. */
export const formworkWeights: readonly (readonly [thickness: number, poundsPerSquareFoot: Cited<number>])[] = [
  [1 / 2, { value: 1.5, ...formwork }],
  [5 / 8, { value: 1.8, ...formwork }],
  [3 / 4, { value: 2.2, ...formwork }],
  [7 / 8, { value: 2.6, ...formwork }],
  [1, { value: 3.0, ...formwork }],
  [9 / 8, { value: 3.3, ...formwork }],
];

/** Weight in pounds of a flat piece from its sizes in inches and its density in pounds per cubic foot; undefined for a negative or missing figure. */
export function pieceWeight(length: number, width: number, thickness: number, density: number): number | undefined {
  if (![length, width, thickness, density].every(isQuantity)) return undefined;
  return (length * width * thickness * density) / 1728;
}

/** Weight in pounds of a piece from its sizes in inches and a weight per square foot; undefined for a negative or missing figure. */
export function faceWeight(length: number, width: number, poundsPerSquareFoot: number): number | undefined {
  if (![length, width, poundsPerSquareFoot].every(isQuantity)) return undefined;
  return (length * width * poundsPerSquareFoot) / 144;
}

/** Whole sheets for an area with waste added as a fraction, by area alone, so a first guess and never a plan; undefined for bad input. */
export function sheetsByArea(area: number, sheetArea: number, waste: number): number | undefined {
  if (!isQuantity(area) || !isQuantity(waste) || !(0 < sheetArea)) return undefined;
  // A hair is forgiven, or 320 square feet with 10 % waste would ask for a twelfth sheet through binary rounding.
  return Math.ceil((area / sheetArea) * (1 + waste) - 1e-9);
}
