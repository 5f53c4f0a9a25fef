import { isQuantity, type Source } from "./cited.ts";

/** How a beam is loaded and held. */
export type BeamCaseName =
  | "uniform on simple ends"
  | "uniform on clamped ends"
  | "midpoint on simple ends"
  | "midpoint on clamped ends"
  | "quarter points on simple ends"
  | "uniform on a cantilever"
  | "end of a cantilever";

/** The two factors of Table 9-1, each as a numerator over a denominator, and where along the beam they give the deflection. */
export type BeamCase = {
  readonly name: BeamCaseName;
  readonly bending: readonly [number, number];
  readonly shear: readonly [number, number];
  readonly at: "midspan" | "free end";
};

/** A rectangular beam under a total load: lengths, force and moduli in one consistent set (inches, pounds and psi, or millimetres, newtons and MPa). */
export type Beam = {
  readonly held: BeamCaseName;
  readonly load: number;
  readonly span: number;
  readonly breadth: number;
  readonly depth: number;
  readonly modulus: number;
  readonly shearModulus?: number;
};

/** Deflection as its two parts and their sum, in the unit of the span. */
export type Deflection = { readonly bending: number; readonly shear: number; readonly total: number };

/** Where the beam cases were read. */
export const beamSource: Source = {
  tag: "as transcribed",
  source: "Wood Handbook Eq. 9-2 and Table 9-1, FPL-GTR-282 pp. 9-2 and 9-3",
};

/** All cases of Wood Handbook Table 9-1. */
export const beamCases: readonly BeamCase[] = [
  { name: "uniform on simple ends", bending: [5, 384], shear: [1, 8], at: "midspan" },
  { name: "uniform on clamped ends", bending: [1, 384], shear: [1, 8], at: "midspan" },
  { name: "midpoint on simple ends", bending: [1, 48], shear: [1, 4], at: "midspan" },
  { name: "midpoint on clamped ends", bending: [1, 192], shear: [1, 4], at: "midspan" },
  { name: "quarter points on simple ends", bending: [11, 768], shear: [1, 8], at: "midspan" },
  { name: "uniform on a cantilever", bending: [1, 8], shear: [1, 2], at: "free end" },
  { name: "end of a cantilever", bending: [1, 3], shear: [1, 1], at: "free end" },
];

/** Shear modulus taken from the modulus of elasticity when it was not measured: a sixteenth, Wood Handbook ch. 9. */
export function shearModulusOf(modulus: number): number {
  return modulus / 16;
}

/** Wood Handbook Eq. 9-2 for a rectangular beam; undefined for a negative load or any other figure that is not above zero. */
export function deflection(beam: Beam): Deflection | undefined {
  const factors = beamCases.find((one) => one.name === beam.held);
  const shearModulus = beam.shearModulus ?? shearModulusOf(beam.modulus);
  const sizes = [beam.span, beam.breadth, beam.depth, beam.modulus, shearModulus];
  if (factors === undefined || !isQuantity(beam.load) || !sizes.every((size) => 0 < size && size < Infinity))
    return undefined;
  const inertia = (beam.breadth * beam.depth ** 3) / 12;
  const area = (5 / 6) * beam.breadth * beam.depth;
  const bending = (ratio(factors.bending) * beam.load * beam.span ** 3) / (beam.modulus * inertia);
  const shear = (ratio(factors.shear) * beam.load * beam.span) / (shearModulus * area);
  return { bending, shear, total: bending + shear };
}

function ratio([numerator, denominator]: readonly [number, number]): number {
  return numerator / denominator;
}
