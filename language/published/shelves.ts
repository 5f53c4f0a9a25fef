import { type Cited, isQuantity } from "./cited.ts";
import { type Deflection, deflection } from "./stiffness.ts";

/** A shelf or bottom on two simple ends, in inches, psi and pounds per cubic foot; its load in pounds per square foot, or in pounds in all. */
export type Shelf = {
  readonly span: number;
  readonly depth: number;
  readonly thickness: number;
  readonly modulus: number;
  readonly density?: number;
  readonly load: { readonly psf: number } | { readonly pounds: number };
};

/** A limit on sag: a fraction of the span, or a sixteenth of an inch to the foot and a quarter inch in all. */
export type SagLimit = "L/144" | "1/16 in per foot";

const aws = "Architectural Woodwork Standards, 1st ed. (2009), section 10 cl. 1.2.21, p. 253";
const kcma = "ANSI/KCMA A161.1 cl. 5.1, from a reproduction";

/** The two limits, with where they were read. */
export const sagLimits: Readonly<Record<SagLimit, Cited<string>>> = {
  "L/144": { value: "span / 144", tag: "published", source: aws },
  "1/16 in per foot": { value: "span / 192, at most 1/4 in", tag: "as transcribed", source: kcma },
};

/** Design loads for shelves in pounds per square foot. */
export const shelfLoads = {
  library: { value: 50, tag: "published", source: aws },
  general: { value: 40, tag: "published", source: aws },
  test: { value: 15, tag: "as transcribed", source: kcma },
} as const satisfies Record<string, Cited<number>>;

/** The most that any one shelf is designed for, in pounds. */
export const shelfLoadCap: Cited<number> = { value: 200, tag: "published", source: aws };

/** Sag allowed on a span in inches; undefined for a span that is not a quantity. */
export function allowedSag(span: number, limit: SagLimit): number | undefined {
  if (!isQuantity(span)) return undefined;
  return limit === "L/144" ? span / 144 : Math.min(span / 192, 1 / 4);
}

/** Design load of a whole shelf in pounds, capped at 200: clear width and depth in inches, load in pounds per square foot; undefined for bad input. */
export function shelfDesignLoad(width: number, depth: number, psf: number): number | undefined {
  if (![width, depth, psf].every(isQuantity)) return undefined;
  return Math.min((width * depth * psf) / 144, shelfLoadCap.value);
}

/** Sag at midspan in inches under the load and, where a density is given, the shelf's own weight, bending and shear; undefined for bad input. */
export function shelfSag(shelf: Shelf): Deflection | undefined {
  const area = shelf.span * shelf.depth;
  const laid = "psf" in shelf.load ? (shelf.load.psf * area) / 144 : shelf.load.pounds;
  const own = ((shelf.density ?? 0) * area * shelf.thickness) / 1728;
  if (!isQuantity(laid) || !isQuantity(own)) return undefined;
  return deflection({
    held: "uniform on simple ends",
    load: laid + own,
    span: shelf.span,
    breadth: shelf.depth,
    depth: shelf.thickness,
    modulus: shelf.modulus,
  });
}

/**
 * The longest span in inches whose sag stays within the limit, for the same shelf at any length: a load per square foot grows with the span, a load in pounds
 * does not. Up to 1000 in; undefined for bad input.
 */
export function longestSpan(shelf: Omit<Shelf, "span">, limit: SagLimit): number | undefined {
  const holds = (span: number): boolean | undefined => {
    const sag = shelfSag({ ...shelf, span });
    const allowed = allowedSag(span, limit);
    return sag === undefined || allowed === undefined ? undefined : sag.total <= allowed;
  };
  if (holds(1) === undefined) return undefined;
  let short = 0;
  let long = 1000;
  if (holds(long) === true) return long;
  for (let step = 0; step < 60; step += 1) {
    const middle = (short + long) / 2;
    if (holds(middle) === true) short = middle;
    else long = middle;
  }
  return short;
}

/**
 * The shelf length in inches behind the table of the Architectural Woodwork Standards (p. 279): bending only, simple ends, no own weight, L/144; from psi,
 * inches and pounds per square foot. Undefined unless all are above zero.
 */
export function awsShelfLength(modulus: number, thickness: number, psf: number): number | undefined {
  if (![modulus, thickness, psf].every((value) => 0 < value && value < Infinity)) return undefined;
  return Math.cbrt((384 * modulus * thickness ** 3) / (60 * 144 * (psf / 144)));
}
