import { type Cited, isQuantity, type Source } from "./cited.ts";

/** A board for the tally: nominal thickness and actual width in inches, length in feet. */
export type TallyBoard = { readonly thickness: number; readonly width: number; readonly feet: number };

/** Where the board foot was read. */
export const boardFootSource: Source = {
  tag: "published",
  source: "Navy training text NAVEDTRA 14044: 144 cubic inches, on nominal sizes, under 1 in thick counts as 1",
};

/** Where the hardwood tally was read. */
export const tallySource: Source = {
  tag: "common practice",
  source: "common practice, no source: hardwood surface measure",
};

/** Where the weight of wood was read. */
export const densitySource: Source = {
  tag: "as transcribed",
  source: "Wood Handbook Eq. 4-14, with gravity at 12 % moisture",
};

/** Extra lumber to buy, as a fraction: nominal 1 in and under, and 2 in and over. */
export const takeOffWaste = {
  boards: { value: 0.2, tag: "as transcribed", source: "Army carpentry course, from its study cards" },
  dimension: { value: 0.1, tag: "as transcribed", source: "Army carpentry course, from its study cards" },
} as const satisfies Record<string, Cited<number>>;

/** Board feet of one piece from its nominal sizes in inches, with under 1 in thick counted as 1; undefined for a negative or missing size. */
export function boardFeet(thickness: number, width: number, length: number): number | undefined {
  if (![thickness, width, length].every(isQuantity)) return undefined;
  return (Math.max(thickness, 1) * width * length) / 144;
}

/** Board feet in words of twelfths, as the Army text asks ("37 4/12", never a decimal), to the nearest twelfth; undefined for a negative figure. */
export function inTwelfths(feet: number): string | undefined {
  if (!isQuantity(feet)) return undefined;
  const twelfths = Math.round(feet * 12);
  const whole = Math.floor(twelfths / 12);
  const rest = twelfths % 12;
  if (rest === 0) return `${whole}`;
  return whole === 0 ? `${rest}/12` : `${whole} ${rest}/12`;
}

/** Surface measure of a hardwood board in square feet: whole feet of length times inches of width over 12, to the nearest whole; undefined for bad input. */
export function surfaceMeasure(width: number, feet: number): number | undefined {
  if (!isQuantity(width) || !isQuantity(feet)) return undefined;
  return Math.round((Math.floor(feet) * width) / 12);
}

/** Board feet of hardwood boards of one thickness: their surface measures summed, then times the thickness; undefined for bad input or mixed thicknesses. */
export function hardwoodTally(boards: readonly TallyBoard[]): number | undefined {
  const thickness = boards[0]?.thickness ?? 1;
  if (!isQuantity(thickness) || boards.some((board) => board.thickness !== thickness)) return undefined;
  const measures = boards.map((board) => surfaceMeasure(board.width, board.feet));
  const surface = measures.reduce((sum, one) => (sum === undefined || one === undefined ? undefined : sum + one), 0);
  return surface === undefined ? undefined : surface * Math.max(thickness, 1);
}

/** Boards to cover a width when a share of them is wasted, Army EN01136: width over face width over (1 - waste), rounded up; undefined for bad input. */
export function boardsAcross(width: number, face: number, waste: number): number | undefined {
  if (!isQuantity(width) || !(0 < face) || !(0 <= waste && waste < 1)) return undefined;
  return Math.ceil(width / face / (1 - waste) - 1e-9);
}

/** Density of wood in kg/m3 from its specific gravity and its moisture in percent: 1000 G (1 + M/100); undefined for bad input. */
export function woodDensity(gravity: number, moisture: number): number | undefined {
  if (!isQuantity(gravity) || !isQuantity(moisture)) return undefined;
  return 1000 * gravity * (1 + moisture / 100);
}

/** Density of wood in pounds per cubic foot, with water at 62.4, from specific gravity and moisture in percent; undefined for bad input. */
export function woodPoundsPerCubicFoot(gravity: number, moisture: number): number | undefined {
  if (!isQuantity(gravity) || !isQuantity(moisture)) return undefined;
  return 62.4 * gravity * (1 + moisture / 100);
}
